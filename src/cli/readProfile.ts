import { type Intake, partOfProfile, profileSchema } from '../intake/index.js';
import { Fault } from './fault.js';

/** A profile typed into a file: `{"profile": {"name", "thickness", "insideRadius", "width", "flanges", "turns"}}` (docs/api.md). */
export const readProfile = (path: string, bytes: Uint8Array): Intake => {
  let data: unknown;
  try {
    data = JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    throw new Fault(`${path}: this is no JSON, so no typed-in profile.`);
  }
  const checked = profileSchema.safeParse(data);
  if (!checked.success) {
    const issue = checked.error.issues[0]!;
    throw new Fault(`${path}: this is no typed-in profile as "profile -o" writes it (${issue.path.join('.') || 'the whole'}: ${issue.message}).`);
  }
  const made = partOfProfile(checked.data);
  if (!made.ok) throw new Fault(`${path}: ${made.sentence}`);
  return { parts: [{ index: 0, part: made.part }], refused: [] };
};

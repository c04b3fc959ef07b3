import { z } from 'zod';
import type { Intake } from '../intake/index.js';
import { type Profile, profilePart } from '../sheet/index.js';
import { Fault } from './fault.js';

const length = z.number().positive().max(20_000);
const radius = z.number().nonnegative().max(5_000);
const turn = z.number().min(-180).max(180);

/** The same body as the HTTP API takes (docs/api.md); a bend may also bring a radius of its own. */
const profileFile = z.strictObject({
  profile: z.strictObject({
    name: z.string().trim().min(1).max(200),
    thickness: length,
    insideRadius: radius,
    width: length,
    flanges: z.array(length).min(1).max(100),
    turns: z.array(z.union([turn, z.strictObject({ turn, insideRadius: radius })])).max(99),
    measure: z.enum(['outside', 'inside']).default('outside'),
  }),
});

const parsed = (path: string, bytes: Uint8Array): Profile => {
  let data: unknown;
  try {
    data = JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    throw new Fault(`${path}: this is no JSON, so no typed-in profile.`);
  }
  const checked = profileFile.safeParse(data);
  if (checked.success) return checked.data.profile;
  const issue = checked.error.issues[0]!;
  throw new Fault(`${path}: this is no typed-in profile (${issue.path.join('.') || 'the whole'}: ${issue.message}).`);
};

/** A profile typed into a file: `{"profile": {"name", "thickness", "insideRadius", "width", "flanges", "turns"}}`. */
export const readProfile = (path: string, bytes: Uint8Array): Intake => {
  const made = profilePart(parsed(path, bytes));
  if (!made.ok) throw new Fault(`${path}: ${made.failure.sentence}`);
  return { parts: [{ index: 0, part: made.value }], refused: [] };
};

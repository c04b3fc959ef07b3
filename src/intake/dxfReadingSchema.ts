import { z } from 'zod';

const angle = z.number().positive().max(180);
const radius = z.number().nonnegative().max(5_000);
const bend = z.strictObject({ bendAngle: angle.exactOptional(), direction: z.enum(['A', 'B']).exactOptional(), insideRadius: radius.exactOptional() });
const plain = z.enum(['DIN 6935', 'aviation handbook', 'naval handbook', 'textbook K']);

/** An allowance rule as data. */
export const ruleSchema = z.discriminatedUnion('name', [
  z.strictObject({ name: z.literal('K-factor'), k: z.number().min(0).max(0.6) }),
  z.strictObject({ name: z.literal('machinist handbook'), group: z.enum(['soft', 'medium', 'hard']) }),
  z.strictObject({ name: plain.extract(['DIN 6935']) }),
  z.strictObject({ name: plain.extract(['aviation handbook']) }),
  z.strictObject({ name: plain.extract(['naval handbook']) }),
  z.strictObject({ name: plain.extract(['textbook K']) }),
]);

/** What is told of a flat drawing, as JSON (docs/api.md). */
export const dxfReadingSchema = z.strictObject({
  from: z.literal('dxf').default('dxf'),
  thickness: z.number().positive().max(50).exactOptional(),
  rule: ruleSchema.exactOptional(),
  roles: z.record(z.string().max(300), z.enum(['cut', 'bend', 'bend A', 'bend B', 'ignore'])).exactOptional(),
  unit: z.enum(['mm', 'inch', 'cm', 'm']).exactOptional(),
  gap: z.number().positive().max(5).exactOptional(),
  bend: bend.exactOptional(),
  bends: z.record(z.string().max(20), bend).exactOptional(),
});

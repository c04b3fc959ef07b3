import { z } from 'zod';
import { writtenName } from './writtenName.js';

/** mm */
const length = z.number().positive().max(20_000);
const radius = z.number().nonnegative().max(5_000);
const turn = z.number().min(-180).max(180);
const measure = z.enum(['outside', 'inside', 'flat']);

/** A typed-in profile as JSON, from a file or a request (docs/api.md): spelt out, or as one line (docs/profile.md). */
export const profileSchema = z.strictObject({
  profile: z.union([
    z.strictObject({
      name: writtenName(200),
      thickness: length,
      insideRadius: radius,
      width: length,
      flanges: z.array(z.union([length, z.strictObject({ length, measure })])).min(1).max(100),
      turns: z.array(z.union([turn, z.strictObject({ turn, insideRadius: radius })])).max(99),
      measure: measure.default('outside'),
    }),
    z.strictObject({ name: writtenName(200), line: z.string().max(2_000) }),
  ]),
});

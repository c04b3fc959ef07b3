import { z } from 'zod';
import { type Contour, vertex } from '../geometry/index.js';
import { list, within } from './dataFault.js';
import { bedSection, clampRow, fingerSection, rectangle, upperBeam } from './profiles.js';

const mm = (least: number, most: number) => within(least, most, 'mm');
const place = mm(-3000, 3000);
const size = mm(0.1, 3000);

/** A corner of a drawn contour: back, up and (if an arc leaves it) bulge. */
const corner = z.union([z.tuple([place, place]), z.tuple([place, place, within(-1, 1, '(bulge)')])], {
  error: 'must be [back, up] or [back, up, bulge]',
});

/** More corners than any drawn section needs; the test for crossings looks at every pair of edges. */
const MOST_CORNERS = 500;

/** Any cross-section, drawn corner by corner. */
export const drawnSchema = z.strictObject({
  shape: z.literal('contour'),
  corners: list(corner, 3, 'corners').max(MOST_CORNERS, { error: `must list at most ${MOST_CORNERS} corners` }),
});

export const drawn = (s: z.output<typeof drawnSchema>): Contour => s.corners.map((c) => vertex(c[0], c[1], c[2] ?? 0));

/** A machine's cross-section by parameters, or drawn. Words and units: profiles.ts. */
export const sectionSchema = z.discriminatedUnion(
  'shape',
  [
    drawnSchema,
    z.strictObject({
      shape: z.literal('rectangle'),
      back: z.tuple([place, place], { error: 'must be [from, to] in mm' }),
      up: z.tuple([place, place], { error: 'must be [from, to] in mm' }),
    }),
    z.strictObject({ shape: z.literal('beam'), front: mm(0, 500), thickness: size, from: mm(0, 500), height: size }),
    z.strictObject({ shape: z.literal('clamp'), width: size, height: size, chamfer: mm(0.1, 100) }),
    z.strictObject({ shape: z.literal('bed'), topWidth: size, topDepth: size, bodyWidth: size, depth: size }),
    z.strictObject({
      shape: z.literal('finger'),
      noseHeight: mm(1, 100),
      stepBehind: mm(1, 200),
      stepHeight: mm(1, 200),
      clear: mm(1, 300),
      drop: mm(0.1, 100),
      length: mm(10, 500),
    }),
  ],
  { error: 'must have a shape, one of: contour, rectangle, beam, clamp, bed, finger' },
);

export type RawSection = z.output<typeof sectionSchema>;

export const buildSection = (s: RawSection): Contour => {
  switch (s.shape) {
    case 'contour':
      return drawn(s);
    case 'rectangle':
      return rectangle(s.back, s.up);
    case 'beam':
      return upperBeam(s);
    case 'clamp':
      return clampRow(s);
    case 'bed':
      return bedSection(s);
    case 'finger':
      return fingerSection(s);
  }
};

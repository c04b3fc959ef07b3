import { z } from 'zod';
import type { Contour } from '../geometry/index.js';
import { list, oneOf, whole, within, words, yesNo } from './dataFault.js';
import { seatSchema, tangSchema } from './families.js';
import { anvil, flatteningPunch, gooseneckPunch, offsetDie, offsetPunch, straightPunch, vDie } from './profiles.js';
import { drawn, drawnSchema } from './sectionSchema.js';

const mm = (least: number, most: number) => within(least, most, 'mm');
const size = mm(0.1, 500);

const straightSchema = z.strictObject({
  shape: z.literal('straight'),
  bodyWidth: size,
  bodyTop: size,
  shoulderWidth: size,
  shoulderFrom: size,
});

const gooseneckSchema = z.strictObject({
  shape: z.literal('gooseneck'),
  noseFront: size,
  noseFrontTo: size,
  noseBack: size,
  throat: mm(-200, 200),
  throatFrom: size,
  throatTo: size,
  neckBack: mm(-200, 300),
  neckFrom: size,
  neckTo: size,
  shoulderWidth: size,
  shoulderFront: size,
  shoulderBack: size,
});

const flatteningSchema = z.strictObject({
  shape: z.literal('flattening'),
  faceWidth: size,
  faceTop: size,
  shoulderWidth: size,
  shoulderFrom: size,
});

const blockSchema = z.strictObject({
  shape: z.literal('block'),
  topWidth: size,
  baseWidth: size,
  stepAt: size,
  flat: mm(0.1, 50),
});

const offsetPunchSchema = z.strictObject({
  shape: z.literal('offset'),
  landWidth: size,
  landTop: size,
  shoulderWidth: size,
  shoulderFrom: size,
});

const price = within(0, 10_000_000, 'in the currency');

const segmentSchema = z.strictObject({
  length: mm(5, 6000),
  count: whole(1, 200),
  ear: z
    .strictObject({ hand: oneOf(['left', 'right']), reach: mm(1, 500), footHeight: mm(1, 500), slides: mm(1, 200).exactOptional() })
    .exactOptional(),
});

const common = {
  id: words('a short id'),
  name: words('a name'),
  demo: yesNo,
  height: mm(5, 500),
  rating: within(10, 20_000, 'N/mm'),
  reversible: yesNo,
  segments: list(segmentSchema, 1, 'segments'),
  weight: within(0.1, 2000, 'kg/m'),
  price: price.exactOptional(),
  offset: z
    .strictObject({
      height: mm(0.1, 100),
      leastThickness: mm(0.1, 50),
      mostThickness: mm(0.1, 50),
      insideRadius: mm(0, 100),
    })
    .exactOptional(),
};

export const punchSchema = z.strictObject({
  ...common,
  kind: z.literal('punch', { error: 'must be punch' }),
  tang: tangSchema,
  shape: oneOf(['straight', 'gooseneck', 'acute', 'flattening', 'offset']),
  tipRadius: mm(0, 300),
  includedAngle: within(15, 180, 'degrees included'),
  profile: z.discriminatedUnion('shape', [drawnSchema, straightSchema, gooseneckSchema, flatteningSchema, offsetPunchSchema], {
    error: 'must have a shape, one of: contour, straight, gooseneck, flattening, offset',
  }),
});

export const dieSchema = z.strictObject({
  ...common,
  kind: z.literal('die', { error: 'must be die' }),
  tang: seatSchema,
  shape: oneOf(['V', 'anvil', 'offset']),
  v: mm(0, 500),
  vConvention: oneOf(['sharp', 'tangent']),
  includedAngle: within(15, 180, 'degrees included'),
  shoulderRadius: mm(0, 100),
  profile: z.discriminatedUnion(
    'shape',
    [drawnSchema, blockSchema, z.strictObject({ shape: z.literal('anvil'), width: size }), z.strictObject({ shape: z.literal('step'), landWidth: size })],
    { error: 'must have a shape, one of: contour, block, anvil, step' },
  ),
});

export const rackSchema = z.strictObject({
  id: words('a short id'),
  name: words('a name'),
  demo: yesNo,
  currency: words('a currency'),
  punches: list(punchSchema, 0, 'punches'),
  dies: list(dieSchema, 0, 'dies'),
  risers: list(
    z.strictObject({
      id: words('a short id'),
      height: mm(0.1, 500),
      seat: seatSchema,
      length: mm(1, 100_000),
      width: mm(5, 500),
    }),
    0,
    'risers',
  ),
  pricesBeyond: z.strictObject({ gooseneck: price.exactOptional(), die: price.exactOptional(), adapter: price.exactOptional() }).exactOptional(),
});

export type RawPunch = z.output<typeof punchSchema>;
export type RawDie = z.output<typeof dieSchema>;

export const punchContour = (p: RawPunch): Contour => {
  switch (p.profile.shape) {
    case 'contour':
      return drawn(p.profile);
    case 'straight':
      return straightPunch(p, p.profile);
    case 'gooseneck':
      return gooseneckPunch(p, p.profile);
    case 'flattening':
      return flatteningPunch(p.height, p.profile);
    case 'offset':
      return offsetPunch(p.height, p.offset, p.profile);
  }
};

export const dieContour = (d: RawDie): Contour => {
  switch (d.profile.shape) {
    case 'contour':
      return drawn(d.profile);
    case 'block':
      return vDie(d, d.profile);
    case 'anvil':
      return anvil(d.height, d.profile.width);
    case 'step':
      return offsetDie(d.height, d.offset, d.profile.landWidth);
  }
};

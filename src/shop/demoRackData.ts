// The demo rack as parameters. Every tool, number and price is invented; sizes are typical of the trade (common
// practice, no source). A price is for the whole set of segments listed. It passes through the same parser as a rack from outside.

const sizes = (list: readonly (readonly [number, number])[]) => list.map(([length, count]) => ({ length, count }));

/** Any length from 20 mm up in 5 mm steps, to over 4 m. */
const LONG = sizes([
  [10, 1], [15, 1], [20, 2], [25, 1], [30, 1], [35, 1], [40, 1], [45, 1], [50, 2], [100, 2], [150, 1], [200, 2], [300, 1],
  [400, 1], [500, 5],
]);
/** Any length from 20 mm up in 5 mm steps, to over 3 m. */
const MIDDLE = sizes([
  [10, 1], [15, 1], [20, 2], [25, 1], [30, 1], [35, 1], [40, 1], [45, 1], [50, 2], [100, 2], [150, 1], [200, 2], [300, 1],
  [400, 1], [500, 3],
]);
/** Any length from 50 mm up in 50 mm steps, to over 4 m: heavy work is seldom boxed in. */
const HEAVY = sizes([[50, 2], [100, 2], [200, 2], [500, 7]]);

const ear = (hand: 'left' | 'right') => ({ length: 100, count: 1, ear: { hand, reach: 30, footHeight: 25 } });
const EARS = [ear('left'), ear('right')];
/** For boxes with returns: they draw in under the body, so that the punch comes out between the returns. */
const slidingEar = (hand: 'left' | 'right') => ({ length: 50, count: 2, ear: { hand, reach: 15, footHeight: 14, slides: 15 } });
const SLIDING_EARS = [slidingEar('left'), slidingEar('right')];

/** mm in front of the bending plane to which the channel punch is ground: of its nose, radius 1, only that much is left. */
const GROUND = 0.3;
const HALF = (42.5 * Math.PI) / 180;
/** From the tip up the back: the nose's arc, then its flank as far as 14 mm behind the bending plane. */
const CHANNEL_NOSE = [
  [0, 0, Math.tan((Math.PI / 2 - HALF) / 4)],
  [Math.cos(HALF), 1 - Math.sin(HALF)],
  [14, 1 - Math.sin(HALF) + (14 - Math.cos(HALF)) / Math.tan(HALF)],
] as const;

const punch = { kind: 'punch', demo: true, tang: 'tang A' } as const;
const die = { kind: 'die', demo: true, tang: 'seat A', vConvention: 'sharp' } as const;

const block = (
  v: number,
  includedAngle: number,
  shoulderRadius: number,
  height: number,
  topWidth: number,
  rating: number,
  weight: number,
  price: number,
) => ({
  ...die,
  id: `die-v${v}-${includedAngle}`,
  name: `V ${v} die, ${includedAngle} degrees included`,
  shape: 'V',
  v,
  includedAngle,
  shoulderRadius,
  height,
  profile: { shape: 'block', topWidth, baseWidth: Math.max(topWidth, 30), stepAt: 30, flat: Math.max(0.6, v / 20) },
  rating,
  reversible: true,
  segments: v >= 50 ? HEAVY : LONG,
  weight,
  price,
});

/**
 * Both halves of an offset tool for one height of step. With their die of 90 they stand under one ram with V 8 (214 mm) in 1 mm of sheet t: with e and
 * E the empty limits of V and offset and d the V's depth, step - t - e <= offset stack - 214 <= t - d + E.
 */
const OFFSETS = [
  { height: 2.5, leastThickness: 0.8, mostThickness: 1.2, insideRadius: 0.5 },
  { height: 5, leastThickness: 0.8, mostThickness: 1.5, insideRadius: 1 },
] as const;
const OFFSET_PUNCHES = [123.2, 125.7];
const offsetTool = (offset: (typeof OFFSETS)[number], kind: 'punch' | 'die') => ({
  id: `offset-${kind}-${offset.height}`,
  name: `Offset ${kind}, step ${offset.height}, for ${offset.leastThickness} to ${offset.mostThickness} mm`,
  shape: 'offset',
  offset,
  includedAngle: 180,
  rating: 600,
  reversible: true,
  segments: [...MIDDLE],
});

export const DEMO_RACK_DATA = {
  id: 'demo-rack',
  name: 'Demo rack (invented)',
  demo: true,
  currency: 'EUR',
  punches: [
    {
      ...punch,
      id: 'straight-r1',
      name: 'Straight punch, 85 degrees included, tip radius 1',
      shape: 'straight',
      tipRadius: 1,
      includedAngle: 85,
      height: 125,
      profile: { shape: 'straight', bodyWidth: 12, bodyTop: 78, shoulderWidth: 30, shoulderFrom: 92 },
      rating: 900,
      reversible: true,
      segments: [...LONG, ...EARS],
      weight: 18,
      price: 3900,
    },
    {
      ...punch,
      id: 'straight-r3',
      name: 'Heavy straight punch, 80 degrees included, tip radius 3',
      shape: 'straight',
      tipRadius: 3,
      includedAngle: 80,
      height: 125,
      profile: { shape: 'straight', bodyWidth: 26, bodyTop: 90, shoulderWidth: 32, shoulderFrom: 96 },
      rating: 1600,
      reversible: true,
      segments: [...LONG],
      weight: 27,
      price: 4300,
    },
    {
      ...punch,
      id: 'gooseneck',
      name: 'Gooseneck punch, 85 degrees included, tip radius 1',
      shape: 'gooseneck',
      tipRadius: 1,
      includedAngle: 85,
      height: 180,
      profile: {
        shape: 'gooseneck',
        noseFront: 5,
        noseFrontTo: 14,
        noseBack: 20,
        throat: 14,
        throatFrom: 38,
        throatTo: 108,
        neckBack: 40,
        neckFrom: 58,
        neckTo: 122,
        shoulderWidth: 32,
        shoulderFront: 140,
        shoulderBack: 152,
      },
      rating: 500,
      reversible: true,
      segments: [...MIDDLE, ...SLIDING_EARS],
      weight: 39,
      price: 5200,
    },
    {
      ...punch,
      id: 'gooseneck-deep',
      name: 'Deep gooseneck punch, 85 degrees included, tip radius 1',
      shape: 'gooseneck',
      tipRadius: 1,
      includedAngle: 85,
      height: 220,
      profile: {
        shape: 'gooseneck',
        noseFront: 5,
        noseFrontTo: 14,
        noseBack: 22,
        throat: 26,
        throatFrom: 52,
        throatTo: 130,
        neckBack: 56,
        neckFrom: 78,
        neckTo: 150,
        shoulderWidth: 34,
        shoulderFront: 175,
        shoulderBack: 190,
      },
      rating: 350,
      reversible: true,
      segments: [...MIDDLE, ...SLIDING_EARS],
      weight: 53,
      price: 6400,
    },
    {
      // for narrow channels: the front of the nose is ground back to the bending plane, so that a lip inside may pass close by
      ...punch,
      id: 'channel',
      name: 'Channel punch, front upright at the bending plane, tip radius 1',
      shape: 'gooseneck',
      tipRadius: 1,
      includedAngle: 85,
      height: 180,
      profile: {
        shape: 'contour',
        corners: [
          ...CHANNEL_NOSE, [26, 40], [26, 128], [16, 146], [16, 180], [-16, 180], [-16, 150], [4.2, 112], [4.2, 13],
          [-GROUND, 9], [-GROUND, 1 - Math.sqrt(1 - GROUND * GROUND), Math.tan(Math.asin(GROUND) / 4)],
        ],
      },
      rating: 250,
      reversible: true,
      segments: [...MIDDLE],
      weight: 30,
      price: 4800,
    },
    {
      ...punch,
      id: 'acute-30',
      name: 'Acute punch, 30 degrees included, tip radius 0.5',
      shape: 'acute',
      tipRadius: 0.5,
      includedAngle: 30,
      height: 120,
      profile: { shape: 'straight', bodyWidth: 20, bodyTop: 84, shoulderWidth: 30, shoulderFrom: 94 },
      rating: 500,
      reversible: true,
      segments: [...MIDDLE],
      weight: 20,
      price: 3600,
    },
    {
      ...punch,
      id: 'acute-60',
      name: 'Acute punch, 60 degrees included, tip radius 0.8',
      shape: 'acute',
      tipRadius: 0.8,
      includedAngle: 60,
      height: 120,
      profile: { shape: 'straight', bodyWidth: 18, bodyTop: 84, shoulderWidth: 30, shoulderFrom: 94 },
      rating: 700,
      reversible: true,
      segments: [...MIDDLE],
      weight: 20,
      price: 3500,
    },
    {
      ...punch,
      id: 'flattening',
      name: 'Flattening punch for hems',
      shape: 'flattening',
      tipRadius: 0,
      includedAngle: 180,
      height: 120,
      profile: { shape: 'flattening', faceWidth: 36, faceTop: 20, shoulderWidth: 30, shoulderFrom: 26 },
      rating: 1500,
      reversible: true,
      segments: [...MIDDLE],
      weight: 31,
      price: 2900,
    },
    ...OFFSETS.map((offset, i) => ({
      ...punch, ...offsetTool(offset, 'punch'),
      tipRadius: 0,
      height: OFFSET_PUNCHES[i]!,
      profile: { shape: 'offset', landWidth: 36, landTop: 20, shoulderWidth: 30, shoulderFrom: 26 },
      weight: 30,
      price: 2600,
    })),
  ],
  // Heights are such that an acute die, the anvil and a flange die of the same sheet may stand under one ram: with F the
  // flattening stack (210 mm), t the sheet (V / 8), e the empty limits and a, d the tip's depths of pre-bend and flange,
  // acute stack <= F + 2 t + e(acute),  F + 1 + d <= flange stack <= acute stack - a + e(flange). V 6 cannot have both.
  dies: [
    block(6, 85, 0.5, 90, 14, 300, 17, 2500),
    block(8, 85, 0.8, 89, 17, 350, 18, 2500),
    block(10, 85, 1, 90, 20, 400, 19, 2600),
    block(12, 85, 1.2, 90, 24, 500, 20, 2600),
    block(16, 85, 1.6, 92, 30, 600, 21, 2700),
    block(20, 85, 2, 90, 38, 700, 26, 2800),
    block(24, 85, 2.5, 90, 44, 750, 30, 2900),
    block(32, 85, 3, 95, 56, 850, 40, 3300),
    block(40, 80, 4, 100, 70, 1000, 52, 3800),
    block(50, 80, 5, 110, 84, 1200, 67, 4300),
    block(63, 80, 5, 120, 105, 1400, 90, 5100),
    block(80, 80, 6, 130, 130, 1600, 118, 6200),
    block(6, 30, 0.6, 97, 18, 250, 20, 2700),
    block(8, 30, 0.8, 101, 22, 300, 22, 2700),
    block(12, 30, 1, 107, 32, 400, 26, 2900),
    block(16, 30, 1.2, 112, 40, 450, 33, 3100),
    {
      ...die,
      id: 'anvil',
      name: 'Anvil for closing hems',
      shape: 'anvil',
      v: 0,
      includedAngle: 180,
      shoulderRadius: 0,
      height: 90,
      profile: { shape: 'anvil', width: 50 },
      rating: 1500,
      reversible: true,
      segments: [...MIDDLE],
      weight: 36,
      price: 2200,
    },
    ...OFFSETS.map((offset) => ({
      ...die, ...offsetTool(offset, 'die'),
      v: 0,
      shoulderRadius: 0,
      height: 90,
      profile: { shape: 'step', landWidth: 50 },
      weight: 35,
      price: 2400,
    })),
  ],
  risers: [5, 10, 20, 30, 50].map((height) => ({
    id: `riser-${height}`,
    height,
    seat: 'seat A',
    length: 4200,
    width: 60,
  })),
  pricesBeyond: { gooseneck: 9_500, die: 3_600, adapter: 850 },
} as const;

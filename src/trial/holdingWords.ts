import { type Vec3, apply, compose, flatten, invert } from '../geometry/index.js';
import type { Metal } from '../metal/index.js';
import { type Developed, fold, middleFrame } from '../sheet/index.js';
import { blankSize } from './developedSize.js';
import { CHORD_ERROR } from './limits.js';
import { listed } from './listed.js';
import type { StrokeOption } from './strokeOption.js';

/** kg: what a hand holds down at the sheet's front edge without a thought. Common practice, no source. */
const EASILY_HELD = 2;
/** mm, both ways: less than this in front of the die is not held with fingers. Common practice, no source. */
const GRIP = 25;

/** How the sheet lies on the die before a stroke. mm from the middle of the V, backwards positive. */
export interface Lying {
  readonly kilograms: number;
  /** Of the weight. */
  readonly centre: number;
  /** Where the die's top ends on either side of its opening. */
  readonly shoulder: number;
  /** kg: what the front edge must be held down with, or the sheet tips off backwards; 0 where it lies by itself. */
  readonly heldDown: number;
  /** mm that the front edge lies before the middle of the V. */
  readonly front: number;
  /** mm of sheet to take hold of before the front shoulder: across the bed (or upright), along it. */
  readonly grip: readonly [number, number];
}

/** Area and first moments of a ring, signed by its run. */
const momentsOf = (ring: readonly (readonly [number, number])[]): readonly [number, number, number] =>
  ring.reduce<[number, number, number]>(([a, mx, my], [x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length]!;
    const cross = x * v - u * y;
    return [a + cross / 2, mx + ((x + u) * cross) / 6, my + ((y + v) * cross) / 6];
  }, [0, 0, 0]);

/** How the sheet lies for this stroke, bent as the strokes before have left it. Arcs count by the middle of their chord. */
export const lyingOf = (sheet: Developed, { setting: { seat, bend: stroke, angleOf } }: Pick<StrokeOption, 'setting'>, metal: Pick<Metal, 'density'>): Lying => {
  const { plates, bends } = sheet.part;
  const first = seat.bends[0]!;
  const { poses } = fold(sheet, bends.map((_, i) => (seat.bends.includes(i) ? 0 : angleOf(i))), bends[first]!.sides[seat.gaugeSide].plate);
  const toMiddle = invert(middleFrame(sheet, first, 0, seat.gaugeSide));
  const sign = seat.gaugeSide === 1 ? 1 : -1;
  const seen = (plate: number, [x, y]: readonly [number, number]): Vec3 => {
    const p = apply(compose(toMiddle, poses[plate]!), [x, y, 0]);
    return [p[0], sign * p[1], p[2]];
  };
  let [area, moment] = [0, 0];
  const outlines: Vec3[][] = [];
  plates.forEach(({ outline, holes }, plate) => {
    const rings = [outline, ...holes].map((ring) => flatten(ring, CHORD_ERROR));
    const [a, mx, my] = rings.map(momentsOf).reduce((sum, m) => [sum[0] + m[0], sum[1] + m[1], sum[2] + m[2]]);
    outlines.push(rings[0]!.map((p) => seen(plate, p)));
    if (a <= 0) return;
    area += a;
    moment += a * seen(plate, [mx / a, my / a])[1];
  });
  bends.forEach(({ sides, zone }, i) => {
    const strip = zone.reduce((sum, ring) => sum + momentsOf(flatten(ring, CHORD_ERROR))[0], 0) * sheet.allowances[i]!;
    const ends = sides.map(({ plate, line: { from, to } }) => seen(plate, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2])[1]);
    area += strip;
    moment += (strip * (ends[0]! + ends[1]!)) / 2;
  });
  const { kilograms } = blankSize(sheet, metal);
  const centre = moment / area;
  const shoulder = stroke.kind === 'V' ? stroke.halfOpening : 0;
  const inFront = outlines.flat().filter((p) => p[1] < -shoulder);
  const spread = (axis: 0 | 1 | 2): number => (inFront.length === 0 ? 0 : Math.max(...inFront.map((p) => p[axis])) - Math.min(...inFront.map((p) => p[axis])));
  const front = Math.max(0, ...outlines.flat().map((p) => -p[1]));
  const reach = Math.max(0, front - shoulder);
  return {
    kilograms, centre, shoulder, front,
    heldDown: centre > shoulder ? (kilograms * (centre - shoulder)) / (front + shoulder) : 0,
    grip: [Math.max(reach, spread(2)), spread(0)],
  };
};

const steps = (numbers: readonly number[]): string => `${numbers.length > 1 ? 'Steps' : 'Step'} ${listed(numbers.map(String))}`;

/** What to beware of in holding the sheet: where it tips off the die backwards, and where too little of it is left to hold. One sentence each, by the worst step. */
export const holdingWords = (sheet: Developed, options: readonly Pick<StrokeOption, 'setting'>[], metal: Pick<Metal, 'density'>): readonly string[] => {
  const all = options.map((option, i) => ({ ...lyingOf(sheet, option, metal), number: i + 1 }));
  const tipping = all.filter(({ heldDown }) => heldDown > EASILY_HELD);
  const small = all.filter(({ grip }) => Math.min(...grip) < GRIP);
  const words: string[] = [];
  if (tipping.length > 0) {
    const { kilograms, centre, shoulder, front, heldDown } = tipping.reduce((a, b) => (b.heldDown > a.heldDown ? b : a));
    const many = tipping.length > 1;
    words.push(`${steps(tipping.map((s) => s.number))} ${many ? 'have' : 'has'} the sheet's weight behind the die: ${kilograms.toFixed(1)} kg with ${many ? 'its centre as much as' : 'its centre'} ${centre.toFixed(0)} mm behind the middle of the V, whose back shoulder lies at ${shoulder.toFixed(0)} mm, and ${front.toFixed(0)} mm of sheet in front, so that it tips off backwards unless a support carries it behind (nobody stands there) or about ${heldDown.toFixed(0)} kg hold it down in front, as local rules and trained people say.`);
  }
  if (small.length > 0) {
    const { grip: [across, along] } = small.reduce((a, b) => (Math.min(...b.grip) < Math.min(...a.grip) ? b : a));
    words.push(`${steps(small.map((s) => s.number))} ${small.length > 1 ? 'leave as little as' : 'leaves'} ${across.toFixed(0)} mm by ${along.toFixed(0)} mm of sheet in front of the die to hold, under ${GRIP} mm by ${GRIP} mm (common practice, no source): hold it with pliers or a magnetic holder, never with fingers near the tools, as local rules and trained people say.`);
  }
  return words;
};

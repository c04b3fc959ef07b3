import type { Contour, Vec2 } from '../geometry/index.js';
import type { Die, Machine, Punch } from '../shop/index.js';
import type { Station, Trial } from '../trial/index.js';
import { type Body, type Carrier, type Slab, makeBody } from './body.js';
import type { Kernel, Pool } from './engine.js';
import { type SlidingFeet, outlineOf, rowSlabs, slidingFeet } from './profileSlabs.js';
import { FAR, RECORD } from './tolerances.js';

/** mm: walls and floor are drawn this thick; the sheet comes from their other side only. */
const WALL = 1000;

const rectangle = (back: Vec2, up: Vec2): Vec2[] => [[back[0], up[0]], [back[1], up[0]], [back[1], up[1]], [back[0], up[1]]];

export const punchOf = (trial: Trial, station: Station): Punch | undefined =>
  trial.punches.find((p) => p.id === station.punch);
export const dieOf = (trial: Trial, station: Station): Die | undefined => trial.dies.find((d) => d.id === station.die);

const bedLong = (machine: Machine, contour: Contour): Slab[] => [
  { polygons: [outlineOf(contour)], from: -machine.length / 2, to: machine.length / 2 },
];

const punchSlabs = (kernel: Kernel, punch: Punch, s: Station): Slab[] => {
  const outline = outlineOf(punch.profile, s.punchFacing, [0, -punch.height]);
  return rowSlabs(kernel, outline, -punch.height, s.punchSegments, punch.segments, s.punchFacing);
};

const feetOf = (kernel: Kernel, punch: Punch, s: Station): SlidingFeet[] =>
  slidingFeet(kernel, outlineOf(punch.profile, s.punchFacing, [0, -punch.height]), -punch.height, s.punchSegments, punch.segments, s.punchFacing);

/** Dies stand with their full profile over each segment's length. */
const dieSlabs = (kernel: Kernel, die: Die, s: Station): Slab[] => {
  const row = s.dieSegments.map((p) => ({ length: p.length, from: p.from }));
  return rowSlabs(kernel, outlineOf(die.profile, s.dieFacing, [0, s.dieTop]), s.dieTop, row, die.segments, s.dieFacing);
};

/** The risers under a die as one block, as wide as the widest riser at hand for its seat. */
const riserSlabs = (trial: Trial, die: Die, s: Station): Slab[] => {
  const fitting = trial.risers.filter((r) => r.seat === die.tang && r.height <= s.riser + RECORD);
  if (s.riser <= 0 || fitting.length === 0) return [];
  const half = Math.max(...fitting.map((r) => r.width)) / 2;
  return s.dieSegments.map((p) => ({
    polygons: [rectangle([-half, half], [0, s.riser])],
    from: p.from,
    to: p.from + p.length,
  }));
};

/** Everything of the press that does not depend on the step: all stations, beam, clamp, bed, gauge beam, frames, floor. */
export const pressBodies = (kernel: Kernel, pool: Pool, trial: Trial): Body[] => {
  const { machine } = trial;
  const bodies: Body[] = [];
  const add = (slabs: readonly Slab[], name: string, carrier: Carrier, kind?: Body['kind'], station?: string, ears?: Body['ears']): void => {
    if (slabs.length > 0) bodies.push(makeBody(kernel, pool, slabs, name, carrier, kind, station, ears));
  };
  for (const s of trial.stations) {
    const [punch, die] = [punchOf(trial, s), dieOf(trial, s)];
    if (punch !== undefined) add(punchSlabs(kernel, punch, s), `the punch of station ${s.id}`, 'ram', 'punch', s.id);
    for (const { slides, hanging, out } of punch === undefined ? [] : feetOf(kernel, punch, s)) {
      add(out, `an ear of the punch of station ${s.id}`, 'ram', 'punch', s.id, { state: 'out', slides });
      add(hanging, `a hanging ear of the punch of station ${s.id}`, 'ram', 'punch', s.id, { state: 'hanging', slides });
    }
    if (die === undefined) continue;
    add(dieSlabs(kernel, die, s), `the die of station ${s.id}`, 'bed', 'die', s.id);
    add(riserSlabs(trial, die, s), `the riser of station ${s.id}`, 'bed');
  }
  for (const c of machine.beam) add(bedLong(machine, c), 'the upper beam', 'ram');
  for (const c of machine.clamp) add(bedLong(machine, c), 'the clamp', 'ram');
  for (const c of machine.bed) add(bedLong(machine, c), 'the bed', 'bed');
  add(bedLong(machine, machine.gauge.beam), 'the gauge beam', 'gauge');
  const frame = rectangle([machine.throat, machine.throat + FAR], [-machine.bedHeight, machine.openHeight + FAR]);
  const inner = machine.betweenFrames / 2;
  add([{ polygons: [frame], from: -inner - WALL, to: -inner }], 'the left side frame', 'bed');
  add([{ polygons: [frame], from: inner, to: inner + WALL }], 'the right side frame', 'bed');
  const floor = rectangle([-FAR, FAR], [-machine.bedHeight - WALL, -machine.bedHeight]);
  add([{ polygons: [floor], from: -FAR, to: FAR }], 'the floor', 'bed');
  return bodies;
};

/** The fingers with their middles at `z` along the bed, the right one `skew` further back; then the bar that carries them stands there too. */
export const fingerBodies = (kernel: Kernel, pool: Pool, machine: Machine, z: readonly number[], skew = 0): Body[] => {
  const { width, profile } = machine.gauge.finger;
  const back = (polygon: readonly Vec2[]): readonly Vec2[] => polygon.map((p): Vec2 => [p[0] + skew, p[1]]);
  const fingers = z.map((at, i) => {
    const outline = outlineOf(profile);
    const place = z.length === 1 ? '' : i === 0 ? 'left ' : i === z.length - 1 ? 'right ' : `${i + 1}. `;
    const slab = { polygons: [i === 0 ? outline : back(outline)], from: at - width / 2, to: at + width / 2 };
    return makeBody(kernel, pool, [slab], `the ${place}finger`, 'gauge', 'finger');
  });
  const bar = bedLong(machine, machine.gauge.beam).map((s) => ({ ...s, polygons: s.polygons.map(back) }));
  return skew === 0 ? fingers : [...fingers, makeBody(kernel, pool, bar, 'the gauge beam at the right finger', 'gauge')];
};

import { type Contour, type Vec2, flatten, vertex } from '../../geometry/index.js';
import { type Facing, type Tool, mirrorProfile, toolSlabs } from '../../shop/index.js';
import { dieOf, punchOf, stationOf } from '../../stroke/index.js';
import type { Placed, Step, Trial } from '../../trial/index.js';
import { type Prism, addPrism } from '../scene/toolMesh.js';

/** The press about one station, each body from its own origin: punch and clamp from tip, fingers from their stop. */
export interface Press {
  readonly punch: Prism;
  readonly clamp: Prism;
  readonly die: Prism;
  readonly bed: Prism;
  /** From (back 0, up 0) with the gauge at its stop. */
  readonly fingers: Prism;
}

/** mm of bed and clamp shown past the tools, and of the bed's height below the die seat. */
const BESIDE = 30;
const SHOWN = 30;

const empty = (): Prism => ({ corners: [], edges: [] });

const tool = (it: Tool, facing: Facing, segments: readonly Placed[]): Prism => {
  const prism = empty();
  for (const { length, from, ear } of segments) {
    const segment = it.segments.find((s) => s.length === length && s.ear?.hand === ear) ?? { length, count: 1 };
    for (const slab of toolSlabs(it, segment)) {
      addPrism(prism, facing === 'reversed' ? mirrorProfile(slab.profile) : slab.profile, from + slab.from, from + slab.to, [0, 0]);
    }
  }
  return prism;
};

/** The part of a cross-section above -`SHOWN`. */
const topOf = (contour: Contour): Contour => {
  const ring = flatten(contour, 0.5);
  return ring.flatMap((p, i): Vec2[] => {
    const q = ring[(i + 1) % ring.length]!;
    const cut: Vec2[] = p[1] >= -SHOWN !== q[1] >= -SHOWN ? [[p[0] + ((q[0] - p[0]) * (-SHOWN - p[1])) / (q[1] - p[1]), -SHOWN]] : [];
    return p[1] >= -SHOWN ? [p, ...cut] : cut;
  }).map(([x, y]) => vertex(x, y));
};

export const pressOf = (trial: Trial, step: Step): Press => {
  const [station, punch, die] = [stationOf(trial, step), punchOf(trial, step.punch), dieOf(trial, step.die)];
  const segments = [...station.punchSegments, ...station.dieSegments];
  const low = Math.min(...segments.map(({ from }) => from)) - BESIDE;
  const high = Math.max(...segments.map(({ from, length }) => from + length)) + BESIDE;
  const press: Press = { punch: tool(punch, station.punchFacing, station.punchSegments), clamp: empty(), die: tool(die, station.dieFacing, station.dieSegments), bed: empty(), fingers: empty() };
  for (const section of trial.machine.clamp) addPrism(press.clamp, section, low, high, [0, punch.height]);
  for (const section of trial.machine.bed.map(topOf)) if (section.length >= 3) addPrism(press.bed, section, low, high, [0, 0]);
  if (station.riser > 0) {
    const half = (trial.risers[0]?.width ?? 60) / 2;
    addPrism(press.die, [vertex(-half, 0), vertex(half, 0), vertex(half, station.riser), vertex(-half, station.riser)], low + BESIDE, high - BESIDE, [0, -station.dieTop]);
  }
  if (step.stop.kind !== 'none') {
    const { finger } = trial.machine.gauge;
    step.stop.z.forEach((z, i) => addPrism(press.fingers, finger.profile, z - finger.width / 2, z + finger.width / 2, [step.stop.axisX + (i === 0 ? 0 : step.stop.skew ?? 0), step.stop.r]));
  }
  return press;
};

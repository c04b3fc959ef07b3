import { type Contour, type Vec2, type Vec3, shift, vertex } from '../geometry/index.js';
import { type Die, type Machine, type Punch, mirrorProfile, toolSlabs } from '../shop/index.js';
import type { Placed, Station, Step } from '../trial/index.js';
import { type Body, type Mark, moveBody } from './body.js';
import { extrude } from './extrude.js';
import { flatRing } from './flatRing.js';
import { type Units, roundFigure } from './format.js';

/** A tool's segments as they stand in a station, its origin (tip or die top) at height `up`. */
export const toolBodies = (
  tool: Punch | Die, facing: 'as drawn' | 'reversed', segments: readonly Placed[], up: number,
): Body[] =>
  segments.flatMap((placed, i) => {
    const segment =
      tool.segments.find(({ length, ear }) => length === placed.length && ear?.hand === placed.ear) ??
      { length: placed.length, count: 1 };
    return toolSlabs(tool, segment).map((slab) => {
      const profile = facing === 'reversed' ? mirrorProfile(slab.profile) : slab.profile;
      const body = extrude(`${tool.kind} segment ${i + 1}`, profile, placed.from + slab.from, placed.from + slab.to, 'tool');
      return moveBody(shift([0, 0, up]), body);
    });
  });

/** mm of the bed's height that a picture shows below the die seat. */
const SHOWN = 34;

/** A cross-section's part over the height -`SHOWN`. */
const topOf = (contour: Contour): Contour => {
  const points = flatRing(contour, 0.5).points;
  const kept: Vec2[] = [];
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length]!;
    if (p[1] >= -SHOWN) kept.push(p);
    if (p[1] >= -SHOWN !== q[1] >= -SHOWN) kept.push([p[0] + ((q[0] - p[0]) * (-SHOWN - p[1])) / (q[1] - p[1]), -SHOWN]);
  });
  return kept.map(([x, y]) => vertex(x, y));
};

/** The ruler's ticks in its own unit: between ticks where there is room, between longer ones, between numbered ones. */
const TICKS: Readonly<Record<Units, { readonly mm: number; readonly short: number; readonly middle: number; readonly long: number }>> = {
  mm: { mm: 1, short: 10, middle: 50, long: 100 },
  in: { mm: 25.4, short: 1, middle: 2, long: 4 },
};
/** A stretch of bed (mm) longer than this has no room for the shortest ticks. */
const FINE = 700;

/** The ruler on the bed's front face: along from the middle of the bed, as every number along the bed is given. */
const ruler = (front: number, low: number, high: number, units: Units): Mark[] => {
  const { mm, short, middle, long } = TICKS[units];
  const step = high - low < FINE ? short : middle;
  const marks: Mark[] = [];
  for (let k = Math.ceil(low / mm / step); k * step * mm <= high; k++) {
    const value = k * step;
    const numbered = value % long === 0;
    const length = numbered ? 9 : value % middle === 0 ? 6 : 3.5;
    marks.push({
      from: [value * mm, front, 0],
      to: [value * mm, front, -length],
      normal: [0, -1, 0],
      pen: 'thin',
      ...(numbered ? { label: roundFigure(value * mm, units) } : {}),
    });
  }
  return marks;
};

/** The bed's top with the ruler on its front, from `low` to `high` along; risers under the die when the station stands on them. */
export const bedBodies = (
  machine: Machine, station: Station, riserWidth: number, low: number, high: number, units: Units,
): Body[] => {
  const [from, to] = [Math.max(low, -machine.length / 2), Math.min(high, machine.length / 2)];
  const tops = machine.bed.map(topOf).filter((top) => top.length >= 3);
  const bed = tops.map((top) => {
    // the front edge at the die seat's height carries the ruler
    const front = Math.min(...top.filter((v) => v.y > -1).map((v) => v.x));
    const marks = Number.isFinite(front) ? ruler(front, from, to, units) : [];
    return extrude('bed', top, from, to, 'bed', marks);
  });
  if (station.riser === 0) return bed;
  const w = riserWidth / 2;
  const segments = station.dieSegments;
  const [a, b] = [segments[0]!.from, Math.max(...segments.map((s) => s.from + s.length))];
  const section = [vertex(-w, 0), vertex(w, 0), vertex(w, station.riser), vertex(-w, station.riser)];
  return [...bed, extrude('riser', section, a, b, 'tool')];
};

/** The fingers at their stop for a step, `behind` mm further back, with the face that touches outlined in the accent. */
export const fingerBodies = (machine: Machine, step: Step, behind: number): Body[] => {
  const { finger } = machine.gauge;
  const face = finger.faces.find(({ name }) => name === step.stop.face);
  const x = step.stop.axisX + behind;
  return step.stop.z.map((z, i) => {
    const back = x + (i === 0 ? 0 : step.stop.skew ?? 0);
    const [a, b] = [z - finger.width / 2, z + finger.width / 2];
    const body = moveBody(shift([0, back, step.stop.r]), extrude(`finger ${i + 1}`, finger.profile, a, b, 'tool'));
    if (!face) return body;
    const corner = (along: number, up: number): Vec3 => [along, back + face.behind, step.stop.r + up];
    const rim = [corner(a, face.from), corner(b, face.from), corner(b, face.to), corner(a, face.to)];
    const marks = rim.map((from, k): Mark => ({ from, to: rim[(k + 1) % 4]!, normal: [0, -1, 0], pen: 'accent' }));
    return { ...body, marks };
  });
};

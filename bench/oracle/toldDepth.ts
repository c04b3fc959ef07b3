import { type Rigid, type Vec2, type Vec3, compose, flatten } from '../../src/geometry/index.js';
import type { Body, Carrier } from '../../src/proof/body.js';
import { sideFrame } from '../../src/proof/bendShape.js';
import type { Element } from '../../src/proof/element.js';
import { type CrossSection, type Kernel, type Manifold, Pool, loadKernel, matrixOf, section } from '../../src/proof/engine.js';
import { makeMetal } from '../../src/proof/metal.js';
import type { Phase, PhaseName } from '../../src/proof/phase.js';
import { phasesOf } from '../../src/proof/phases.js';
import { dieOf, pressBodies, punchOf } from '../../src/proof/pressBodies.js';
import { type Setting, makeSetting } from '../../src/proof/setting.js';
import { plateNames } from '../../src/proof/fold.js';
import type { Conflict } from '../../src/trial/conflict.js';
import type { Trial } from '../../src/trial/index.js';

const RADIANS = Math.PI / 180;
/** Looks over a turn, and halvings of the room about the deepest. */
const LOOKS = 24;
const HALVINGS = 9;
/** A shift moves a body far along a side: where it is longer than this (mm) it is cut off, since nothing is told of so deep a place. */
const LONGEST = 4000;

const PHASES: Partial<Record<Conflict['phase'], PhaseName>> = {
  'way in': 'way in', 'ram closing': 'close', stroke: 'bend', 'ram opening': 'open', 'way out': 'way out',
};

type Polygon = readonly Vec2[];

const cut = (v: number): number => Math.max(-LONGEST, Math.min(LONGEST, v));

const areaOf = (p: Polygon): number => p.reduce((sum, a, i) => sum + a[0] * p[(i + 1) % p.length]![1] - a[1] * p[(i + 1) % p.length]![0], 0);

const leftTurning = (p: Polygon): Polygon => (areaOf(p) < 0 ? [...p].reverse() : p);

/** All shifts of `still` by which it meets `moving` where that stands: sums of each edge with each edge of the other turned about the origin. */
const meetings = (kernel: Kernel, moving: readonly Polygon[], still: readonly Polygon[]): CrossSection => {
  const parts: Polygon[] = [];
  for (const m of moving) {
    const turned = m.map((p): Vec2 => [-p[0], -p[1]]);
    const [m0] = turned;
    for (const s of still) {
      parts.push(leftTurning(s.map((p): Vec2 => [p[0] + m0![0], p[1] + m0![1]])), leftTurning(turned.map((p): Vec2 => [p[0] + s[0]![0], p[1] + s[0]![1]])));
      turned.forEach((p, i) => {
        const q = turned[(i + 1) % turned.length]!;
        s.forEach((a, k) => {
          const b = s[(k + 1) % s.length]!;
          const quad = leftTurning([[p[0] + a[0], p[1] + a[1]], [q[0] + a[0], q[1] + a[1]], [q[0] + b[0], q[1] + b[1]], [p[0] + b[0], p[1] + b[1]]]);
          if (areaOf(quad) > 1e-9) parts.push(quad);
        });
      });
    }
  }
  return section(kernel, parts, 'Positive');
};

const toEdge = (p: Vec2, q: Vec2): number => {
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
  const s = Math.min(1, Math.max(0, -(p[0] * dx + p[1] * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(p[0] + s * dx, p[1] + s * dy);
};

/** The least shift in the cross-section that parts the two, mm; negative: so far apart already. */
const shiftOf = (kernel: Kernel, moving: readonly Polygon[], still: readonly Polygon[]): number => {
  const all = meetings(kernel, moving, still);
  const rings = all.toPolygons();
  all.delete();
  let winding = 0;
  let least = Infinity;
  for (const ring of rings) {
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      least = Math.min(least, toEdge([p[0], p[1]], [q[0], q[1]]));
      if (p[1] <= 0 !== q[1] <= 0 && p[0] - (p[1] * (q[0] - p[0])) / (q[1] - p[1]) > 0) winding += p[1] < q[1] ? 1 : -1;
    });
  }
  return winding === 0 ? -least : least;
};

/** Everything about one step of a record that the depth of a meeting is asked of. */
interface Replayed {
  readonly kernel: Kernel;
  readonly setting: Setting;
  readonly phases: readonly Phase[];
  readonly press: readonly Body[];
  readonly free: () => void;
}

const replayed = async (trial: Trial, number: number): Promise<Replayed> => {
  const kernel = await loadKernel();
  const pool = new Pool();
  const { sheet, steps, stations, machine } = trial;
  const step = steps.find((s) => s.number === number)!;
  const station = stations.find((s) => s.id === step.station)!;
  const most = sheet.part.bends.map((b) => Math.max(b.bendAngle, ...steps.filter((s) => s.bends.includes(b.id)).map((s) => s.bendAngleUnderLoad)) * RADIANS);
  const metal = makeMetal(kernel, pool, sheet, most);
  const angles = sheet.part.bends.map((b) => (steps.some((s) => s.number < number && s.bends.includes(b.id)) ? b.bendAngle * RADIANS : 0));
  const bends = step.bends.map((id) => sheet.part.bends.findIndex((b) => b.id === id));
  const setting = makeSetting({ step, machine, sheet }, { station, punch: punchOf(trial, station)!, die: dieOf(trial, station)! }, bends, metal, angles, plateNames(sheet));
  return { kernel, setting, phases: phasesOf(setting).phases, press: pressBodies(kernel, pool, trial), free: () => pool.freeAll() };
};

/** The bend by which a plate hangs on the rest, seen from the wing's root; null for the root itself. */
const hangsOn = ({ sheet, wings, running }: Setting, plate: number): number | null => {
  const root = wings.roots[wings.ofPlate.get(plate)!];
  const queue: { readonly at: number; readonly by: number | null }[] = [{ at: root, by: null }];
  const seen = new Set([root]);
  for (let here = queue.shift(); here; here = queue.shift()) {
    if (here.at === plate) return here.by;
    sheet.part.bends.forEach(({ sides: [one, two] }, by) => {
      const to = one.plate === here!.at ? two.plate : two.plate === here!.at ? one.plate : null;
      if (to === null || running.has(by) || seen.has(to)) return;
      seen.add(to);
      queue.push({ at: to, by });
    });
  }
  return null;
};

const elementsOf = (setting: Setting, plate: number): readonly Element[] => {
  const by = hangsOn(setting, plate);
  return setting.elements.filter((e) => (e.kind === 'plate' ? e.index === plate : e.index === by && !e.running));
};

const poseIn = (phase: Phase, e: Element, carrier: Carrier, s: number): Rigid => {
  const [along, back, up] = phase.offset(carrier, s);
  return compose({ x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1], o: [-along, -back, -up] }, compose(phase.root(e.wing, s), e.rel));
};

const isBody: Readonly<Record<string, (b: Body, own: boolean) => boolean>> = {
  punch: (b, own) => b.kind === 'punch' && own && b.ears === undefined,
  die: (b, own) => b.kind === 'die' && own,
  beam: (b) => ['the upper beam', 'the clamp'].includes(b.name),
  bed: (b) => ['the bed', 'the floor'].includes(b.name),
};

/** What a polygon covers while it is shifted by `by`: it is what it sweeps edge by edge, and both ends. */
const sweptBy = (polygon: Polygon, by: Vec2): readonly Polygon[] => {
  const at = polygon.map((p): Vec2 => [cut(p[0] + by[0]), cut(p[1] + by[1])]);
  const quads = polygon.map((p, i): Polygon => [p, polygon[(i + 1) % polygon.length]!, at[(i + 1) % polygon.length]!, at[i]!]);
  return [polygon, at, ...quads].map(leftTurning).filter((p) => areaOf(p) > 1e-6);
};

/** A step's outline of one element: what of it stands over `along`, its metal that may touch by purpose taken away; seen from the carrier's bodies. */
const outlinesOf = ({ setting }: Replayed, e: Element, phase: Phase, carrier: Carrier, s: number, along: Vec2, beyond: number | null): readonly Polygon[] => {
  const own: Manifold[] = [];
  const keep = (m: Manifold): Manifold => {
    own.push(m);
    return m;
  };
  let solid = e.solid(phase.angle(s), 0, true);
  if (beyond !== null) {
    // cut off in the wing's root plate, square to the bend's own tangent line there
    const { gaugeSide } = setting.step;
    const side = e.wing === 'gauge' ? gaugeSide : gaugeSide === 0 ? 1 : 0;
    const { o, y } = sideFrame(setting.sheet.part.bends[setting.first]!.sides[side].line);
    const out = side === 1 ? 1 : -1;
    const inRoot = keep(solid.transform(matrixOf(e.rel)));
    const trimmed = keep(inRoot.trimByPlane([y[0] * out, y[1] * out, 0], (o[0] * y[0] + o[1] * y[1]) * out + beyond));
    solid = keep(trimmed.transform(matrixOf(compose(poseIn(phase, e, carrier, s), inverseOf(e.rel)))));
  } else solid = keep(solid.transform(matrixOf(poseIn(phase, e, carrier, s))));
  const over = keep(keep(solid.trimByPlane([1, 0, 0], along[0])).trimByPlane([-1, 0, 0], -along[1]));
  // (along, back, up) to (back, up, along), so that the shadow falls along the bed
  const upright = keep(over.transform([0, 0, 1, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 1]));
  const shadow = upright.project();
  const polygons = over.isEmpty() ? [] : shadow.toPolygons().map((p) => p.map((q): Vec2 => [q[0], q[1]]));
  shadow.delete();
  for (const m of own) m.delete();
  return polygons.filter((p) => areaOf(p) > 1e-6);
};

/** mm in space between an element and a body at a place of a phase, as far as one looks (10 mm). */
const roomBetween = (e: Element, phase: Phase, s: number, body: Body): number => {
  const solid = e.solid(phase.angle(s), 0, true).transform(matrixOf(poseIn(phase, e, body.carrier, s)));
  const room = solid.minGap(body.solid, 10);
  solid.delete();
  return room;
};

const inverseOf = (m: Rigid): Rigid => {
  const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const [x, y, z] = [0, 1, 2].map((k): Vec3 => [m.x[k]!, m.y[k]!, m.z[k]!]);
  return { x: x!, y: y!, z: z!, o: [-dot(m.x, m.o), -dot(m.y, m.o), -dot(m.z, m.o)] };
};

/** The most over a phase, turning through it look by look and closer about the deepest. */
const most = (phase: Phase, at: (s: number) => number): number => {
  if (phase.kind === 'straight') return at(0);
  const looks = Array.from({ length: LOOKS + 1 }, (_, k) => at(k / LOOKS));
  let deepest = Math.max(...looks);
  let middle = looks.indexOf(deepest) / LOOKS;
  for (let k = 0, room = 0.5 / LOOKS; k < HALVINGS; k++, room /= 2) {
    for (const s of [Math.max(0, middle - room), Math.min(1, middle + room)]) {
      const here = at(s);
      if (here > deepest) [deepest, middle] = [here, s];
    }
  }
  return deepest;
};

/**
 * How deep the proof engine's own metal of a plate stands in its own body in a phase of a recorded step, mm: the most, over the phase, of
 * the least shift in the cross-section that parts them. Poses, solids and what a straight move sweeps are the proof's; the
 * shift is found by summing edges in its kernel. Negative: they come no nearer than that; of what stands beside the tools alone, the
 * room in space. Null for what is no such pair.
 */
export const depthByProof = async (trial: Trial, number: number, conflict: Pick<Conflict, 'phase' | 'body'>, plate: number): Promise<number | null> => {
  const name = PHASES[conflict.phase];
  const wanted = isBody[conflict.body];
  if (!name || !wanted) return null;
  const all = await replayed(trial, number);
  const { kernel, setting, press } = all;
  try {
    const touching = name !== 'way in' && name !== 'way out';
    const { station } = setting;
    const own: Vec2 = [station.punchSegments[0]!.from, Math.max(...station.punchSegments.map((p) => p.from + p.length))];
    const bodies = press.filter((b) => wanted(b, b.station === station.id));
    const { carrier } = bodies[0]!;
    const along: Vec2 = conflict.body === 'punch' || conflict.body === 'die' ? own : [-1e5, 1e5];
    const polygons = bodies.flatMap((b) => b.slabs).filter((b) => b.from < along[1] && b.to > along[0]).flatMap((b) => b.polygons)
      .map((p) => leftTurning(p.map((q): Vec2 => [cut(q[0]), cut(q[1])])));
    const elements = elementsOf(setting, plate).flatMap((e) => {
      const level = setting.level.has(e);
      if (conflict.body === 'die' && (level || setting.resting.has(e))) return [];
      return [{ e, beyond: conflict.body === 'punch' && touching && level ? setting.step.contactReach : null }];
    });
    let deepest: number | null = null;
    let room = Infinity;
    for (const phase of all.phases.filter((p) => p.name === name)) {
      room = Math.min(room, phase.kind === 'straight' ? Infinity : -most(phase, (s) => -Math.min(...elements.flatMap(({ e }) => bodies.map((b) => roomBetween(e, phase, s, b))))));
      const by = phase.kind === 'straight' ? phase.sweep[carrier] : [0, 0, 0];
      if (by === undefined) continue;
      const still = by[1] === 0 && by[2] === 0 ? polygons : polygons.flatMap((p) => sweptBy(p, [by[1]!, by[2]!]));
      const at = (s: number): number => {
        const moving = elements.flatMap(({ e, beyond }) => outlinesOf(all, e, phase, carrier, s, along, beyond));
        return moving.length === 0 ? -Infinity : shiftOf(kernel, moving, still);
      };
      deepest = Math.max(deepest ?? -Infinity, most(phase, at));
    }
    // nothing stands over the tools: then it is the room beside their ends
    return deepest === -Infinity && Number.isFinite(room) ? -room : deepest;
  } finally {
    all.free();
  }
};

/** Corners of a plate as a slab, and whether it is convex: what the sum of corners is good for. */
const slabOf = (setting: Setting, plate: number): { readonly corners: readonly Vec3[]; readonly convex: boolean } => {
  const outline = flatten(setting.sheet.part.plates[plate]!.outline, 0.02);
  const h = setting.sheet.part.thickness / 2;
  const convex = outline.every((p, i) => {
    const [q, r] = [outline[(i + 1) % outline.length]!, outline[(i + 2) % outline.length]!];
    return (q[0] - p[0]) * (r[1] - q[1]) - (q[1] - p[1]) * (r[0] - q[0]) >= -1e-9;
  });
  return { corners: outline.flatMap((p): Vec3[] => [[p[0], p[1], -h], [p[0], p[1], h]]), convex };
};

/**
 * How deep two plates run into each other in the bend of a recorded step, mm: the most, over the bend, of the least shift in space
 * that parts the two, from the hull of all differences of their corners. Null where one of them is not convex.
 */
export const plateDepthByProof = async (trial: Trial, number: number, one: number, other: number): Promise<number | null> => {
  const all = await replayed(trial, number);
  const { kernel, setting } = all;
  try {
    const [a, b] = [slabOf(setting, one), slabOf(setting, other)];
    const [ea, eb] = [one, other].map((plate) => setting.elements.find((e) => e.kind === 'plate' && e.index === plate));
    if (!a.convex || !b.convex || !ea || !eb) return null;
    const phase = all.phases.find((p) => p.name === 'bend')!;
    const at = (s: number): number => {
      const [pa, pb] = [ea, eb].map((e) => compose(phase.root(e.wing, s), e.rel));
      const placed = (m: Rigid, p: Vec3): [number, number, number] => [0, 1, 2].map((k) => m.o[k]! + m.x[k]! * p[0] + m.y[k]! * p[1] + m.z[k]! * p[2]) as [number, number, number];
      const [qa, qb] = [a.corners.map((p) => placed(pa!, p)), b.corners.map((p) => placed(pb!, p))];
      const hull = kernel.Manifold.hull(qa.flatMap((p) => qb.map((q): [number, number, number] => [p[0] - q[0], p[1] - q[1], p[2] - q[2]])));
      const { numProp, vertProperties: v, triVerts } = hull.getMesh();
      hull.delete();
      let least = Infinity;
      for (let i = 0; i < triVerts.length; i += 3) {
        const [p, q, r] = [0, 1, 2].map((k): Vec3 => [v[triVerts[i + k]! * numProp]!, v[triVerts[i + k]! * numProp + 1]!, v[triVerts[i + k]! * numProp + 2]!]);
        const [u, w] = [[q![0] - p![0], q![1] - p![1], q![2] - p![2]] as const, [r![0] - p![0], r![1] - p![1], r![2] - p![2]] as const];
        const n = [u[1] * w[2] - u[2] * w[1], u[2] * w[0] - u[0] * w[2], u[0] * w[1] - u[1] * w[0]] as const;
        const size = Math.hypot(...n);
        if (size > 1e-6) least = Math.min(least, (n[0] * p![0] + n[1] * p![1] + n[2] * p![2]) / size);
      }
      return least;
    };
    return most(phase, at);
  } finally {
    all.free();
  }
};

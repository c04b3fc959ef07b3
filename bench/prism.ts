import RAPIER from '@dimforge/rapier3d-compat';
import Module, { type Manifold } from 'manifold-3d';
import { pathToFileURL } from 'node:url';
import { type Planar, type Rigid, type Solid, extentWithin, gapOf } from '../src/geometry/index.js';
import { metalById } from '../src/metal/index.js';
import { demoFloor, demoRack } from '../src/shop/index.js';
import { randomSerial } from './random.js';
import { type Body, planesSeen } from '../src/trial/body.js';
import { type Searched, planTrial } from '../src/trial/index.js';
import { settingOf } from '../src/trial/strokeOption.js';
import { strike } from '../src/trial/strike.js';
import { passesFor, passesStroke } from '../src/trial/ways.js';
import { viewer } from '../src/trial/views.js';
import { mulberry32 } from './mulberry32.js';
import { questionCounts } from './questionCounts.js';

const POSES = 200;
/** Rounds of each pose for each engine, so that one pose can be timed. */
const ROUNDS = { prism: 200, rapier: 40, manifold: 4 } as const;
/** Along the bed, mm: where the tools stand. */
const TOOLS = [-80, 80] as const;
/** mm: beam and bed are cut off here, so that every engine gets the same finite bodies. */
const BED = [-2000, 2000] as const;

/** A convex body of the press with its reach along the bed. */
interface Still {
  readonly body: Body;
  readonly along: readonly [number, number];
}

const cpu = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

/** The corners of a still body as a solid in (along, back, up). */
const solidOf = ({ body, along }: Still): Solid => {
  const n = body.polygon.length;
  return {
    corners: along.flatMap((a) => body.polygon.map((p) => [a, p[0], p[1]] as const)),
    faces: [body.polygon.map((_, i) => n - 1 - i), body.polygon.map((_, i) => n + i), ...body.polygon.map((_, i) => [i, (i + 1) % n, n + ((i + 1) % n), n + i])],
  };
};

const rigidOf = ({ c, s, x, y }: Planar): Rigid => ({ x: [1, 0, 0], y: [0, c, s], z: [0, -s, c], o: [0, x, y] });

/**
 * One rigid pose of a folded profile of 8 plates against punch, die, beam and bed: our prisms, rapier and manifold-3d, bodies
 * built beforehand, CPU seconds. Then the price of the question that the planner really asks: intervals over the whole stroke.
 */
export const prismBench = async (print: (line: string) => void): Promise<void> => {
  const machine = demoFloor().find((m) => m.id === 'general');
  const metal = metalById('dc01');
  if (!machine || !metal) throw new Error('the demo data lack the general machine or dc01');
  let searched: Searched | null = null;
  planTrial({ part: randomSerial(9, 7), machine, rack: demoRack(), metal, quantity: 50, limits: { seconds: 20 } }, { now: () => performance.now(), onSearch: (s) => void (searched ??= s) });
  const { task, tooling } = searched! as Searched;
  const pair = tooling.pairs[0]!;
  // the fourth bend runs, all others are made: both wings are folded metal
  const running = task.groups.findIndex((g) => g.bends.includes(3));
  const setting = settingOf(tooling, machine, task.groups[running]!, 0, pair, viewer(tooling.sheet), (b) => tooling.sheet.part.bends[b]!.bendAngle);
  const pieces = setting.views.filter((v) => v.onGaugeSide).flatMap((v) => v.pieces);
  const still: Still[] = [
    ...[...pair.punchBodies, ...pair.dieBodies].map((body) => ({ body, along: TOOLS })),
    ...[...pair.ramBodies, ...pair.bedBodies.slice(0, -1)].map((body) => ({ body, along: BED })),
  ];
  const random = mulberry32(5);
  // tools together about the die, the wing anywhere near them: some poses overlap, some do not
  const poses = Array.from({ length: POSES }, (): Planar => {
    const a = (random() - 0.3) * 1.5;
    return { c: Math.cos(a), s: Math.sin(a), x: (random() - 0.5) * 160, y: (random() - 0.3) * 120 };
  });

  const planes: number[] = [];
  const prism = (pose: Planar): boolean =>
    pieces.some((piece) => still.some(({ body, along }) => {
      if (gapOf(piece.shape, pose, body.shape, 0) > 0 || piece.along[0] > along[1] || piece.along[1] < along[0]) return false;
      // over its whole length beside the body: what meets in the outline meets
      if (piece.along[0] >= along[0] && piece.along[1] <= along[1]) return true;
      const extent = extentWithin(piece.solid, planes, planesSeen(body, 0, pose, planes));
      return extent !== null && extent[0] < along[1] && extent[1] > along[0];
    }));

  await RAPIER.init();
  const world = new RAPIER.World({ x: 0, y: 0, z: 0 });
  const shapeOfSolid = (solid: Solid): RAPIER.ColliderDesc => RAPIER.ColliderDesc.convexHull(new Float32Array(solid.corners.flatMap((p) => [...p])))!;
  for (const s of still) world.createCollider(shapeOfSolid(solidOf(s)));
  world.step();
  const moving = pieces.map((p) => shapeOfSolid(p.solid).shape);
  const rapier = ({ c, s, x, y }: Planar): boolean => {
    const half = Math.atan2(s, c) / 2;
    const turn = { x: Math.sin(half), y: 0, z: 0, w: Math.cos(half) };
    return moving.some((shape) => world.intersectionWithShape({ x: 0, y: x, z: y }, turn, shape) !== null);
  };

  const kernel = await Module();
  kernel.setup();
  const union = (solids: readonly Solid[]): Manifold => kernel.Manifold.union(solids.map((s) => kernel.Manifold.hull(s.corners.map((p): [number, number, number] => [p[0], p[1], p[2]]))));
  const [part, press] = [union(pieces.map((p) => p.solid)), union(still.map(solidOf))];
  const manifold = (pose: Planar): boolean => {
    const m = rigidOf(pose);
    const placed = part.transform([...m.x, 0, ...m.y, 0, ...m.z, 0, ...m.o, 1]);
    const shared = placed.intersect(press);
    const hit = !shared.isEmpty() && shared.volume() > 1e-3;
    shared.delete();
    placed.delete();
    return hit;
  };

  const engines = { prism, rapier, manifold } as const;
  const answers = { prism: poses.map(prism), rapier: poses.map(rapier), manifold: poses.map(manifold) };
  const rates = { prism: [] as number[], rapier: [] as number[], manifold: [] as number[] };
  for (const pose of poses) {
    for (const name of ['prism', 'rapier', 'manifold'] as const) {
      const began = cpu();
      for (let k = 0; k < ROUNDS[name]; k++) engines[name](pose);
      rates[name].push(ROUNDS[name] / Math.max(1e-9, cpu() - began));
    }
  }
  const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
  const total = (name: keyof typeof rates): number => POSES / rates[name].reduce((sum, r) => sum + 1 / r, 0);
  const agree = (a: 'prism' | 'rapier'): number => answers[a].filter((hit, i) => hit === answers.manifold[i]).length;
  print(`prisms: ${POSES} poses of ${pieces.length} convex pieces against ${still.length} (${answers.manifold.filter((h) => h).length} overlap by manifold-3d); ` +
    `overlap questions a CPU second: prisms ${total('prism').toFixed(0)}, rapier ${total('rapier').toFixed(0)}, manifold-3d ${total('manifold').toFixed(0)}; ` +
    `agree with manifold-3d: prisms ${agree('prism')}, rapier ${agree('rapier')} of ${POSES}`);
  print(`  at the median pose: prisms ${median(rates.prism.map((r, i) => r / rates.rapier[i]!)).toFixed(1)} times rapier (aim 4), ${median(rates.prism.map((r, i) => r / rates.manifold[i]!)).toFixed(0)} times manifold-3d (aim 30)`);

  const passes = passesStroke(setting.bend, true);
  const began = cpu();
  let asked = 0;
  for (let k = 0; k < 20; k++) {
    for (const view of setting.views) {
      strike(view, pair.punchBodies, passesFor(view, passes), { allowance: 1 });
      asked++;
    }
  }
  print(`  the interval question (one plate against one punch over the whole stroke, where along the bed): ${(asked / (cpu() - began)).toFixed(0)} a CPU second, unremembered`);
  for (const m of [part, press]) m.delete();
  world.free();
  questionCounts(print);
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await prismBench((line) => console.log(line));

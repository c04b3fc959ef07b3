import { type Vec2, type Vec3, dot3 } from '../geometry/index.js';
import type { Outlines } from '../intake/index.js';
import { fitTo } from './drawScene.js';
import { hatchLines } from './hatchLines.js';
import { LETTERS } from './pens.js';
import { type Item, type Picture, group, polyline, strokes, text } from './picture.js';
import { roomiestPoint } from './roomiestPoint.js';
import { type View, project, viewFrom } from './view.js';

/** mm of paper. */
const [WIDTH, HEIGHT, RIM] = [120, 84, 6] as const;
const HATCH = 1.6;
/** More faces than this are hatched without their number beside them. */
const NUMBERED = 8;

/** The four corners that a body can be looked at from, from above and from below. */
const VIEWS: readonly View[] = [32, -32].flatMap((up) => [35, 125, -145, -55].map((round) => viewFrom(round, up)));

/** From where most of the marked faces are seen; from the right front above where that is all the same. */
const bestView = (marked: Outlines['marked']): View => {
  const seen = (view: View): number => marked.reduce((sum, { normal }) => sum + (normal ? Math.max(0, dot3(normal, view.towards)) : 0), 0);
  // a little more than another by rounding is no reason to look from behind
  return VIEWS.reduce((best, view) => (seen(view) > seen(best) + 1e-6 ? view : best));
};

/**
 * A body that was refused: its edges as lines, and the faces that the refusal names hatched, outlined and numbered. Edges that
 * lie behind show too.
 */
export const refusalPicture = ({ edges, marked }: Outlines, title: string): Picture => {
  const view = bestView(marked);
  const points = [...edges.flat(), ...marked.flatMap(({ loops }) => loops.flat())];
  const to = fitTo(view, points, { x: RIM, y: RIM, width: WIDTH - 2 * RIM, height: HEIGHT - 2 * RIM });
  const flat = (p: Vec3): Vec2 => {
    const [x, y] = project(to, p);
    return [x, y];
  };
  const lines = edges.flatMap((chain) => chain.slice(1).map((p, i): readonly [Vec2, Vec2] => [flat(chain[i]!), flat(p)]));
  const faces = marked.map(({ face, loops }): Item => {
    const rings = loops.map((loop) => loop.map(flat));
    if (rings.length === 0) return group(`face ${face}`, []);
    const [xs, ys] = [rings.flat().map((p) => p[0]), rings.flat().map((p) => p[1])];
    const box = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] as const;
    // the ring that reaches furthest bounds the hatching; nearness plays no part here
    const outer = [...rings].sort((p, q) => spread(q) - spread(p));
    const hatch = hatchLines({ rings: outer, a: 0, b: 0, c: 0, box, nearest: 0 }, [1, -1], HATCH).map(([p, q]): readonly [Vec2, Vec2] => [[p[0], p[1]], [q[0], q[1]]]);
    return group(`face ${face}`, [strokes('hatch', hatch), ...rings.map((ring) => polyline('warning', ring, true))]);
  });
  const labels = marked.slice(0, NUMBERED).flatMap(({ face, loops }): Item[] => {
    const rings = loops.map((loop) => loop.map(flat));
    const spot = rings.length === 0 ? null : roomiestPoint(rings, LETTERS.name);
    const at = spot?.at ?? rings[0]?.[0];
    return at ? [text([at[0], at[1] + LETTERS.name * 0.35], `face ${face}`, LETTERS.name, { fill: 'warning', bold: true, patch: true })] : [];
  });
  return { width: WIDTH, height: HEIGHT, items: [strokes('edge', lines), ...faces, ...labels], title };
};

const spread = (ring: readonly Vec2[]): number => {
  const [xs, ys] = [ring.map((p) => p[0]), ring.map((p) => p[1])];
  return Math.max(...xs) - Math.min(...xs) + Math.max(...ys) - Math.min(...ys);
};

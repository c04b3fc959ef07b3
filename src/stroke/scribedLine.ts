import { type Vec2, add2, dot2, left2, scale2, sub2, unit2 } from '../geometry/index.js';
import { blank, flatPieces, plateNames } from '../sheet/index.js';
import type { Step, Trial } from '../trial/index.js';
import { bendIndex } from './record.js';

/** Where the line of a stroke placed by eye is scribed on the flat blank. */
export interface ScribedLine {
  /** mm, square to the line. */
  readonly distance: number;
  /** The edge it is measured from: 'edge of the flange beyond b1'. */
  readonly from: string;
}

/** Edge and line run the same way within this sine. */
const PARALLEL = 1e-3;
/** The edge lies beside the line over so much, mm, that a square can be laid against it. Common practice, no source. */
const BESIDE = 10;
/** mm: a point lies on an edge. */
const ON_EDGE = 1e-2;

interface Edge {
  readonly from: Vec2;
  readonly to: Vec2;
}

const isOn = (p: Vec2, { from, to }: Edge): boolean => {
  const way = unit2(sub2(to, from));
  const along = dot2(sub2(p, from), way);
  return along >= 0 && along <= Math.hypot(...sub2(to, from)) && Math.abs(dot2(sub2(p, from), left2(way))) < ON_EDGE;
};

/** The bend line of a step that no finger holds, from the nearest straight outer edge parallel to it; null of other steps and where there is no such edge. */
export const scribedLine = (trial: Trial, step: Step): ScribedLine | null => {
  if (step.kind !== 'V bend' || step.stop.kind !== 'none' || step.pass === 2) return null;
  const { sheet } = trial;
  const flat = blank(sheet);
  if (!flat.ok) return null;
  const line = flat.value.bendLines[bendIndex(trial, step.bends[0]!)]!;
  const way = unit2(sub2(line.to, line.from));
  const length = dot2(sub2(line.to, line.from), way);
  const { outline } = flat.value;
  const edges = outline.flatMap((v, i): readonly (Edge & { readonly distance: number })[] => {
    const w = outline[(i + 1) % outline.length]!;
    const [from, to]: readonly [Vec2, Vec2] = [[v.x, v.y], [w.x, w.y]];
    if (v.bulge !== 0 || Math.hypot(w.x - v.x, w.y - v.y) === 0 || Math.abs(dot2(unit2(sub2(to, from)), left2(way))) > PARALLEL) return [];
    const [a, b] = [from, to].map((p) => dot2(sub2(p, line.from), way)) as [number, number];
    if (Math.min(length, Math.max(a, b)) - Math.max(0, Math.min(a, b)) < Math.min(BESIDE, length / 2)) return [];
    return [{ from, to, distance: Math.abs(dot2(sub2(from, line.from), left2(way))) }];
  });
  const nearest = edges.sort((one, other) => one.distance - other.distance)[0];
  if (!nearest) return null;
  const middle = scale2(add2(nearest.from, nearest.to), 0.5);
  const plate = flatPieces(sheet).find((piece) => piece.plate !== undefined && piece.edges.some((edge) => edge.bulge === 0 && isOn(middle, edge)))?.plate;
  return { distance: nearest.distance, from: `edge of ${plate === undefined ? 'the blank' : plateNames(sheet.part)[plate]!}` };
};

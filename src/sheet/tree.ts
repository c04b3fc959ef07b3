import type { Part } from './part.js';
import { type Result, done, refused } from './result.js';

export interface Neighbour {
  /** Index of the bend between, and of the plate across it. */
  readonly bend: number;
  readonly plate: number;
}

/** The plates of a part as a tree. */
export interface Tree {
  /** Of each plate, in the order of the part's bends. */
  readonly neighbours: readonly (readonly Neighbour[])[];
  /** The most bends that lie between two plates. */
  readonly diameter: number;
}

export const neighboursOf = (part: Part): Neighbour[][] => {
  const neighbours: Neighbour[][] = part.plates.map(() => []);
  part.bends.forEach((bend, index) => {
    const [a, b] = [bend.sides[0].plate, bend.sides[1].plate];
    neighbours[a]!.push({ bend: index, plate: b });
    neighbours[b]!.push({ bend: index, plate: a });
  });
  return neighbours;
};

/** Breadth first from a plate: the order of visit, the bend by which each plate was reached (-1 at the start) and depth. */
const walk = (neighbours: readonly (readonly Neighbour[])[], from: number) => {
  const via = neighbours.map(() => -1);
  const depth = neighbours.map(() => -1);
  const order = [from];
  depth[from] = 0;
  for (let at = 0; at < order.length; at++) {
    const plate = order[at]!;
    for (const next of neighbours[plate]!) {
      if (depth[next.plate] !== -1) continue;
      depth[next.plate] = depth[plate]! + 1;
      via[next.plate] = next.bend;
      order.push(next.plate);
    }
  }
  return { order, via, depth };
};

const across = (part: Part, bend: number, plate: number): number => {
  const [a, b] = part.bends[bend]!.sides;
  return a.plate === plate ? b.plate : a.plate;
};

/** Indices of the bends on the way from plate `a` to plate `b`, in order. The part must be a tree. */
export const path = (part: Part, a: number, b: number): number[] => {
  const { via } = walk(neighboursOf(part), a);
  const bends: number[] = [];
  for (let plate = b; plate !== a; plate = across(part, via[plate]!, plate)) bends.push(via[plate]!);
  return bends.reverse();
};

/**
 * The part's tree of plates, or why it is none: 'cycle' (a closed section) with the bends of the ring, 'forest' (several
 * parts) with the plates that cannot be reached from plate 0.
 */
export const tree = (part: Part): Result<Tree> => {
  const neighbours = neighboursOf(part);
  const { order, via, depth } = walk(neighbours, 0);
  const closing = part.bends.findIndex(
    (bend, index) => depth[bend.sides[0].plate] !== -1 && !via.includes(index),
  );
  if (closing !== -1) {
    const climb = (plate: number): number[] =>
      via[plate] === -1 ? [] : [via[plate]!, ...climb(across(part, via[plate]!, plate))];
    const [one, other] = part.bends[closing]!.sides.map((side) => climb(side.plate)) as [number[], number[]];
    const ring = [closing, ...one.filter((b) => !other.includes(b)), ...other.filter((b) => !one.includes(b))];
    const ids = ring.map((b) => part.bends[b]!.id);
    return refused('cycle', `Bends ${ids.join(', ')} close a ring: a closed section cannot be bent from one sheet.`, {
      bends: ids,
      plates: part.bends[closing]!.sides.map((side) => side.plate),
    });
  }
  if (order.length < part.plates.length) {
    const apart = depth.flatMap((d, plate) => (d === -1 ? [plate] : []));
    return refused('forest', `${apart.length} of ${part.plates.length} plates hang on no bend of plate 0: these are several parts.`, {
      plates: apart,
    });
  }
  const far = order[order.length - 1]!;
  return done({ neighbours, diameter: Math.max(...walk(neighbours, far).depth) });
};

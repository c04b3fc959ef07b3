import { type Contour, type Vertex, arcOf, bounds, vertex } from '../geometry/index.js';

/** mm by which corners count as lying on the lowest or highest line. */
const SAME_HEIGHT = 0.01;

const FULL_TURN = 2 * Math.PI;

/** An arc that dips below both its ends, cut at its lowest point; any other edge as it is. */
const cutAtLowest = (v: Vertex, next: Vertex): Vertex[] => {
  if (v.bulge === 0) return [v];
  const { centre, radius } = arcOf([v.x, v.y], [next.x, next.y], v.bulge);
  const sweep = 4 * Math.atan(v.bulge);
  const begin = Math.atan2(v.y - centre[1], v.x - centre[0]);
  const turned = ((((-Math.PI / 2 - begin) * Math.sign(sweep)) % FULL_TURN) + FULL_TURN) % FULL_TURN;
  const share = turned / Math.abs(sweep);
  if (!(share > 1e-6 && share < 1 - 1e-6)) return [v];
  const bulge = (part: number): number => Math.tan((part * sweep) / 4);
  return [vertex(v.x, v.y, bulge(share)), vertex(centre[0], centre[1] - radius, bulge(1 - share))];
};

const moved = (contour: Contour, x: number, y: number): Contour => contour.map((v) => vertex(v.x - x, v.y - y, v.bulge));

/** Rounded so that what is meant to be 0 is: a drawing's own rounding is coarser. */
const tidy = (value: number): number => {
  const rounded = Math.round(value * 1e6) / 1e6;
  return rounded === 0 ? 0 : rounded;
};

/**
 * A drawn cross-section brought to the frame of what it is of: a punch with its lowest point (the middle of a flat face) at the origin and a
 * corner there, a die with the middle of its top at the origin, anything of a machine as it was drawn.
 */
export const placedSection = (contour: Contour, of: 'punch' | 'die' | 'machine'): Contour => {
  if (of === 'machine') return contour;
  if (of === 'die') {
    const [low, high] = bounds([contour]);
    const top = contour.filter((v) => v.y > high[1] - SAME_HEIGHT).map((v) => v.x);
    const middle = top.length > 1 ? (Math.min(...top) + Math.max(...top)) / 2 : (low[0] + high[0]) / 2;
    return moved(contour, middle, high[1]).map((v) => vertex(tidy(v.x), tidy(v.y), v.bulge));
  }
  const cut = contour.flatMap((v, i) => cutAtLowest(v, contour[(i + 1) % contour.length]!));
  const lowest = Math.min(...cut.map((v) => v.y));
  const floor = cut.filter((v) => v.y < lowest + SAME_HEIGHT).map((v) => v.x);
  const middle = (Math.min(...floor) + Math.max(...floor)) / 2;
  const placed = moved(cut, middle, lowest).map((v) => vertex(tidy(v.x), tidy(v.y), v.bulge));
  if (placed.some((v) => v.x === 0 && v.y === 0)) return placed;
  // a flat face gets the corner in its middle that the punch's frame asks for
  return placed.flatMap((v, i) => {
    const next = placed[(i + 1) % placed.length]!;
    const onFloor = v.y < SAME_HEIGHT && next.y < SAME_HEIGHT && v.bulge === 0 && v.x < 0 && next.x > 0;
    return onFloor ? [v, vertex(0, 0)] : [v];
  });
};

import { type Contour, type Vec2, bounds, vertex } from '../geometry/index.js';

/** An upright rectangle in a frame turned by `angle` degrees: its length lies along that direction. mm */
export interface Rectangle {
  readonly length: number;
  readonly width: number;
  /** Degrees from the frame's x to the rectangle's length. */
  readonly angle: number;
}

/** Two directions nearer than this (radians) are one: over 4 m they part by 4 micrometres. */
const SAME_DIRECTION = 1e-6;
/** An area less by no more than this share is the same: the first direction keeps its place. */
const SAME_AREA = 1e-9;

const turned = (contour: Contour, radians: number): Contour => {
  const [c, s] = [Math.cos(radians), Math.sin(radians)];
  return contour.map((v) => vertex(v.x * c - v.y * s, v.x * s + v.y * c, v.bulge));
};

/** The rectangle of least area about an outline with one side along one of its straight edges; `length` >= `width`. */
export const smallestRectangle = (outline: Contour): Rectangle => {
  const quarter = Math.PI / 2;
  const directions = outline
    .flatMap((v, i) => {
      const next = outline[(i + 1) % outline.length]!;
      const chord: Vec2 = [next.x - v.x, next.y - v.y];
      return v.bulge === 0 ? [((Math.atan2(chord[1], chord[0]) % quarter) + quarter) % quarter] : [];
    })
    // just under a quarter turn is just under 0: the same direction
    .map((a) => (quarter - a < SAME_DIRECTION ? 0 : a))
    .sort((a, b) => a - b)
    .filter((a, i, all) => i === 0 || a - all[i - 1]! > SAME_DIRECTION);
  let best: Rectangle | undefined;
  for (const a of directions.length > 0 ? directions : [0]) {
    const [low, high] = bounds([turned(outline, -a)]);
    const [x, y] = [high[0] - low[0], high[1] - low[1]];
    if (best !== undefined && x * y >= best.length * best.width * (1 - SAME_AREA)) continue;
    const angle = (a * 180) / Math.PI;
    best = x >= y ? { length: x, width: y, angle } : { length: y, width: x, angle: angle + 90 };
  }
  return best!;
};

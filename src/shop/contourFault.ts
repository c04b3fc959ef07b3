import { type Contour, type Vec2, cross2, dot2, flatten, signedArea, sub2 } from '../geometry/index.js';

/** mm by which arcs are cut short while a contour's edges are tested for crossing. */
const CHORD_ERROR = 0.01;
/** mm2 under which a contour has no inside worth the name. */
const LEAST_AREA = 1;

const crosses = (a: Vec2, b: Vec2, c: Vec2, d: Vec2): boolean => {
  const [p, q] = [cross2(sub2(b, a), sub2(c, a)), cross2(sub2(b, a), sub2(d, a))];
  const [r, s] = [cross2(sub2(d, c), sub2(a, c)), cross2(sub2(d, c), sub2(b, c))];
  if (p === 0 && q === 0) {
    const axis = Math.abs(b[0] - a[0]) > Math.abs(b[1] - a[1]) ? 0 : 1;
    const [lo, hi] = [Math.min(a[axis], b[axis]), Math.max(a[axis], b[axis])];
    return Math.max(c[axis], d[axis]) >= lo && Math.min(c[axis], d[axis]) <= hi;
  }
  return p * q <= 0 && r * s <= 0;
};

/** What is wrong with a cross-section, as the end of a sentence; undefined when it is a simple counter-clockwise outline. */
export const contourFault = (contour: Contour): string | undefined => {
  const p = flatten(contour, CHORD_ERROR);
  const again = p.find((a, i) => a[0] === p[(i + 1) % p.length]![0] && a[1] === p[(i + 1) % p.length]![1]);
  if (again !== undefined) return `repeats the corner (${again[0]}, ${again[1]})`;
  for (let i = 0; i < p.length; i++) {
    const next = p[(i + 1) % p.length]!;
    const after = p[(i + 2) % p.length]!;
    const [along, on] = [sub2(next, p[i]!), sub2(after, next)];
    if (cross2(along, on) === 0 && dot2(along, on) < 0) return `folds back on itself at (${next[0]}, ${next[1]})`;
    for (let k = i + 2; k < p.length; k++) {
      if (i === 0 && k === p.length - 1) continue;
      if (crosses(p[i]!, next, p[k]!, p[(k + 1) % p.length]!)) {
        return `crosses itself near (${p[k]![0].toFixed(1)}, ${p[k]![1].toFixed(1)}); it must be a simple outline`;
      }
    }
  }
  const area = signedArea(contour);
  if (Math.abs(area) < LEAST_AREA) return `encloses less than ${LEAST_AREA} mm2`;
  return area < 0 ? 'runs clockwise; an outline must run counter-clockwise' : undefined;
};

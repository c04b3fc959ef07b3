import { type Contour, type Vec3, add3, apply, cross3, dot3, flatten, length3, scale3, signedArea, sub3 } from '../src/geometry/index.js';
import type { AllowanceRule } from '../src/forming/index.js';
import { type Part, develop, fold } from '../src/sheet/index.js';

/** mm, degrees: two parts that differ by less are one: what the wording of numbers in a file leaves, far below any measure taken. */
const SAME = 1e-3;
const SAME_ANGLE = 1e-4;
/** mm2 per mm of outline: an outline moved by a thousandth. */
const CHORD = 1e-3;

const centroid = (contours: readonly Contour[]): readonly [number, number, number] => {
  let [area, x, y] = [0, 0, 0];
  for (const contour of contours) {
    const ring = flatten(contour, CHORD);
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      const twice = p[0] * q[1] - p[1] * q[0];
      area += twice / 2;
      x += ((p[0] + q[0]) * twice) / 6;
      y += ((p[1] + q[1]) * twice) / 6;
    });
  }
  return [x / area, y / area, area];
};

/** Marked points of the folded part: the middle of each bend's two tangent lines by id, and each plate's centre of area by its bends. */
const marks = (part: Part, rule: AllowanceRule): { readonly name: string; readonly at: Vec3; readonly area: number }[] => {
  const { poses } = fold(develop(part, rule), part.bends.map(({ bendAngle }) => bendAngle));
  const bends = part.bends.map(({ id, sides }) => {
    const ends = sides.flatMap(({ plate, line }) => [line.from, line.to].map((p) => apply(poses[plate]!, [p[0], p[1], 0])));
    return { name: id, at: scale3(ends.reduce((a, b) => add3(a, b)), 1 / ends.length), area: 0 };
  });
  const plates = part.plates.map((plate, index) => {
    const [x, y, area] = centroid([plate.outline, ...plate.holes]);
    const at = part.bends.filter(({ sides }) => sides.some((side) => side.plate === index)).map(({ id }) => id);
    return { name: `plate of ${at.sort().join(' ')}`, at: apply(poses[index]!, [x, y, 0]), area };
  });
  return [...bends, ...plates].sort((p, q) => (p.name < q.name ? -1 : p.name > q.name ? 1 : p.area - q.area));
};

/** In what two parts differ, one sentence each: thickness, bends by id, plates, and how all lie in space when folded (mirror images differ). */
export const differences = (one: Part, other: Part, rule: AllowanceRule): string[] => {
  const found: string[] = [];
  const near = (what: string, a: number, b: number, by: number): void => {
    if (!(Math.abs(a - b) <= by)) found.push(`${what}: ${a} and ${b}`);
  };
  near('thickness', one.thickness, other.thickness, SAME_ANGLE);
  near('plates', one.plates.length, other.plates.length, 0);
  near('bends', one.bends.length, other.bends.length, 0);
  const [wide, also] = [develop(one, rule).allowances, develop(other, rule).allowances];
  one.bends.forEach((bend, i) => {
    const k = other.bends.findIndex(({ id }) => id === bend.id);
    if (k === -1) return found.push(`${bend.id}: not found`);
    const twin = other.bends[k]!;
    near(`${bend.id} angle`, bend.bendAngle, twin.bendAngle, SAME_ANGLE);
    near(`${bend.id} radius`, bend.insideRadius, twin.insideRadius, SAME_ANGLE);
    if (bend.direction !== twin.direction) found.push(`${bend.id}: towards ${bend.direction} and ${twin.direction}`);
    if (bend.kind !== twin.kind) found.push(`${bend.id}: ${bend.kind} and ${twin.kind}`);
    const areas = [bend, twin].map(({ zone }, n) => zone.reduce((sum, contour) => sum + signedArea(contour), 0) * [wide[i]!, also[k]!][n]!);
    near(`${bend.id} area`, areas[0]!, areas[1]!, SAME * Math.max(10, Math.sqrt(areas[0]!)));
    return undefined;
  });
  if (found.length > 0) return found;
  const [a, b] = [marks(one, rule), marks(other, rule)];
  a.forEach((mark, i) => {
    if (mark.name !== b[i]!.name) found.push(`${mark.name} and ${b[i]!.name}`);
    near(`${mark.name} area`, mark.area, b[i]!.area, 10 * SAME * Math.max(10, Math.sqrt(mark.area)));
    for (let k = 0; k < i; k++) near(`${mark.name} to ${a[k]!.name}`, length3(sub3(mark.at, a[k]!.at)), length3(sub3(b[i]!.at, b[k]!.at)), 3 * SAME);
    if (i < 3) return;
    // handedness: the box spanned with the first three marks
    const box = (of: typeof a): number => dot3(cross3(sub3(of[1]!.at, of[0]!.at), sub3(of[2]!.at, of[0]!.at)), sub3(of[i]!.at, of[0]!.at));
    const size = length3(sub3(a[1]!.at, a[0]!.at)) * length3(sub3(a[2]!.at, a[0]!.at)) * length3(sub3(mark.at, a[0]!.at));
    near(`${mark.name} hand`, box(a) / Math.max(size, 1), box(b) / Math.max(size, 1), 1e-3);
  });
  return found;
};

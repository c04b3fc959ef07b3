import { type Rigid, type Vec3, apply, cross3, scale3, sub3, turn, unit3 } from '../geometry/index.js';
import type { Developed } from '../sheet/index.js';
import type { Face } from './body.js';
import { flatRing } from './flatRing.js';

/** mm by which a curved wall may leave its chords in a picture. */
const CHORD = 0.05;

/** What stands on the plates (bosses, studs, raised metal) as closed prisms over their outlines, in the frame that `poses` go to. */
export const standingFaces = ({ part }: Developed, poses: readonly Rigid[]): readonly Face[] =>
  (part.formed ?? []).filter(({ height }) => height > 0).flatMap(({ plate, side, outline, height }, n): Face[] => {
    const pose = poses[plate]!;
    const { points, arc } = flatRing(outline, CHORD);
    const up = side === 'A' ? 1 : -1;
    const ring = (z: number): Vec3[] => points.map((p): Vec3 => apply(pose, [p[0], p[1], up * z]));
    const [foot, top] = [ring(part.thickness / 2), ring(part.thickness / 2 + height)];
    const out = turn(pose, [0, 0, up]);
    const turned = (loop: readonly Vec3[]): readonly Vec3[] => (up > 0 ? loop : [...loop].reverse());
    const walls = foot.map((p, i): Face => {
      const k = (i + 1) % foot.length;
      const loop: readonly Vec3[] = [p, foot[k]!, top[k]!, top[i]!];
      // an outline runs counter-clockwise seen from the A side: its outside lies to the right
      const normal = scale3(unit3(cross3(sub3(foot[k]!, p), sub3(top[i]!, p))), up);
      return { loops: [turned(loop)], normal, surface: `standing ${n} arc ${arc[i]!}`, curved: arc[i] !== -1 };
    });
    return [
      ...walls,
      { loops: [turned(top)], normal: out, surface: `standing ${n} top`, curved: false },
      { loops: [turned([...foot].reverse())], normal: scale3(out, -1), surface: `standing ${n} foot`, curved: false },
    ];
  });

import Module, { type CrossSection, type Manifold, type ManifoldToplevel, type Mat4 } from 'manifold-3d';
import { type Rigid, type Vec2, type Vec3 } from '../geometry/index.js';
import { HORIZON } from './tolerances.js';

export type { CrossSection, Manifold };
export type Kernel = ManifoldToplevel;

let loading: Promise<Kernel> | undefined;

/** The kernel of solids, loaded once for each process: it holds no state between proofs. */
export const loadKernel = (): Promise<Kernel> => {
  loading ??= Module().then((kernel) => {
    kernel.setup();
    return kernel;
  });
  return loading;
};

export const matrixOf = (m: Rigid): Mat4 => [...m.x, 0, ...m.y, 0, ...m.z, 0, ...m.o, 1];

/** Keeps every solid that lives longer than one question, to free them together: wasm memory is not collected. */
export class Pool {
  readonly #kept = new Set<Manifold>();

  keep(solid: Manifold): Manifold {
    this.#kept.add(solid);
    return solid;
  }

  free(solid: Manifold): void {
    if (this.#kept.delete(solid)) solid.delete();
  }

  freeAll(): void {
    for (const solid of this.#kept) solid.delete();
    this.#kept.clear();
  }
}

/** A box of two corners. */
export const boxSolid = (kernel: Kernel, least: Vec3, most: Vec3): Manifold => {
  const cube = kernel.Manifold.cube([most[0] - least[0], most[1] - least[1], most[2] - least[2]]);
  const moved = cube.translate(least);
  cube.delete();
  return moved;
};

/** `polygons` in (x, y) as one section; `rule` as the kernel names it. */
export const section = (
  kernel: Kernel,
  polygons: readonly (readonly Vec2[])[],
  rule: 'NonZero' | 'Positive' = 'NonZero',
): CrossSection => new kernel.CrossSection(polygons.map((p) => p.map((q): [number, number] => [q[0], q[1]])), rule);

/** mm between `a` placed by `pose` and `b`: 0 when they overlap or touch, never more than the horizon. */
export const distance = (a: Manifold, pose: Rigid, b: Manifold): number => {
  const placed = a.transform(matrixOf(pose));
  const gap = placed.minGap(b, HORIZON);
  placed.delete();
  return gap;
};

/** The sizes of the box about what `a` and `b` share, sorted, or null when they share nothing. mm */
export const sharedBox = (a: Manifold, b: Manifold): readonly [number, number, number] | null => {
  const shared = a.intersect(b);
  const box = shared.isEmpty() ? null : shared.boundingBox();
  shared.delete();
  if (box === null) return null;
  const sizes = [0, 1, 2].map((k) => box.max[k]! - box.min[k]!).sort((p, q) => p - q);
  return [sizes[0]!, sizes[1]!, sizes[2]!];
};

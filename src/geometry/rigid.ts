import type { Vec3 } from './vec.js';

/**
 * A rigid motion: `x`, `y`, `z` are the images of the axes, `o` the image of the origin.
 * Plain data: twelve numbers, as it is saved and posted to workers.
 */
export interface Rigid {
  readonly x: Vec3;
  readonly y: Vec3;
  readonly z: Vec3;
  readonly o: Vec3;
}

export const IDENTITY: Rigid = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1], o: [0, 0, 0] };

/** The image of a direction: no translation. */
export const turn = (m: Rigid, v: Vec3): Vec3 => [
  m.x[0] * v[0] + m.y[0] * v[1] + m.z[0] * v[2],
  m.x[1] * v[0] + m.y[1] * v[1] + m.z[1] * v[2],
  m.x[2] * v[0] + m.y[2] * v[1] + m.z[2] * v[2],
];

/** The image of a point. */
export const apply = (m: Rigid, p: Vec3): Vec3 => [
  m.x[0] * p[0] + m.y[0] * p[1] + m.z[0] * p[2] + m.o[0],
  m.x[1] * p[0] + m.y[1] * p[1] + m.z[1] * p[2] + m.o[1],
  m.x[2] * p[0] + m.y[2] * p[1] + m.z[2] * p[2] + m.o[2],
];

/** `a` after `b`: apply(compose(a, b), p) = apply(a, apply(b, p)). */
export const compose = (a: Rigid, b: Rigid): Rigid => ({
  x: turn(a, b.x),
  y: turn(a, b.y),
  z: turn(a, b.z),
  o: apply(a, b.o),
});

export const invert = (m: Rigid): Rigid => {
  const x: Vec3 = [m.x[0], m.y[0], m.z[0]];
  const y: Vec3 = [m.x[1], m.y[1], m.z[1]];
  const z: Vec3 = [m.x[2], m.y[2], m.z[2]];
  const o = turn({ x, y, z, o: [0, 0, 0] }, m.o);
  return { x, y, z, o: [-o[0], -o[1], -o[2]] };
};

export const shift = (v: Vec3): Rigid => ({ ...IDENTITY, o: v });

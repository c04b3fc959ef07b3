/** A point or direction in a plane, millimetres. */
export type Vec2 = readonly [number, number];
/** A point or direction in space, millimetres. In the machine frame: along, back, up. */
export type Vec3 = readonly [number, number, number];

export const add2 = (a: Vec2, b: Vec2): Vec2 => [a[0] + b[0], a[1] + b[1]];
export const sub2 = (a: Vec2, b: Vec2): Vec2 => [a[0] - b[0], a[1] - b[1]];
export const scale2 = (a: Vec2, s: number): Vec2 => [a[0] * s, a[1] * s];
export const dot2 = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1];
/** The z component of a x b: positive when b lies to the left of a. */
export const cross2 = (a: Vec2, b: Vec2): number => a[0] * b[1] - a[1] * b[0];
/** By the square root: Math.hypot guards against overflow that millimetres never reach, and costs many times more. */
export const length2 = (a: Vec2): number => Math.sqrt(a[0] * a[0] + a[1] * a[1]);
/** The left normal: a turned by +90 degrees. */
export const left2 = (a: Vec2): Vec2 => [-a[1], a[0]];
/** `a` at length one. `a` must not be null. */
export const unit2 = (a: Vec2): Vec2 => scale2(a, 1 / length2(a));

export const add3 = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub3 = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale3 = (a: Vec3, s: number): Vec3 => [a[0] * s, a[1] * s, a[2] * s];
export const dot3 = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross3 = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const length3 = (a: Vec3): number => Math.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2]);
export const unit3 = (a: Vec3): Vec3 => scale3(a, 1 / length3(a));

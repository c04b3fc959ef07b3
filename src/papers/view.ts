import { type Vec3, cross3, dot3 } from '../geometry/index.js';

/**
 * An axonometric view (parallel projection): the paper's right and up and the direction towards the eye, all unit,
 * mutually square, right-handed (right x up = towards), in the scene's frame.
 */
export interface View {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly towards: Vec3;
}

/**
 * The eye at `azimuth` degrees to the right of the front (the scene's -y) and `elevation` degrees above the level.
 * In the machine frame (along, back, up) azimuth 0 is the operator's own view.
 */
export const viewFrom = (azimuth: number, elevation: number): View => {
  const [a, e] = [(azimuth * Math.PI) / 180, (elevation * Math.PI) / 180];
  const towards: Vec3 = [Math.sin(a) * Math.cos(e), -Math.cos(a) * Math.cos(e), Math.sin(e)];
  const right: Vec3 = [Math.cos(a), Math.sin(a), 0];
  return { right, up: cross3(towards, right), towards };
};

/**
 * Takes points of the scene (mm) to the paper: x and y in mm of paper (y down), third the nearness to the eye in the
 * same measure. `scale` is mm of paper for a mm of the scene.
 */
export interface Projection {
  readonly view: View;
  readonly scale: number;
  /** Where the scene's origin comes to lie on the paper. */
  readonly origin: readonly [number, number];
}

export const project = (to: Projection, p: Vec3): Vec3 => [
  to.origin[0] + to.scale * dot3(p, to.view.right),
  to.origin[1] - to.scale * dot3(p, to.view.up),
  to.scale * dot3(p, to.view.towards),
];

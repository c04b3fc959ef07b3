import { flowStress, type HardeningCurve } from '../metal/index.js';
import { DEGREE } from './degrees.js';

/** A bend's arc alone, wide strip, total strains, no radial stress. */
export interface PlaneStrainArc {
  /** N mm/mm */
  readonly moment: number;
  /** Curvature given back, 1/mm. */
  readonly curvatureChange: number;
  /** Degrees that the arc of the bend angle gives back. */
  readonly springback: number;
  /** Inside radius after it, mm, the arc's length kept. */
  readonly releasedRadius: number;
}

/** Layers of the integration over half the thickness. */
const LAYERS = 200;

/** Stress of a layer at a total strain: its elastic part off, 2/sqrt(3) of the flow stress at 2/sqrt(3) of the rest. */
const layerStress = (
  metal: { readonly curve: HardeningCurve; readonly modulus: number; readonly poisson: number }, strain: number,
): number => {
  const stiffness = metal.modulus / (1 - metal.poisson ** 2);
  const factor = 2 / Math.sqrt(3);
  let low = 0;
  let high = stiffness * strain;
  // the flow stress falls as the elastic part grows: one crossing, or all is elastic
  for (let i = 0; i < HALVINGS; i++) {
    const stress = (low + high) / 2;
    if (stress < factor * flowStress(metal.curve, factor * (strain - stress / stiffness))) low = stress;
    else high = stress;
  }
  return high;
};

const HALVINGS = 50;

/**
 * The arc-only springback of the textbooks in plane strain: e(z) = ln(1 + z/rho), released by 12 M (1 - nu^2)/(E t^3). In air bending the legs give back more than this.
 */
export const planeStrainArc = (
  metal: { readonly curve: HardeningCurve; readonly modulus: number; readonly poisson: number },
  insideRadius: number, thickness: number, bendAngle: number,
): PlaneStrainArc => {
  const rho = insideRadius + thickness / 2;
  let moment = 0;
  for (let i = 0; i < 2 * LAYERS; i++) {
    const z = ((i + 0.5) / (2 * LAYERS) - 0.5) * thickness;
    moment += layerStress(metal, Math.abs(Math.log(1 + z / rho))) * Math.abs(z) * (thickness / (2 * LAYERS));
  }
  const curvatureChange = (12 * moment * (1 - metal.poisson ** 2)) / (metal.modulus * thickness ** 3);
  const released = 1 / (1 / rho - curvatureChange);
  return {
    moment,
    curvatureChange,
    springback: (bendAngle * DEGREE * rho * curvatureChange) / DEGREE,
    releasedRadius: released - thickness / 2,
  };
};

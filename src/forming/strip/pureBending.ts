import type { Fibre } from './fibre.js';

/**
 * Pure bending of a wide strip of thickness one, step by step: bend angle per original length (`curvature`), moment
 * over E t^2, and the thickness left.
 */
export interface PureBending {
  readonly curvature: readonly number[];
  readonly moment: readonly number[];
  readonly thickness: readonly number[];
  /** Stress of the outer face over E. */
  readonly faceStress: readonly number[];
}

/** Curvature times thickness to which the strip is bent: an inside radius of about a tenth of the thickness. */
const LAST_CURVATURE = 1.8;
/** Each step's curvature over the one before. */
const GROWTH = 1.07;
/** Fibres through the thickness. */
const FIBRES = 64;

/**
 * Bends the strip. Incompressible: the fibre that lay y from the inner face is at r^2 = ri^2 + 2 y / curvature, so its
 * log strain is ln(r curvature). Each step finds the inner radius at which the radial stress vanishes on both faces,
 * integral (s_theta - s_r)/r dr = 0 (Hill; with hardening Proksa); the fibres that the neutral line passes over are
 * unloaded and loaded the other way. Moment = 1/2 integral r (s_theta - s_r) dr.
 */
export const bendPurely = (fibre: Fibre): PureBending => {
  const { nodes, weights } = gauss(FIBRES);
  const stress = new Float64Array(FIBRES);
  const plastic = new Float64Array(FIBRES);
  const strain = new Float64Array(FIBRES);
  const next = {
    stress: new Float64Array(FIBRES), plastic: new Float64Array(FIBRES), strain: new Float64Array(FIBRES), cell: new Int32Array(FIBRES),
  };
  /** The cell of the hardening table that each fibre has come to. */
  const cell = new Int32Array(FIBRES);
  const { plastic: plasticAt, stress: hard } = fibre;
  const yieldCurvature = (2 * fibre.yield) / fibre.stiffness;
  const out = { curvature: [0], moment: [0], thickness: [1], faceStress: [0] };
  /** Stretch of the inner face: inner radius times curvature. */
  let inner = 1;
  let before = 0;

  const residual = (stretch: number, k: number): readonly [number, number] => {
    let sum = 0;
    let change = 0;
    for (let i = 0; i < FIBRES; i++) {
      const square = stretch * stretch + 2 * k * nodes[i]!;
      const e = Math.log(square) / 2;
      let s = stress[i]! + fibre.stiffness * (e - strain[i]!);
      let p = plastic[i]!;
      let tangent = fibre.stiffness;
      const size = Math.abs(s);
      let c = cell[i]!;
      let slope = (hard[c + 1]! - hard[c]!) / (plasticAt[c + 1]! - plasticAt[c]!);
      if (size > hard[c]! + slope * (p - plasticAt[c]!)) {
        // back onto the hardening line: size - stiffness d = stress(p + d), cell by cell as the line is straight there
        const before = p;
        for (;;) {
          p = (size + fibre.stiffness * before - hard[c]! + slope * plasticAt[c]!) / (fibre.stiffness + slope);
          if (p <= plasticAt[c + 1]! || c + 2 >= hard.length) break;
          c++;
          slope = (hard[c + 1]! - hard[c]!) / (plasticAt[c + 1]! - plasticAt[c]!);
        }
        s = Math.sign(s) * (size - fibre.stiffness * (p - before));
        tangent = (fibre.stiffness * slope) / (fibre.stiffness + slope);
      }
      next.cell[i] = c;
      next.stress[i] = s;
      next.plastic[i] = p;
      next.strain[i] = e;
      sum += (weights[i]! * s) / square;
      change += (weights[i]! * stretch * (tangent - 2 * s)) / (square * square);
    }
    return [sum, change];
  };

  for (let k = yieldCurvature / 2; k < LAST_CURVATURE; k *= GROWTH) {
    let low = Math.max(inner - 1.2 * (k - before), 1e-4);
    let high = inner - 0.2 * (k - before);
    if (residual(low, k)[0] > 0 || residual(high, k)[0] < 0) break;
    let stretch = Math.max(inner - (k - before) / 2, (low + high) / 2);
    for (let n = 0; n < 60; n++) {
      const [value, slope] = residual(stretch, k);
      if (value > 0) high = stretch;
      else low = stretch;
      let better = stretch - value / slope;
      if (!(better > low && better < high)) better = (low + high) / 2;
      const done = Math.abs(better - stretch) < 1e-14;
      stretch = better;
      if (done) break;
    }
    residual(stretch, k);
    stress.set(next.stress);
    plastic.set(next.plastic);
    strain.set(next.strain);
    cell.set(next.cell);
    inner = stretch;
    before = k;
    let moment = 0;
    for (let i = 0; i < FIBRES; i++) moment += weights[i]! * stress[i]!;
    out.curvature.push(k);
    out.moment.push(moment / (2 * k));
    out.thickness.push((Math.sqrt(stretch * stretch + 2 * k) - stretch) / k);
    out.faceStress.push(stress[FIBRES - 1]!);
  }
  return out;
};

/** Gauss-Legendre nodes and weights on [0, 1], ascending. */
const gauss = (n: number): { readonly nodes: Float64Array; readonly weights: Float64Array } => {
  const nodes = new Float64Array(n);
  const weights = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let z = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let derivative = 1;
    for (let k = 0; k < 50; k++) {
      let p = 1;
      let q = 0;
      for (let j = 0; j < n; j++) [p, q] = [((2 * j + 1) * z * p - j * q) / (j + 1), p];
      derivative = (n * (z * p - q)) / (z * z - 1);
      const step = p / derivative;
      z -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    nodes[i] = (1 - z) / 2;
    weights[i] = 1 / ((1 - z * z) * derivative * derivative);
  }
  return { nodes, weights };
};

/** A V bend of a linearly hardening sheet as Ghosh and Mallik, Manufacturing Science, ch. 3 reckon it. */
export interface LinearHardeningBend {
  /** Smallest punch radius that the outer fibre bears, mm. */
  readonly punchRadius: number;
  /** N mm/mm */
  readonly moment: number;
  /** N/mm */
  readonly force: number;
  /** Included angle of the punch for 90 degrees after release. */
  readonly punchAngle: number;
}

/**
 * Neutral line 0.45 t from the inside, fracture strain of the outer fibre at the least radius; leg `arm` mm; E and h (the
 * hardening rate) MPa. F = (M/arm)(1 + cos v + mu sin v), v = atan mu.
 */
export const linearHardeningBend = (
  yieldStress: number, h: number, modulus: number, fractureStrain: number, thickness: number, arm: number, friction: number,
): LinearHardeningBend => {
  const t = thickness;
  const punchRadius = ((1 / (Math.exp(fractureStrain) - 1) - 0.82) * t) / 1.82;
  const outer = yieldStress + h * fractureStrain;
  const inner = yieldStress + h * Math.log(1 + 1 / (2.22 * (punchRadius / t) + 1));
  const moment = (0.55 * t) ** 2 * (yieldStress / 6 + outer / 3) + (0.45 * t) ** 2 * (yieldStress / 6 + inner / 3);
  const v = Math.atan(friction);
  return {
    punchRadius,
    moment,
    force: (moment / arm) * (1 + Math.cos(v) + friction * Math.sin(v)),
    punchAngle: 90 / ((12 * (punchRadius + 0.45 * t) * moment) / (modulus * t ** 3) + 1),
  };
};

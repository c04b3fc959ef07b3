import type { HalfStrip, StripCase } from './halfStrip.js';

/**
 * Thickness lost under the nose besides that of bending. The punch force F squeezes the section under it by (2F/pi t)
 * ln(0.96 t/a) on average (elastic strip pressed on one face over +-a: its even part, integrated), which moves the
 * neutral line in by that times t over twice the face stress; the strip thins by that shift times each step of
 * curvature. The touch grows with the dent: a^2 = 2 dent / (1/tip - curvature of the face).
 */
export const dentOf = (strip: StripCase, half: HalfStrip, force: number, bearing: number): number => {
  const k = half.middleCurvature;
  const compliance = strip.section.compliance(k);
  const face = 1 / Math.max(SHARPEST, 1 / k - 0.5);
  const most = (force / Math.PI) * compliance;
  /** Dent that the squeeze over the touch of a dent makes: falls as the dent grows, so one dent makes itself. */
  const made = (dent: number): number => {
    const touch = Math.sqrt((2 * dent) / Math.max(LEAST_CONFORM, 1 / strip.tip - face)) + bearing;
    return most * Math.log(Math.max(1, 0.96 / Math.max(LEAST_TOUCH, touch)));
  };
  let low = 0;
  let high = made(0);
  for (let n = 0; n < HALVINGS; n++) {
    const middle = (low + high) / 2;
    if (made(middle) > middle) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
};

/** Halvings of the dent's range: to the last figure that a number holds. */
const HALVINGS = 50;
/** Half width of touch to begin with, over t: a sharp line would press in without end. */
const LEAST_TOUCH = 0.02;
/** 1/t: as the face comes to the nose's own curvature the touch grows without end. */
const LEAST_CONFORM = 0.1;
/** Inside radius over t that the face is taken to have at least. */
const SHARPEST = 0.05;

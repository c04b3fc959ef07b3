import { type Vec2, gapOf } from '../geometry/index.js';
import type { Machine } from '../shop/index.js';
import { type Body, bodiesOf, sweptBody } from './body.js';
import { BASE_ALLOWANCE } from './limits.js';
import type { Setting } from './setting.js';
import { tipAt, touchOf } from './stroke.js';

/** A finger and the bar that carries it, as bodies from the finger's reference. Made once for a machine's gauge. */
export interface GaugeBodies {
  readonly finger: readonly Body[];
  readonly beam: readonly Body[];
}

const kept = new WeakMap<Machine['gauge'], GaugeBodies>();

export const gaugeBodies = (gauge: Machine['gauge']): GaugeBodies => {
  const known = kept.get(gauge) ?? { finger: bodiesOf(gauge.finger.profile), beam: bodiesOf(gauge.beam) };
  kept.set(gauge, known);
  return known;
};

/** A finger may rest on a die, but not stand in it: rounding alone is let through. mm */
const IN_DIE = 0.01;

const leastGap = (bodies: readonly Body[], place: Vec2, others: readonly Body[], enough: number): number => {
  let least = Infinity;
  for (const a of bodies) {
    for (const b of others) least = Math.min(least, gapOf(a.shape, { c: 1, s: 0, x: place[0], y: place[1] }, b.shape, enough));
  }
  return least;
};

/**
 * Does the gauge stand clear of the tools with the fingers at `place` (back, up from the die top), while the ram comes
 * down from `opening` to the tip height `lowest`? The ram keeps the allowance from it, on the bed's side it may rest.
 */
const standsClear = (setting: Setting, place: Vec2, opening: number, lowest: number): boolean => {
  const { pair, machine } = setting;
  const { finger, beam } = gaugeBodies(machine.gauge);
  const fromTip: Vec2 = [place[0], place[1] - lowest];
  const ram = [...pair.punchBodies, ...pair.ramBodies].map((b) => sweptBody(b, [0, Math.max(0, opening - lowest)]));
  const bed = [...pair.dieBodies, ...pair.bedBodies];
  return [finger, beam].every((bodies) =>
    leastGap(bodies, fromTip, ram, BASE_ALLOWANCE) >= BASE_ALLOWANCE && leastGap(bodies, place, bed, 0) >= -IN_DIE);
};

/** Clear before the stroke, the ram down to the sheet, with the fingers at their stop. `axisX` and `r` from the die seat, mm */
export const clearAtStop = (setting: Setting, axisX: number, r: number, opening: number): boolean =>
  standsClear(setting, [axisX, r - setting.pair.dieTop], opening, touchOf(setting.bend));

/** Clear through the stroke, the ram down to its lowest, with the fingers moved back. */
export const clearMovedBack = (setting: Setting, axisX: number, r: number, opening: number): boolean =>
  standsClear(setting, [axisX, r - setting.pair.dieTop], opening, tipAt(setting.bend, setting.bend.bendAngleUnderLoad));

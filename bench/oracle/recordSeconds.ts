import type { Step, Trial } from '../../src/trial/index.js';
import { BATCH, SEAT, STATION, WALK, type WayBy, changeOf, ramSeconds, stopSeconds, waySeconds } from './timeModel.js';

const wayOf = (moves: Step['wayIn']): WayBy => {
  if (moves.some((m) => m.kind === 'tilt')) return 'tilt';
  return moves.some((m) => m.kind === 'shift' && m.by[0] !== 0) ? 'side' : 'front';
};

/** mm over the die top where the ram meets the metal; a closed hem is two sheets and twice its inside radius high. */
const touchOf = ({ sheet: { part } }: Trial, step: Step): number => {
  const hem = part.bends.find((b) => b.id === step.bends[0])!;
  return step.kind === 'hem close' ? step.depth + 2 * (hem.insideRadius + part.thickness) : part.thickness;
};

/**
 * Seconds of one part by the steps as they are written, for the pieces that the record alone decides. `lies`: where the gauge
 * lies in the blank's plane at each step, degrees. The record's depth comes from the forming calculation and the plan's from
 * the pose formula: a few hundredths of a mm at bending speed, thousandths of a second each.
 */
export const recordSeconds = (trial: Trial, handling: number, lies: readonly number[]): number => {
  const { machine, quantity, steps, stations } = trial;
  const hand = (axis: typeof machine.gauge.x): number => (axis.drive === 'by hand' ? axis.seconds : 0);
  const each = steps.reduce((sum, step, i) => {
    const before = steps[i - 1];
    const here = { sideUp: step.sideUp, towards: lies[i]! };
    const change = before ? (changeOf({ sideUp: before.sideUp, towards: lies[i - 1]! }, here) + (before.station === step.station ? 0 : WALK)) * handling : 0;
    const set = before && before.stop.kind !== 'none' && step.stop.kind !== 'none'
      ? (Math.abs(before.stop.axisX - step.stop.axisX) > 0.05 ? hand(machine.gauge.x) : 0) + (Math.abs(before.stop.r - step.stop.r) > 0.05 ? hand(machine.gauge.r) : 0) : 0;
    const ram = ramSeconds(machine, { opening: step.ramOpening, openingOut: step.ramOpeningOut, depth: step.depth, touch: touchOf(trial, step) });
    return sum + SEAT * handling + change + set + ram + waySeconds(wayOf(step.wayIn)) + waySeconds(wayOf(step.wayOut)) + stopSeconds(step.stop.kind);
  }, 0);
  return each + (BATCH + STATION * stations.length) / quantity;
};

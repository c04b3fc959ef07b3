import type { Interval } from '../geometry/index.js';
import type { Asker } from './asker.js';
import { insetOf } from './ears.js';
import type { StrokeOption } from './strokeOption.js';
import { touchOf } from './stroke.js';
import { type Phase, forbids, look, phasesIn, phasesOut, slidesOf } from './toolClearance.js';
import type { Way } from './ways.js';

/** Name of the margin that holds the least opening against what the machine leaves. */
export const DAYLIGHT = 'opening between punch and die';

/** To which the least opening is found; told on the careful side. mm */
const NEAR = 0.1;

/**
 * The least opening between punch and die, mm, with which a planned stroke's own ways in and out pass punch and ram, with the tools that
 * stand from `stand[0]` to `stand[1]` along the bed from the bend's origin. The planner opens by a few fixed heights so that answers are
 * shared; this is asked once of a finished plan. Never less than first touch and the change to bending speed ask, nor more than planned.
 */
export const leastOpening = (asker: Asker, { setting, need, tools: { wayIn, wayOut } }: StrokeOption, stand: Interval): number => {
  const { bend, machine, pair: { ears } } = setting;
  const clear = (phases: readonly Phase[], way: Way): boolean => phases.every((phase) => {
    const slides = way.by === 'side' && (phase.name === 'way in' || phase.name === 'way out');
    // the die is passed alike whatever the opening
    const found = look(asker, setting, { ...phase, bedKey: 'ram alone', byBed: null }, slides, need);
    return forbids(found, slides).length === 0 && (['whole', 'drawn', 'body'] as const).every((row) => {
      const inset = insetOf(row, ears);
      return found.rows[row].every(([from, to]) => from >= stand[1] - inset || to <= stand[0] + inset);
    });
  });
  const least = (way: Way, phases: typeof phasesIn): number => {
    let low = Math.min(way.opening, touchOf(bend) + machine.changePoint + slidesOf(setting));
    if (clear(phases(setting, { ...way, opening: low }), way)) return low;
    let high = way.opening;
    while (high - low > NEAR) {
      const middle = (low + high) / 2;
      if (clear(phases(setting, { ...way, opening: middle }), way)) high = middle;
      else low = middle;
    }
    return high;
  };
  return Math.max(least(wayIn, phasesIn), least(wayOut, phasesOut));
};

import { type ConditionRecord, type ConditionState, type Reading, stateOf } from './condition.js';
import type { Known, Machine, SeatPlace, Seats } from './machine.js';
import { CRACKED, unguarded } from './standsStill.js';

/** Places of the wear map where both seats were read: how much further apart they stand than a straight and parallel pair. mm */
export const gapsOf = ({ wear }: Pick<ConditionState, 'wear'>): readonly SeatPlace[] =>
  wear.flatMap(({ along, bed, ram }) => (bed === null || ram === null ? [] : [{ along, gap: ram - bed }]));

const seatsOf = (machine: Machine, state: ConditionState): Seats => {
  const places = gapsOf(state);
  if (places.length < 2) return { source: 'not known' };
  const { synchronisation } = machine.cylinders;
  return { source: 'measured', places, tilt: state.tiltWorks !== true ? 'none' : synchronisation === 'electronic' ? 'each step' : 'one setting' };
};

/** The state that promises rest on; but a fault that was found before an overhaul stays, with the force that was not reached, until it is looked at again. */
const stateWithFaults = (record: ConditionRecord): ConditionState => {
  const state = stateOf(record);
  const { throat, forceReached } = record.asFound;
  const faulty = throat === 'crack found' || throat === 'weld repair found';
  return { ...state, throat: state.throat ?? (faulty ? throat : null), forceReached: state.forceReached ?? forceReached };
};

/** What everybody who plans on the machine must read, one sentence each. */
const bewareOf = (state: ConditionState, machine: Machine): readonly string[] => [
  ...(state.throat === 'crack found' ? [CRACKED] : []),
  ...(state.throat === 'weld repair found' ? ['The throat of this machine was repaired by welding: have a competent person judge the repair before the rated force is used.'] : []),
  ...(state.throat === null ? ['Whether the throat of this machine has cracks or weld repairs is not known.'] : []),
  ...(state.guarding === 'present' ? [] : [unguarded(state.guarding === 'missing' ? 'missing' : 'not known')]),
  ...(state.stoppingTime === null ? ['The stopping time of this machine is not known: it must be tested by a competent person before guarding distances are set.'] : []),
  ...(state.forceReached === null ? [`Whether this machine reaches its rating of ${(machine.rating / 1000).toFixed(0)} kN was not measured.`]
    : state.forceReached < machine.rating ? [`This machine reached ${(state.forceReached / 1000).toFixed(0)} kN of its rating of ${(machine.rating / 1000).toFixed(0)} kN: no more is planned with.`] : []),
  ...(machine.crowning !== 'none' && state.crowningWorks !== true ? [`The crowning of this machine ${state.crowningWorks === false ? 'does not work' : 'was not tried'}: it is not counted on.`] : []),
];

/**
 * The machine as its condition record lets it be promised on: figures that were measured in place of those it had new, the wear of its seats,
 * crowning and tilt only where they were found to work, no more force than it reached. What was not measured is not known; an overhaul after
 * which a throat or the force was not looked at again mends neither.
 */
export const withCondition = (machine: Machine, record: ConditionRecord): Machine => {
  const state = stateWithFaults(record);
  const known = (reading: Reading): Known => (reading === null ? { source: 'not known' } : { value: reading, source: 'measured' });
  const { ram, x, r } = state.repeatability;
  const beware = [...new Set([...(machine.beware ?? []), ...bewareOf(state, machine)])];
  return {
    ...machine,
    rating: Math.min(machine.rating, state.forceReached ?? Infinity),
    gauge: { ...machine.gauge, play: known(state.play), squareness: known(state.squareness) },
    crowning: state.crowningWorks === true ? machine.crowning : 'none',
    repeatability: { ram: known(ram), x: known(x), r: known(r) },
    seats: seatsOf(machine, state),
    ...(beware.length > 0 ? { beware } : {}),
  };
};

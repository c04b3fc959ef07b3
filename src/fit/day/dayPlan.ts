import { blank } from '../../sheet/index.js';
import type { Machine, Rack } from '../../shop/index.js';
import { type Trial, TIME } from '../../trial/index.js';
import { type TestStrip, testStrips } from '../testStrips.js';
import { type ToolChange, changeCost, changeOver, rowSeconds } from './changeOver.js';
import { checkFirst } from './checkFirst.js';
import { type KitItem, kitList } from './kitList.js';
import { MOST_PARTS, leastChanges } from './leastChanges.js';
import { type NotPlanned, notPlanned } from './notPlanned.js';
import type { OneLayout } from './oneLayout.js';

/** One part of the day, at its turn. */
export interface DayStop {
  /** Index into the trials as given. */
  readonly trial: number;
  readonly part: string;
  readonly demo: boolean;
  readonly stations: Trial['stations'];
  readonly changes: readonly ToolChange[];
  /** s: the bed changed over; machine, blanks and strips made ready; the pieces bent. Predicted by the stated time model. */
  readonly seconds: { readonly change: number; readonly prepare: number; readonly pieces: number };
  /** s from the beginning of the day to the first stroke of the part. */
  readonly from: number;
  readonly blanks: {
    /** mm; null where the part cannot be laid flat. */
    readonly length: number | null;
    readonly width: number | null;
    readonly thickness: number;
    readonly pieces: number;
    readonly spares: number;
  };
  /** Those that no part before it has bent: of the same metal, thickness, tools and angle one is enough. */
  readonly strips: readonly TestStrip[];
}

/** A demonstration of several parts on one machine. */
export interface DayPlan {
  readonly machine: { readonly id: string; readonly name: string; readonly demo: boolean };
  readonly metal: string;
  readonly stops: readonly DayStop[];
  /** Parts asked for that this machine does not make as they stand. */
  readonly left: readonly NotPlanned[];
  /** What was handed in and is no part that a brake can bend. */
  readonly notRead: readonly NotRead[];
  /** Rows of tools built, altered or taken off over the day, and the same in the order in which the parts were given. */
  readonly changes: number;
  readonly changesAsGiven: number;
  readonly kit: readonly KitItem[];
  readonly checks: readonly string[];
  /** s in all. */
  readonly seconds: number;
  /** What 'least' and the times speak of. */
  readonly model: string;
  /** Where all parts stand on one layout, which never changes over the day. */
  readonly layout?: DayLayout;
}

/** The layout that the parts of a day share. */
export interface DayLayout extends Pick<OneLayout, 'length' | 'bound' | 'proven' | 'bed' | 'model'> {
  /** Left to right: which steps of which part are made there, by the part's place in the list as given and by its name. */
  readonly stations: readonly { readonly station: string; readonly parts: readonly { readonly trial: number; readonly part: string; readonly steps: readonly number[] }[] }[];
}

const dayLayoutOf = ({ length, bound, proven, bed, model, serves }: OneLayout, trials: readonly Trial[], made: readonly number[]): DayLayout => ({
  length, bound, proven, bed, model,
  stations: serves.map(({ station, parts }) => ({ station, parts: parts.map(({ part, steps }) => ({ trial: made[part]!, part: trials[made[part]!]!.sheet.part.name, steps })) })),
});

/** A file, or a body of one, that is no part a brake can bend, and why. */
export interface NotRead {
  readonly part: string;
  readonly sentence: string;
}

export type DayPlanned = { readonly ok: true; readonly value: DayPlan } | { readonly ok: false; readonly sentence: string };

export interface DayAsked {
  readonly trials: readonly Trial[];
  /** The tools at hand, for the kit list. */
  readonly rack: Rack;
  /** Of each part. */
  readonly pieces: number;
  readonly spares: number;
  /** What everybody who works on the machine must read, as its record says today; as the first trial knows it when absent. */
  readonly beware?: readonly string[];
  readonly notRead?: readonly NotRead[];
  /** The layout that the trials with the verdict 'makes' stand on, in their order, where they share one. */
  readonly layout?: OneLayout;
}

const STROKES = `a part made ready ${TIME.batch} s (common practice, no source); strokes by each trial's own time model. Talking, measuring and looking are not in it.`;

const figure = (seconds: number): string => `${Number(seconds.toFixed(1))} s`;

/** What 'least' and the times speak of on this machine. */
const modelWords = (machine: Machine, onOneLayout: boolean): string => {
  const row = rowSeconds(machine);
  const source = machine.stationSeconds === undefined ? '' : ` by the machine's own ${figure(machine.stationSeconds)} for a station of two rows`;
  return onOneLayout
    ? `The parts stand on one layout, which is built once and stays as it is, in the order given. A row built takes ${figure(row.built)}${source}, ${STROKES}`
    : 'The order with the fewest rows of punches or dies built, altered or taken off, and of those the quickest, over all orders of these plans: each part is made with the stations of its own plan, ' +
      `and tools that its plan does not name are taken off. A row built takes ${figure(row.built)}, altered ${figure(row.altered)}, taken off ${figure(row['taken off'])}${source}, ${STROKES}`;
};

const runSeconds = ({ timeModel }: Trial): number => timeModel.filter(({ what }) => !what.startsWith('set-up')).reduce((sum, p) => sum + p.seconds, 0);

const leftOut = (trials: readonly Trial[]): readonly NotPlanned[] => trials.flatMap((trial, i) => notPlanned(trial, i) ?? []);

const faultOf = (trials: readonly Trial[]): string | null => {
  const [first] = trials;
  if (!first) return 'A day plan needs at least one trial.';
  if (trials.length > MOST_PARTS) return `${trials.length} parts were asked for; ${MOST_PARTS} are the most that are put in an exact order.`;
  const other = trials.find(({ machine }) => machine.id !== first.machine.id);
  if (other) return `A day plan is for one machine: ${first.sheet.part.name} was planned on ${first.machine.name}, ${other.sheet.part.name} on ${other.machine.name}.`;
  if (trials.some(({ verdict }) => verdict === 'makes')) return null;
  return `${first.machine.name} makes none of the parts asked for as they stand, so no day is planned. ${leftOut(trials).map(({ part, words }) => `${part}: ${words}`).join(' ')}`;
};

/**
 * The day: parts in the order of least tool changes, what to lay out, cut and check beforehand, and how long it takes. A part that is not
 * made as it stands is left out and told with its reason and what would make it.
 */
export const dayPlan = ({ trials, rack, pieces, spares, beware, notRead = [], layout }: DayAsked): DayPlanned => {
  const fault = faultOf(trials);
  if (fault !== null) return { ok: false, sentence: fault };
  const machine: Machine = trials[0]!.machine;
  const made = trials.flatMap(({ verdict }, i) => (verdict === 'makes' ? [i] : []));
  const shown = made.map((i) => trials[i]!);
  const between = (a: number | null, b: number): readonly ToolChange[] => changeOver(a === null ? null : shown[a]!, shown[b]!);
  const best = leastChanges(shown.length, (a, b) => changeCost(between(a, b), machine));
  const asGiven = shown.map((_, i) => changeCost(between(i === 0 ? null : i - 1, i), machine).changes).reduce((a, b) => a + b, 0);
  let at = 0;
  const bent = new Set<string>();
  const stops = best.order.map((index, k): DayStop => {
    const trial = shown[index]!;
    const changes = between(k === 0 ? null : best.order[k - 1]!, index);
    const seconds = { change: changeCost(changes, machine).seconds, prepare: TIME.batch, pieces: pieces * runSeconds(trial) };
    const from = at + seconds.change + seconds.prepare;
    at = from + seconds.pieces;
    const flat = blank(trial.sheet);
    const { part } = trial.sheet;
    return {
      trial: made[index]!, part: part.name, demo: part.assumptions.some(({ sentence }) => /demo part/i.test(sentence)), stations: trial.stations, changes, seconds, from,
      blanks: { length: flat.ok ? flat.value.length : null, width: flat.ok ? flat.value.width : null, thickness: part.thickness, pieces, spares },
      strips: testStrips(trial).filter((strip) => {
        const station = trial.stations.find(({ id }) => id === strip.station);
        const key = JSON.stringify([trial.metal.id, part.thickness, station?.punch, station?.die, strip.bends]);
        const fresh = !bent.has(key);
        bent.add(key);
        return fresh;
      }),
    };
  });
  return {
    ok: true,
    value: {
      machine: { id: machine.id, name: machine.name, demo: machine.demo }, metal: [...new Set(shown.map(({ metal }) => metal.name))].join(', '), stops, left: leftOut(trials), notRead,
      changes: best.changes, changesAsGiven: asGiven, kit: kitList(shown, rack), checks: checkFirst(machine, shown, beware), seconds: at, model: modelWords(machine, layout !== undefined), ...(layout && { layout: dayLayoutOf(layout, trials, made) }),
    },
  };
};

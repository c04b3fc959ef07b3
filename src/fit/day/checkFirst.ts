import type { Machine } from '../../shop/index.js';
import { stopX } from '../../stroke/index.js';
import { type Trial, listed } from '../../trial/index.js';
import { worstStockFactor } from '../worstStock.js';

const DRIVEN: Readonly<Record<'powered' | 'by hand' | 'fixed', string>> = { powered: 'powered', 'by hand': 'set by hand', fixed: 'fixed' };

const most = (trials: readonly Trial[], of: (trial: Trial) => number): { readonly name: string; readonly value: number } =>
  trials.map((t) => ({ name: t.sheet.part.name, value: of(t) })).reduce((a, b) => (b.value > a.value ? b : a));

const notKnown = (machine: Machine): string[] =>
  (['ram', 'x', 'r'] as const).flatMap((axis) => (machine.repeatability[axis].source === 'not known' ? [axis === 'ram' ? 'the ram' : axis.toUpperCase()] : []));

/** "28.6 to 95.9 mm", and of one figure that one. */
const span = (values: readonly number[], decimals: number): string => [...new Set([Math.min(...values), Math.max(...values)].map((v) => v.toFixed(decimals)))].join(' to ');

const kN = (newtons: number): string => `${(newtons / 1000).toFixed(1)} kN`;

/** The greatest force over all strokes: of the worst sheet where the plans reckoned it, and of a typical one, each with the part that asks it. */
const forceWords = (planned: readonly Trial[]): string => {
  const typical = most(planned, (t) => Math.max(...t.steps.map((s) => s.force)));
  if (planned.every((t) => t.steps.every((s) => worstStockFactor(s) === null))) return `${kN(typical.value)} predicted in a typical sheet (${typical.name})`;
  const worst = most(planned, (t) => Math.max(...t.steps.map((s) => s.force * (worstStockFactor(s) ?? 1))));
  return `${kN(worst.value)} predicted in the thickest and strongest sheet${worst.name === typical.name ? '' : ` (${worst.name})`}, ${kN(typical.value)} in a typical one (${typical.name})`;
};

/** What is to be seen to before the buyer stands there, each with its measure; `beware`: what the machine's record says that everybody must read, which comes first. */
export const checkFirst = (machine: Machine, trials: readonly Trial[], beware = machine.beware ?? []): readonly string[] => {
  const planned = trials.filter(({ steps }) => steps.length > 0);
  if (planned.length === 0) return [];
  const opening = most(planned, (t) => Math.max(...t.steps.map((s) => Math.max(s.ramOpening, s.ramOpeningOut) + t.stations.find(({ id }) => id === s.station)!.stackHeight)));
  const crowning = planned.flatMap((t) => t.steps.flatMap((s) => (s.crowning === null ? [] : [s.crowning])));
  const r = planned.flatMap((t) => t.steps.flatMap((s) => (s.stop.kind === 'none' ? [] : [s.stop.r])));
  const x = planned.flatMap((t) => t.steps.flatMap((s) => stopX(s).set.map(({ value }) => value)));
  const hand = (['x', 'r', 'z'] as const).filter((axis) => machine.gauge[axis].drive !== 'powered');
  const unknown = notKnown(machine);
  return [
    ...beware.map((words) => `⚠ ${words}`),
    'Guarding: fitted, working and its stopping time tested by a competent person, by the local rules and the standards for press brakes; its settings suit the openings and flange heights of these parts.',
    `Daylight: the ram is planned to open to ${opening.value.toFixed(0)} mm from the die seat to the punch shoulder (${opening.name}); the machine's open height is ${machine.openHeight.toFixed(0)} mm. See that no stroke limit is set lower.`,
    `Force: at most ${forceWords(planned)}; the machine's rating as entered is ${(machine.rating / 1000).toFixed(0)} kN. Read the rating on its plate.`,
    crowning.length === 0 ? 'Crowning: none reckoned.'
      : `Crowning: ${machine.crowning === 'none' ? 'the machine has none; shims or the angle spread as each set-up sheet says' : `${DRIVEN[machine.crowning]}, ${span(crowning, 2)} mm at the middle of the bed; run it once to and fro`}.`,
    ...(x.length === 0 ? [] : [`Back gauge: X ${span(x, 1)} mm, R ${span(r, 1)} mm; run there, check zero and squareness with a ground bar.`]),
    ...hand.map((axis) => `${axis.toUpperCase()} is ${DRIVEN[machine.gauge[axis].drive]}: have the rule and spanner at hand.`),
    ...(unknown.length > 0 ? [`Not known: how well ${listed(unknown)} ${unknown.length === 1 ? 'comes back to its place' : 'come back to their places'}. Measure it before a tolerance is shown.`] : []),
    'Tools: seats and tangs clean, no nick at tip or shoulder, rating mark legible; clamps hold each segment.',
    'Measuring: calliper, protractor and thickness gauge at hand, each within its calibration date; write the instrument down with the first piece.',
    `Supply: ${machine.site.supply}; oil warm, so that the first stroke is like the tenth.`,
  ];
};

import { z } from 'zod';
import type { ConditionRecord } from './condition.js';
import { type DataFault, list, oneOf, readShape, refuse, whole, within, words, yesNo } from './dataFault.js';
import type { Result } from './result.js';

const mm = (least: number, most: number) => within(least, most, 'mm');
/** mm along a bed: the longest that the floor takes, from its middle. */
const place = mm(-6000, 6000);
const text = z.string({ error: 'must be words, or empty' }).max(1000, { error: 'must be at most 1000 letters' });

/** A day of the calendar: 30 February is none. */
const isDay = (s: string): boolean => {
  const [, year, month, date] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(s)?.map(Number) ?? [];
  if (year === undefined || month === undefined || date === undefined || month < 1 || month > 12) return false;
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return date >= 1 && date <= [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1]!;
};

const day = z.string({ error: 'must be a day as YYYY-MM-DD' }).refine(isDay, { error: 'must be a day as YYYY-MM-DD' });

const included = within(10, 180, 'degrees included').nullable();

const stateSchema = z.strictObject({
  date: day,
  by: words('a name'),
  instruments: list(z.strictObject({ what: words('an instrument'), calibrated: day.nullable() }), 0, 'instruments').max(30),
  throat: oneOf(['nothing found', 'crack found', 'weld repair found']).nullable(),
  throatWords: text,
  ramDrift: z.strictObject({ mm: mm(0, 100), seconds: within(1, 86_400, 's') }).nullable(),
  forceReached: within(0, 50_000_000, 'N').nullable(),
  guideClearance: mm(0, 10).nullable(),
  wear: list(z.strictObject({ along: place, bed: mm(-20, 20).nullable(), ram: mm(-20, 20).nullable() }), 0, 'places').max(200),
  squareness: within(0.001, 5, 'mm over 1,000 mm').nullable(),
  play: mm(0.001, 5).nullable(),
  repeatability: z.strictObject({ ram: mm(0.001, 5).nullable(), x: mm(0.001, 5).nullable(), r: mm(0.001, 5).nullable(), z: mm(0.001, 5).nullable() }),
  crowningWorks: yesNo.nullable(),
  tiltWorks: yesNo.nullable(),
  guarding: oneOf(['present', 'missing']).nullable(),
  stoppingTime: within(1, 10_000, 'ms').nullable(),
  testedBy: text,
  testBends: list(
    z.strictObject({
      load: oneOf(['light', 'heavy']), metal: words('a metal'), thickness: mm(0.1, 50), v: mm(1, 500), length: mm(10, 12_000),
      includedAngles: z.strictObject({ left: included, middle: included, right: included }),
    }),
    0, 'test bends',
  ).max(20),
  remarks: text,
});

const recordSchema = z.strictObject({
  machineId: words('the id of a machine'),
  demo: yesNo,
  plate: z.strictObject({
    serial: text, year: whole(1900, 2100).nullable(), force: within(0, 50_000_000, 'N').nullable(), mass: within(0, 500_000, 'kg').nullable(),
  }),
  manuals: oneOf(['complete', 'in part', 'missing']).nullable(),
  supply: text,
  asFound: stateSchema,
  overhaul: text,
  overhauled: stateSchema.nullable(),
});

/** A condition record from data read from outside: strict, every figure in its range or null for not known, places from left to right. */
export const parseCondition = (json: unknown): Result<ConditionRecord, DataFault> => {
  const read = readShape(recordSchema, json, 'condition record', 0);
  if (!read.ok) return read;
  const record = read.value;
  for (const name of ['asFound', 'overhauled'] as const) {
    const state = record[name];
    if (state === null) continue;
    const i = state.wear.findIndex((p, k) => k > 0 && p.along <= state.wear[k - 1]!.along);
    if (i > 0) return refuse('sense', record.machineId, `${name}.wear.${i}.along`, `(${state.wear[i]!.along} mm) must be further right than the place before it (${state.wear[i - 1]!.along} mm)`);
    if (state.stoppingTime !== null && state.testedBy.trim() === '') {
      return refuse('sense', record.machineId, `${name}.testedBy`, 'must name the competent person who tested the stopping time');
    }
  }
  if (record.overhauled !== null && record.overhauled.date < record.asFound.date) {
    return refuse('sense', record.machineId, 'overhauled.date', `(${record.overhauled.date}) must not lie before the day it was found (${record.asFound.date})`);
  }
  return { ok: true, value: record };
};

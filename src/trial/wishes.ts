import type { Part } from '../sheet/index.js';
import type { Pair } from './bodies.js';
import { type Group, bitsOf } from './groups.js';
import type { Action } from './task.js';
import type { Reason } from './trial.js';

/** What the user asks of an order; the planner keeps to it or says at once that it cannot be. Bends by id. */
export interface Wishes {
  /** These bends in this order; others where they fit. */
  readonly keepOrder?: readonly string[];
  /** Stroke `step` (1 is the first) makes this bend. */
  readonly lock?: readonly { readonly step: number; readonly bend: string }[];
  /** Never this bend with that plate to the gauge, or under that punch, or at that step. */
  readonly forbid?: readonly { readonly bend: string; readonly plateToGauge?: number; readonly punch?: string; readonly step?: number }[];
}

/** A wish that names what the part has not, in one sentence. */
export const wishFault = (part: Part, strokes: number, wishes: Wishes): Reason | null => {
  const ids = part.bends.map((b) => b.id);
  const named = [...(wishes.keepOrder ?? []), ...(wishes.lock ?? []).map((l) => l.bend), ...(wishes.forbid ?? []).map((f) => f.bend)];
  const stranger = named.find((id) => !ids.includes(id));
  if (stranger !== undefined) return { code: 'no order', bends: [], sentence: `The part has no bend ${stranger}; its bends are ${ids.join(', ')}.` };
  const far = (wishes.lock ?? []).find(({ step }) => step > strokes || step < 1);
  if (far) return { code: 'no order', bends: [far.bend], by: far.step - strokes, sentence: `Step ${far.step} is asked for bend ${far.bend} and the part has ${strokes} strokes.` };
  return null;
};

/** Which strokes the wishes leave, in every fold. */
export const allowedBy = (part: Part, groups: readonly Group[], pairs: readonly Pair[], { keepOrder = [], lock = [], forbid = [] }: Wishes): ((action: Action, mask: number) => boolean) => {
  const bits = groups.map(bitsOf);
  const groupOf = (id: string): number => groups.findIndex((g) => g.bends.some((b) => part.bends[b]!.id === id));
  const kept = [...new Set(keepOrder.map(groupOf))];
  /** For each group, the bends that must have been made before it. */
  const before = groups.map((_, g) => kept.slice(0, Math.max(0, kept.indexOf(g))).reduce((sum, k) => sum | bits[k]!, 0));
  const locked = new Map(lock.map(({ step, bend }) => [step - 1, groupOf(bend)]));
  const lockedGroups = new Set(locked.values());
  const stepAt = (mask: number): number => bits.reduce((n, b) => n + ((mask & b) === b ? 1 : 0), 0);
  const forbidden = (action: Action, mask: number): boolean => forbid.some(({ bend, plateToGauge, punch, step }) => {
    if (groupOf(bend) !== action.group) return false;
    const { bends, offset } = groups[action.group]!;
    const next = part.bends[bends[0]!]!.sides[action.gaugeSide].plate;
    // beyond an offset's web lies the flange that points to the gauge
    const towards = next === offset?.web ? part.bends[bends[1]!]!.sides.find((s) => s.plate !== next)!.plate : next;
    const seat = plateToGauge !== undefined && towards === plateToGauge;
    const tool = punch !== undefined && pairs[action.pair]!.punch.id === punch;
    return seat || tool || (step !== undefined && stepAt(mask) === step - 1);
  });
  return (action, mask) => {
    if ((mask & before[action.group]!) !== before[action.group] || forbidden(action, mask)) return false;
    if (locked.size === 0) return true;
    const step = stepAt(mask);
    const wanted = locked.get(step);
    return wanted === undefined ? !lockedGroups.has(action.group) : wanted === action.group;
  };
};

/** The wishes in words, for the model's sentence and for reasons. */
export const wishesInWords = ({ keepOrder = [], lock = [], forbid = [] }: Wishes): string => [
  ...(keepOrder.length > 0 ? [`${keepOrder.join(' before ')}`] : []),
  ...lock.map(({ step, bend }) => `${bend} as step ${step}`),
  ...forbid.map(({ bend, plateToGauge, punch, step }) => `never ${bend}${plateToGauge === undefined ? '' : ` with plate ${plateToGauge} to the gauge`}${punch === undefined ? '' : ` under ${punch}`}${step === undefined ? '' : ` as step ${step}`}`),
].join(', ');

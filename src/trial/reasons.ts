import { type Part, plateNames } from '../sheet/index.js';
import type { Pair } from './bodies.js';
import type { Conflict } from './conflict.js';
import type { Group } from './groups.js';
import { listed } from './listed.js';
import type { Blocked } from './task.js';
import type { Reason } from './trial.js';
import { walks } from './walks.js';

const mm = (value: number): string => `${value.toFixed(1)} mm`;

const bodyName = (conflict: Conflict, pair: Pair): string => {
  if (conflict.body === 'punch') return `the punch ${pair.punch.name}`;
  if (conflict.body === 'ear') return `an ear of the punch ${pair.punch.name}`;
  if (conflict.body === 'die') return `the die ${pair.die.name}`;
  if (conflict.body === 'beam') return `the upper beam or its clamps over the punch ${pair.punch.name}`;
  return `the ${conflict.body}`;
};

const when: Record<Conflict['phase'], string> = {
  'way in': ' on the way in', 'ram closing': ' as the ram comes down', stroke: '', 'ram opening': ' as the ram opens',
  'way out': ' on the way out', stop: '', 'set-up': '',
};

/** A conflict as people read it: who meets what, by how much, in which partial fold. */
export const reasonOf = (part: Part, group: Group, pair: Pair, conflict: Conflict, mask: number): Reason => {
  const bends = group.bends.map((b) => part.bends[b]!.id);
  const at = `bend ${listed(bends)}`;
  const names = plateNames(part);
  const { view, by } = conflict;
  if (!view || conflict.note) {
    const sentence = conflict.code === 'short flange'
      ? `At ${at} ${view ? names[view.plate]! : 'the flange'} is too short for ${pair.die.name} by ${mm(by)}: ${conflict.note!}.`
      : `At ${at} with ${pair.punch.name} over ${pair.die.name}: ${conflict.note ?? conflict.code}.`;
    return { code: conflict.code, sentence, bends, bodies: [pair.punch.name, pair.die.name], by };
  }
  const walk = walks({ part, allowances: part.bends.map(() => 0) }, group.bends[0]!).find((w) => w.plate === view.plate)!;
  const between = walk.hops.map((h) => h.bend).filter((b) => !group.bends.includes(b));
  const made = between.filter((b) => (mask & (1 << b)) !== 0).map((b) => part.bends[b]!.id);
  const unmade = between.filter((b) => (mask & (1 << b)) === 0).map((b) => part.bends[b]!.id);
  const other = conflict.code === 'plate on plate' ? names[Number(conflict.body.split(' ')[1])]! : bodyName(conflict, pair);
  const measure = by > 0 ? `meets ${other} by ${mm(by)}` : `comes within ${mm(-by)} of ${other}`;
  const fold = [
    made.length > 0 ? `if ${listed(made)} ${made.length > 1 ? 'are' : 'is'} made` : '',
    unmade.length > 0 ? `${made.length > 0 ? 'and ' : 'if '}${listed(unmade)} ${unmade.length > 1 ? 'are' : 'is'} not` : '',
  ].filter((s) => s !== '').join(' ');
  return {
    code: conflict.code, bends, made, unmade, by, bodies: [names[view.plate]!, other],
    sentence: `At ${at} ${names[view.plate]!} ${measure}${when[conflict.phase]}${fold ? ` ${fold}` : ''}.`,
  };
};

/** The first stroke that nothing but the want of a stop refuses, however many other reasons are nearer; null where there is none. */
export const noStopIn = (part: Part, groups: readonly Group[], pairs: readonly Pair[], blocked: readonly Blocked[]): Reason | null => {
  const found = blocked.find(({ conflicts }) => conflicts.length > 0 && conflicts.every((c) => c.code === 'no stop'));
  return found ? reasonOf(part, groups[found.action.group]!, pairs[found.action.pair]!, found.conflicts[0]!, found.mask) : null;
};

const MOST_REASONS = 6;

/** What a reason is about, numbers left out: the same about another tool is not told twice. */
const subjectOf = (reason: Reason): string =>
  `${reason.code}|${reason.bends.join()}|${reason.bodies?.join() ?? ''}|${[...(reason.made ?? [])].sort().join()}|${(reason.unmade ?? []).join()}`;

/** A reason that is told only if there is room for it: its exact depth costs. `about` is alike for reasons of one subject. */
export interface Untold {
  readonly about: string;
  readonly code: Reason['code'];
  readonly tell: () => Reason;
}

/** What two reasons share when one of them is enough. */
const aboutOf = (reason: Reason): string =>
  (reason.code === 'clearance' || reason.code === 'way in' || reason.code === 'way out' ? subjectOf(reason) : reason.sentence);

/** A reason that needs no measuring. */
export const asItIs = (reason: Reason): Untold => ({ about: aboutOf(reason), code: reason.code, tell: () => reason });

/**
 * The reasons that close every order, fewest and plainest first. Of each fold in which a group was refused the seat and tools
 * that come nearest speak; `measured` gives a told conflict its exact depth; folds with the fewest bends made come first, since they need the least to be said.
 */
export const reasonsFrom = (part: Part, groups: readonly Group[], pairs: readonly Pair[], blocked: readonly Blocked[], measured: (b: Blocked, c: Conflict) => Conflict): readonly Untold[] => {
  // what shorter tools would clear is not what forbids the stroke
  const blamed = ({ conflicts }: Blocked): readonly Conflict[] => (conflicts.every((c) => c.beside) ? conflicts : conflicts.filter((c) => !c.beside));
  const worstOf = (b: Blocked): Conflict => blamed(b).reduce((w, c) => (c.by > w.by ? c : w));
  const nearest = new Map<string, Blocked>();
  for (const b of blocked) {
    const key = `${b.action.group}|${b.mask}`;
    const other = nearest.get(key);
    if (!other || worstOf(b).by < worstOf(other).by) nearest.set(key, b);
  }
  const ones = (mask: number): number => mask.toString(2).replaceAll('0', '').length;
  const folds = [...nearest.values()].sort((a, b) => ones(a.mask) - ones(b.mask) || worstOf(b).by - worstOf(a).by);
  const told = new Map<string, Untold>();
  for (const b of folds) {
    const inWords = (c: Conflict): Reason => reasonOf(part, groups[b.action.group]!, pairs[b.action.pair]!, c, b.mask);
    const roughly = inWords(worstOf(b));
    const subject = subjectOf(roughly);
    if (!told.has(subject)) told.set(subject, { about: aboutOf(roughly), code: roughly.code, tell: () => inWords(measured(b, worstOf(b))) });
    if (told.size >= MOST_REASONS) break;
  }
  return [...told.values()];
};

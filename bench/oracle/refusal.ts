import { proveTrial } from '../../src/proof/index.js';
import type { Conflict } from '../../src/trial/conflict.js';
import { type Searched, type Trial, type TrialInput, planTrial } from '../../src/trial/index.js';
import { measuring } from '../../src/trial/measuring.js';
import { reasonsFrom } from '../../src/trial/reasons.js';
import type { Blocked } from '../../src/trial/task.js';
import { bendLine } from '../../src/trial/bentPieces.js';
import { needOf, settingOf } from '../../src/trial/strokeOption.js';
import { NEVER_TWICE, anglesIn } from '../../src/trial/states.js';
import { waysFor } from '../../src/trial/toolClearance.js';
import { viewer } from '../../src/trial/views.js';
import { everyOrder } from './everyOrder.js';
import type { Option } from './leg.js';
import { problemOf } from './problem.js';
import { sentencesIn } from './sentencesIn.js';
import { strokeTrial } from './strokeTrial.js';
import { depthByProof, plateDepthByProof } from './toldDepth.js';

/** mm: how far a told depth may lie from the proof engine's. */
const DEPTH = 0.2;
/** Under this (mm) of room the proof engine refuses: its 1 mm less the chords of both bodies. */
const ROOM = 1;

/** One conflict that a refusal tells, beside what the proof engine measures and finds. */
export interface ToldConflict {
  readonly sentence: string;
  /** mm by the planner, and by the proof engine; null where it is no matter of bodies. */
  readonly told: number;
  readonly measured: number | null;
  /** What the replay of the stroke finds, where it was asked. */
  readonly finding?: string;
}

export interface Refusal {
  readonly trial: Trial;
  readonly conflicts: readonly ToldConflict[];
  /** What does not hold, in words. */
  readonly wrong: readonly string[];
}

/** Phases of a conflict as the proof's findings name them. */
const SAID: Readonly<Record<string, RegExp>> = {
  'way in': /, way in/, 'ram closing': /, close/, stroke: /, bend/, 'ram opening': /, open/, 'way out': /, way out/,
};

interface Told {
  readonly blocked: Blocked;
  readonly conflict: Conflict;
}

/** The conflicts that a search's refusal tells, as the planner itself picks and measures them, with their sentences. */
const toldBy = ({ task, tooling, result }: Searched, input: TrialInput): readonly (Told & { readonly sentence: string })[] => {
  if (result.kind !== 'none') return [];
  const taken: Told[] = [];
  const measure = measuring(tooling, task.groups, NEVER_TWICE, input.machine);
  const reasons = reasonsFrom(tooling.sheet.part, task.groups, tooling.pairs, result.blocked, (blocked, c) => {
    const conflict = measure(blocked, c);
    taken.push({ blocked, conflict });
    return conflict;
  });
  const sentences = reasons.map((r) => r.tell().sentence);
  return sentences.map((sentence, i) => ({ ...taken[i]!, sentence }));
};

const checkOne = async (searched: Searched, input: TrialInput, { blocked: { action, mask }, conflict, sentence }: Told & { readonly sentence: string }, replay: boolean): Promise<ToldConflict> => {
  const { task, tooling } = searched;
  const { by: told, view } = conflict;
  const angles = anglesIn(tooling.sheet.part, NEVER_TWICE)(mask);
  const setting = settingOf(tooling, input.machine, task.groups[action.group]!, action.gaugeSide, tooling.pairs[action.pair]!, viewer(tooling.sheet), angles);
  const line = bendLine(tooling.sheet.part, setting.seat, setting.group);
  const need = needOf(line);
  const { waysIn, waysOut } = waysFor(setting);
  const stop: Option['stop'] = { kind: 'none', plate: setting.views.find((v) => v.wing && v.onGaugeSide)!.plate, face: 'none', x: 0, axisX: 0, r: 0, z: [], retract: 0, spread: 0, feature: null, height: 0, touching: 0 };
  const option: Option = { setting, line, need, stop, tools: { window: need, wayIn: waysIn[0]!, wayOut: waysOut[0]! } };
  const { trial, number } = strokeTrial(searched, input, action, mask, option, need);
  const measured = !view ? null : conflict.code === 'plate on plate'
    ? await plateDepthByProof(trial, number, view.plate, Number(conflict.body.split(' ')[1]))
    : await depthByProof(trial, number, conflict, view.plate);
  if (!replay || measured === null) return { sentence, told, measured };
  const { findings } = await proveTrial(trial, { steps: [number] });
  return { sentence, told, measured, finding: findings.find((f) => SAID[conflict.phase]!.test(f)) ?? '' };
};

/**
 * Plans a part; of a refusal, has every order searched again, every told conflict measured by the proof engine, and (`replay`) the first
 * of each search replayed. Null when the part is not refused.
 */
export const checkRefusal = async (input: TrialInput, now: () => number, replay: boolean): Promise<Refusal | null> => {
  const all: Searched[] = [];
  let made = false;
  // a first plan is enough to know that the part is not refused
  const trial = planTrial(input, { now, onSearch: (s) => void all.push(s), cancelled: () => made, onProgress: ({ bestSeconds }) => void (made ||= bestSeconds !== undefined) });
  if (trial.verdict !== 'does not make' || all.length === 0) return null;
  const wrong: string[] = [];
  const conflicts: ToldConflict[] = [];
  const sentences = new Set(trial.reasons.map((r) => r.sentence));
  if (trial.reasons.length === 0) wrong.push('no reason is told');
  for (const { sentence } of trial.reasons) if (sentencesIn(sentence) > 2) wrong.push(`told in more than two sentences: ${sentence}`);
  if (trial.reasons.some((r) => r.code === 'limit')) wrong.push('refused for want of computing time');
  for (const searched of all) {
    if (searched.result.kind !== 'none') wrong.push(`V ${searched.tooling.v}: the search ended with ${searched.result.kind}`);
    const best = everyOrder(problemOf(searched.task, input.machine, input.quantity));
    if (best) wrong.push(`V ${searched.tooling.v}: there is an order of ${best.seconds.toFixed(3)} s`);
    let asked = false;
    for (const told of toldBy(searched, input)) {
      if (!sentences.has(told.sentence)) continue;
      const one = await checkOne(searched, input, told, replay && !asked);
      conflicts.push(one);
      if (one.measured === null) continue;
      asked = true;
      if (Math.abs(one.told - one.measured) > DEPTH) wrong.push(`${told.sentence} told ${one.told.toFixed(3)} mm, measured ${one.measured.toFixed(3)} mm`);
      if (one.measured < -ROOM) wrong.push(`${told.sentence} the proof engine measures ${(-one.measured).toFixed(3)} mm of room`);
      if (one.finding === '') wrong.push(`${told.sentence} the replay of the stroke finds nothing there`);
    }
  }
  return { trial, conflicts, wrong };
};

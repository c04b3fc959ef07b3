import type { Interval } from '../../src/geometry/index.js';
import { proveTrial } from '../../src/proof/index.js';
import { createAsker } from '../../src/trial/asker.js';
import type { Setting } from '../../src/trial/setting.js';
import { chooseStop } from '../../src/trial/stops.js';
import { bendLine } from '../../src/trial/bentPieces.js';
import { settingOf } from '../../src/trial/strokeOption.js';
import { anglesIn } from '../../src/trial/states.js';
import { symmetriesOf } from '../../src/trial/symmetry.js';
import { viewer } from '../../src/trial/views.js';
import { waysFor } from '../../src/trial/toolClearance.js';
import type { Searched, TrialInput } from '../../src/trial/index.js';
import { sameWay } from '../../src/trial/task.js';
import { bitsOf } from '../../src/trial/groups.js';
import type { Option } from './leg.js';
import { mayCome } from './problem.js';
import { strokeTrial } from './strokeTrial.js';

type Task = Searched['task'];
type Action = Task['actions'][number];
type Answer = ReturnType<Task['answer']>;

/** What proof and planner said of the strokes asked. */
export interface Verdicts {
  /** Both say yes; both say no. */
  accepted: number;
  refused: number;
  /** Strokes that a turn of the flat blank onto itself takes to one already asked, with the planner's own answers alike: they are one question. */
  turned: number;
  /** Refused by a stated rule that is no matter of clearance (flange too short for the V, ram too low): taken as it is. */
  byRule: number;
  /** The planner says yes and the proof finds something: each a defect. */
  readonly wrongYes: string[];
  /** The planner says no and the proof finds nothing with one of the ways: the planner is more careful than it need be. */
  readonly careful: string[];
}

/** mm of tool past the ends of the bend line where the window has no end of its own. */
const OVERHANG = 50;

/** mm at an end of a bend line that may stand without tool, a tenth of it at most. Common practice, no source. */
const BARE_END = 5;

const CLEARANCE: readonly string[] = ['clearance', 'plate on plate', 'way in', 'way out'];

/**
 * Answers of the proof engine in place of the planner's clearance. A stroke that the planner accepts is replayed as it would be
 * made, its tools filling the whole window that the planner says is free; one that it refuses is replayed with the shortest
 * tools that will do, no gauge, and each of the planner's ways in and out, and must be found at fault with all of them.
 */
export const judge = async (searched: Searched, input: TrialInput): Promise<{ readonly answer: Task['answer']; readonly verdicts: Verdicts }> => {
  const { task, tooling } = searched;
  const verdicts: Verdicts = { accepted: 0, refused: 0, turned: 0, byRule: 0, wrongYes: [], careful: [] };
  const look = viewer(tooling.sheet);
  const asker = createAsker();
  const findings = async (action: Action, mask: number, option: Option, tools: Interval): Promise<readonly string[]> => {
    const { trial, number } = strokeTrial(searched, input, action, mask, option, tools);
    const proof = await proveTrial(trial, { steps: [number] });
    return proof.findings.filter((f) => f.startsWith(`Step ${number}`)).map((f) => f.replace(/^Step \d+/, ''));
  };
  const angles = anglesIn(tooling.sheet.part);
  const name = (action: Action, mask: number): string =>
    `${tooling.sheet.part.name}, V ${tooling.v}: bends ${task.groups[action.group]!.bends.join('+')}, side ${action.gaugeSide} to the gauge, ${tooling.pairs[action.pair]!.key}, made ${mask.toString(2)}`;

  /** Ways of which the proof finds nothing, or what it finds with the first of them. */
  const freeWay = async (action: Action, mask: number, setting: Setting, need: Interval): Promise<Option | string> => {
    const { waysIn, waysOut } = waysFor(setting);
    const wing = setting.views.find((v) => v.wing && v.onGaugeSide)!.plate;
    const without: Option['stop'] = { kind: 'none', plate: wing, face: 'none', x: 0, axisX: 0, r: 0, z: [], retract: 0, spread: 0, feature: null, height: 0, touching: 0 };
    const at = (i: number, o: number): Option => ({ setting, line: need, need, stop: without, tools: { window: need, wayIn: waysIn[i]!, wayOut: waysOut[o]! } });
    const [inward, outward] = [/^(, way in|, close|: the way in)/, /^(, open|, way out|: the way out)/];
    const first = await findings(action, mask, at(0, 0), need);
    const bending = first.find((f) => !inward.test(f) && !outward.test(f));
    if (bending) return bending;
    let i = first.some((f) => inward.test(f)) ? 1 : 0;
    for (; i < waysIn.length && i > 0; i++) if (!(await findings(action, mask, at(i, 0), need)).some((f) => inward.test(f))) break;
    if (i === waysIn.length) return first.find((f) => inward.test(f))!;
    let o = first.some((f) => outward.test(f)) ? 1 : 0;
    for (; o < waysOut.length && o > 0; o++) if (!(await findings(action, mask, at(i, o), need)).some((f) => outward.test(f))) break;
    if (o === waysOut.length) return first.find((f) => outward.test(f))!;
    return at(i, o);
  };

  const judged = async (action: Action, mask: number): Promise<Answer> => {
    const said = task.answer(action, mask);
    if (said.ok) {
      const { line, tools } = said.option;
      const found = await findings(action, mask, said.option, [Math.max(tools.window[0], line[0] - OVERHANG), Math.min(tools.window[1], line[1] + OVERHANG)]);
      if (found.length === 0) {
        verdicts.accepted++;
        return said;
      }
      verdicts.wrongYes.push(`${name(action, mask)}${found[0]!}`);
      return { ok: false, conflicts: [] };
    }
    if (!said.conflicts.some((c) => CLEARANCE.includes(c.code))) {
      verdicts.byRule++;
      return said;
    }
    const setting = settingOf(tooling, input.machine, task.groups[action.group]!, action.gaugeSide, tooling.pairs[action.pair]!, look, angles(mask));
    const [from, to] = bendLine(tooling.sheet.part, setting.seat, setting.group);
    const bare = Math.min(BARE_END, (to - from) / 10);
    const need: Interval = [from + bare, to - bare];
    const free = await freeWay(action, mask, setting, need);
    if (typeof free === 'string') {
      verdicts.refused++;
      return said;
    }
    verdicts.careful.push(`${name(action, mask)}: ${said.conflicts.map((c) => `${c.code} ${c.body} ${c.phase} ${c.by.toFixed(2)}`).join(', ')}`);
    const { stop } = chooseStop(asker, setting, free.tools);
    return { ok: true, option: stop ? { ...free, stop } : free, others: () => [] };
  };
  const known = new Map<string, Answer>();
  const [bits, needs] = [task.groups.map(bitsOf), task.groups.map((g) => g.needs ?? 0)];
  const keyOf = (action: Action, mask: number): string => `${mask} ${task.actions.indexOf(action)}`;
  // bits of second states go with their bends only where there are none
  const turns = needs.some((n) => n !== 0) ? [] : symmetriesOf(tooling.sheet, false);
  const images = (action: Action, mask: number): readonly Answer[] => turns.flatMap(({ bendTo, turned }) => {
    const to = bendTo.reduce((sum, t, b) => ((mask & (1 << b)) !== 0 ? sum | (1 << t) : sum), 0);
    const bends = task.groups[action.group]!.bends.map((b) => bendTo[b]!);
    const image = task.actions.find((a) => a.pair === action.pair && a.sideUp === action.sideUp && sameWay(a.towards, turned(action.towards)) && bends.every((b) => task.groups[a.group]!.bends.includes(b)));
    const answer = image && known.get(keyOf(image, to));
    return answer ? [answer] : [];
  });
  for (let fold = 0; fold < 2 ** bits.length; fold++) {
    const mask = bits.reduce((sum, b, k) => ((fold & (1 << k)) !== 0 ? sum | b : sum), 0);
    for (const action of task.actions) {
      if (!mayCome(bits, needs, action.group, mask)) continue;
      const said = task.answer(action, mask);
      const image = images(action, mask).find(({ ok }) => ok === said.ok);
      if (image) verdicts.turned++;
      known.set(keyOf(action, mask), image ? said : await judged(action, mask));
    }
  }
  return { answer: (action, mask) => known.get(keyOf(action, mask))!, verdicts };
};

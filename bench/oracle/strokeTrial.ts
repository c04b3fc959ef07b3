import type { Interval } from '../../src/geometry/index.js';
import { bitsOf } from '../../src/trial/groups.js';
import { endPieces, freshEars } from '../../src/trial/earStock.js';
import { type Layout, stationOf } from '../../src/trial/layout.js';
import { stepsOf } from '../../src/trial/steps.js';
import type { Option } from './leg.js';
import type { Searched, Step, Trial, TrialInput } from '../../src/trial/index.js';

type Action = Searched['task']['actions'][number];

/**
 * A record of one stroke in one fold for the proof to replay: the planner's step, on tools that stand over `tools` along the
 * bed from the bend's origin. The bends made before are stubs of which the replay only takes the angles.
 */
export const strokeTrial = ({ task, tooling }: Searched, input: TrialInput, action: Action, mask: number, option: Option, [from, to]: Interval): { readonly trial: Trial; readonly number: number } => {
  const { machine, rack, metal, quantity } = input;
  const { pair } = option.setting;
  // with ears the shortest of the rack stand at both ends, as the layout tries first
  const ends = pair.ears ? endPieces(pair.ears, freshEars(pair.punch.segments))[0]! : null;
  const station = stationOf('S1', { pair, ends, punchParts: [to - from - (ends ? ends.left + ends.right : 0)], dieParts: [to - from] }, from);
  const plan: Layout['plan'] = [{ action, option, mask }];
  const [step] = stepsOf({ stations: [station], placements: [{ station: 0, origin: 0 }], plan }, tooling, machine, task.handling);
  const { part } = tooling.sheet;
  const before = task.groups.filter((g) => (mask & bitsOf(g)) === bitsOf(g)).map(({ bends, closes }, i): Step => {
    const { bendAngle: drawn, direction, hem } = part.bends[bends[0]!]!;
    const bendAngle = hem && !closes ? hem.preBendAngle : drawn;
    return { ...step!, number: i + 1, bends: bends.map((b) => part.bends[b]!.id), bendAngle, includedAngle: 180 - bendAngle, bendAngleUnderLoad: bendAngle, sideUp: direction };
  });
  const number = before.length + 1;
  return {
    number,
    trial: {
      format: 'brakewright trial 1', verdict: 'not decided', sheet: tooling.sheet, metal: { id: metal.id, name: metal.name }, quantity, machine,
      punches: [pair.punch], dies: [pair.die], risers: rack.risers, stations: [station], steps: [...before, { ...step!, number }],
      seconds: 0, timeModel: [], computeSeconds: 0, bound: 0, proven: false, model: '', reasons: [], remedies: [],
      proof: { checked: false, passed: false, smallestClearance: null, largestMotion: null, findings: [] }, counts: {}, warnings: [], assumptions: [],
    },
  };
};


import { staysOpen } from '../sheet/index.js';
import { type Step, type Trial, listed } from '../trial/index.js';
import { bendIndex } from './record.js';

const isHem = (trial: Trial, step: Step): boolean => trial.sheet.part.bends[bendIndex(trial, step.bends[0]!)]!.kind === 'hem';

/** Does the stroke leave a gap in the hem that it closes, wider than a hem pressed flat has? */
export const leavesOpen = ({ insideRadius }: Step): boolean => staysOpen(insideRadius);

/** An offset's flange that goes down: the higher one lies still on the die's high land. */
const lowered = ({ lineBack }: Step): string => ((lineBack ?? 0) > 0 ? 'in front' : 'at the gauge');

/** What a stroke does, for headings: "bend b1", "bends b1 and b3", "close hem b4". */
export const strokeInWords = (trial: Trial, step: Step): string => {
  const { bends, kind, pass, hit } = step;
  if (hit) return `hit ${hit.number} of ${hit.count} of bend ${hit.of}`;
  const doing = kind === 'hem close' ? 'close hem' : kind === 'offset bend' ? 'offset' : isHem(trial, step) ? 'pre-bend hem' : bends.length > 1 ? 'bends' : 'bend';
  return `${pass === undefined ? '' : pass === 1 ? 'begin ' : 'finish '}${doing} ${listed(bends)}`;
};

/** Under the pictures of the sheet in the machine. */
export const pictureWords = (step: Step): { readonly before: string; readonly after: string } => {
  const { kind, stop, pass } = step;
  const placed = stop.kind !== 'none' ? 'at the stop' : pass === 2 ? 'the bend begun in the V' : 'at the scribed line';
  switch (kind) {
    case 'V bend':
      return { before: `Before: ${placed}`, after: 'After: bent and released' };
    case 'hem close':
      return { before: `Before: the fold ${stop.kind === 'none' ? 'set by eye' : 'at the fingers'}`, after: leavesOpen(step) ? 'After: closed to its gap' : 'After: pressed flat' };
    case 'offset bend':
      return { before: `Before: ${placed}`, after: 'After: offset pressed' };
  }
};

/** The line of caution on a step's sheet: what moves, and closes on what. */
export const cautionWords = (step: Step): string => {
  switch (step.kind) {
    case 'V bend':
      return 'Hands clear of the pinch and of the sheet as it swings up.';
    case 'hem close':
      return 'Hands clear of punch and hem: the flange closes down on whatever lies in it.';
    case 'offset bend':
      return `Hands clear of the pinch and of the flange ${lowered(step)}: it goes down with the punch.`;
  }
};

/** What each phase of the stroke is, for captions. */
export const phaseWords = (step: Step): Readonly<Record<'in' | 'close' | 'bend' | 'bottom' | 'open' | 'out', string>> => {
  const { kind, stop, pass } = step;
  const common = { open: 'the punch goes up', out: 'the part comes out' };
  const placed = stop.kind !== 'none' ? 'the sheet to its stop' : pass === 2 ? 'the bend begun into the V' : 'the sheet to its scribed line';
  switch (kind) {
    case 'V bend':
      return { ...common, in: placed, close: 'the punch comes down to the sheet', bend: 'the bend', bottom: 'released: it springs back' };
    case 'hem close':
      return {
        ...common, in: stop.kind === 'none' ? 'the fold set under the punch by eye' : 'the fold to the fingers', close: 'the punch comes down on the flange',
        bend: 'the flange is pressed down', bottom: leavesOpen(step) ? 'closed to its gap' : 'pressed flat',
      };
    case 'offset bend':
      return { ...common, in: placed, close: 'the punch comes down to the sheet', bend: `both bends at once, the flange ${lowered(step)} goes down`, bottom: 'pressed: the lands bear on both flanges' };
  }
};

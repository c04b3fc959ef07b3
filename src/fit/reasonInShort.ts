import type { Reason } from '../trial/index.js';
import type { FitCell } from './fitCell.js';

/** Each reason in a few words, for a cell; its own sentence stands where the cell is opened. */
const REASON_WORDS: Readonly<Record<Reason['code'], string>> = {
  clearance: 'sheet meets a tool or the machine', 'plate on plate': 'flanges meet each other', 'way in': 'does not go in', 'way out': 'does not come out',
  'no stop': 'no stop within the gauge’s reach', 'bed length': 'bed too short', 'between frames': 'too wide between the frames', force: 'force over the rating',
  'tool rating': 'force over the tools’ rating', daylight: 'too little daylight', 'shut height': 'stack too low', 'short flange': 'flange too short for the V',
  'no tool': 'no tool for it', 'no segments': 'too few tool segments', 'one ram': 'stations do not stand under one ram', radius: 'inside radius not formed',
  'die angle': 'die not acute enough', 'minimum radius': 'radius under the metal’s least', rolled: 'radius too large for a V: rolled', hem: 'hem not made', 'offset bend': 'no offset tool for it', floor: 'meets the floor',
  limit: 'computing time ended', 'no order': 'no order of bends', 'nothing to bend': 'nothing to bend', blank: 'blank does not suit', tolerance: 'tolerance not held',
  weight: 'too heavy for one person',
};

/** Why a part is not made as it stands, in a few words; null where it is made. */
export const reasonInShort = ({ verdict, reasons }: Pick<FitCell, 'verdict' | 'reasons'>): string | null =>
  verdict === 'makes' || verdict === 'not tried' || !reasons[0] ? null : REASON_WORDS[reasons[0].code];

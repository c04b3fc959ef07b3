import { strokesByEye } from '../../fit/index.js';
import type { StoredTrial } from '../../store/index.js';
import type { Field } from '../sheet/Sheet.js';
import { Verdict } from '../sheet/Verdict.js';
import { day, mm } from '../wording.js';

/** The revisions that a trial was made with. */
const madeWith = ({ machineRevision, conditionRevision, rackRevision, deductionsRevision, metalRevision }: StoredTrial): string => [
  ...(machineRevision === null ? [] : [`machine ${machineRevision}`]), ...(conditionRevision === null ? [] : [`condition ${conditionRevision}`]), ...(rackRevision === null ? [] : [`rack ${rackRevision}`]),
  ...(deductionsRevision === null ? [] : [`measured deductions ${deductionsRevision}`]), ...(metalRevision === null ? [] : [`metal ${metalRevision}`]),
].join(', ');

/** The title block of a trial's sheets. */
export const trialBlock = (stored: StoredTrial, ...more: readonly Field[]): readonly Field[] => [
  ['Part', stored.partName],
  ['Revision', String(stored.partRevision)],
  ['Metal', `${stored.metalName}, ${mm(stored.trial.sheet.part.thickness)}`],
  ['Machine', stored.machineName],
  ['Who', stored.by],
  ['When', day(stored.createdAt)],
  ['Verdict', <Verdict key="verdict" verdict={stored.verdict} byEye={strokesByEye(stored.trial)} />],
  ...(more.length > 0 ? more : [['Quantity', String(stored.quantity)] as const, ...(madeWith(stored) === '' ? [] : [['Revisions of', madeWith(stored)] as const])]),
];

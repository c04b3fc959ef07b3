import { useMemo, useState } from 'react';
import type { PartSummary } from '../../server/index.js';
import type { PartRevision, StoredPart, TrialRecord } from '../../store/index.js';
import type { Developed } from '../../sheet/index.js';
import { to } from '../place.js';
import { type Lit, NOTHING_LIT } from '../scene/sheetMesh.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault, Waiting, Warning } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { Verdict } from '../sheet/Verdict.js';
import { useAnswer } from '../useAnswer.js';
import { day, mm } from '../wording.js';
import { BlankPanel } from './BlankPanel.js';
import { CheckList } from './CheckList.js';
import { FoldView } from './FoldView.js';
import { type RuleChoice, DEFAULT_RULE, ruleQuery } from './ruleChoice.js';
import { RunTrial } from './RunTrial.js';
import { TrialsTable } from './TrialsTable.js';

interface PartAnswer extends StoredPart {
  readonly summary: PartSummary;
  readonly revisions: readonly PartRevision[];
}

const PARTS = [['Parts', to.parts]] as const;

/** A part: what was read, folded and flat, its nominal blank, and the way to try it on a machine. */
export const PartPage = ({ id }: { readonly id: string }) => {
  const [rule, setRule] = useState<RuleChoice>(DEFAULT_RULE);
  const [lit, setLit] = useState<Lit>(NOTHING_LIT);
  const here = `/api/parts/${encodeURIComponent(id)}`;
  const { value: asked, fault } = useAnswer<PartAnswer>(`${here}?${ruleQuery(rule)}`);
  const [last, setLast] = useState<PartAnswer>();
  if (asked && asked !== last) setLast(asked);
  // While another rule is reckoned with, the sheet keeps what it showed.
  const value = asked ?? last;
  const trials = useAnswer<{ readonly trials: readonly TrialRecord[] }>(`/api/trials?partId=${encodeURIComponent(id)}`);
  const sheet = useMemo((): Developed | undefined => value && { part: value.part, allowances: value.summary.bends.map(({ allowance }) => allowance) }, [value]);
  if (!value || !sheet) {
    return <Sheet title="Part" trail={PARTS} block={[['Sheet', 'Part']]}><div className="body">{fault ? <Fault sentence={fault} /> : <Waiting what="Fetching the part" />}</div></Sheet>;
  }
  const { part, summary } = value;
  
  const latest = trials.value?.trials[0];
  return (
    <Sheet
      title={value.name}
      under={<span>{mm(value.thickness)} thick, {summary.plates === 1 ? '1 plate' : `${summary.plates} plates`}, {value.bends === 1 ? '1 bend' : `${value.bends} bends`} {value.demo && <span className="tag">demo</span>}</span>}
      trail={PARTS}
      block={[
        ['Part', value.name],
        ['Revision', `${value.revision}: ${value.change}`],
        ['Metal', latest ? latest.metalName : 'not chosen yet'],
        ['From', value.source?.fileName ?? 'no file'],
        ['Who', value.by],
        ['When', day(value.createdAt)],
        ['Verdict', latest ? <Verdict verdict={latest.verdict} /> : 'not tried yet'],
        ['On', latest ? latest.machineName : '–'],
      ]}
      notes={<Cautions />}
    >
      <div className="body columns">
        <div>
          <FoldView id={id} name={value.name} sheet={sheet} lit={lit} />
          {value.refused.length > 0 && (
            <section className="section stack">
              {value.refused.map(({ index, sentence }) => <Warning key={index} word={`Solid ${index + 1} of the same file was refused.`}>{sentence}</Warning>)}
            </section>
          )}
          <CheckList part={part} summary={summary} lit={lit} light={setLit} />
        </div>
        <div>
          <RunTrial partId={id} ended={trials.again} />
          <TrialsTable trials={trials.value?.trials ?? []} fault={trials.fault} partId={id} />
          <BlankPanel here={here} summary={summary} rule={rule} change={setRule} fault={fault} lit={lit.bends} />
        </div>
      </div>
    </Sheet>
  );
};

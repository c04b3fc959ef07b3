import { useMemo, useState } from 'react';
import type { PartSummary } from '../../server/index.js';
import type { PartRevision, StoredPart, TrialRecord } from '../../store/index.js';
import type { Developed, Feature } from '../../sheet/index.js';
import { ApiFault, getFile, post, sentence } from '../ask.js';
import { FlatDesk } from '../flat/FlatDesk.js';
import { to } from '../place.js';
import { lightsOf } from '../scene/lightsOf.js';
import { type Lit, NOTHING_LIT } from '../scene/sheetMesh.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault, Waiting, Warning } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { Verdict } from '../sheet/Verdict.js';
import { useAnswer } from '../useAnswer.js';
import { day, mm } from '../wording.js';
import { BlankPanel } from './BlankPanel.js';
import { CheckList } from './CheckList.js';
import { DimensionPanel } from './DimensionPanel.js';
import { FoldView } from './FoldView.js';
import { type RuleChoice, ruleChoice, ruleQuery } from './ruleChoice.js';
import { RunTrial } from './RunTrial.js';
import { TrialsTable } from './TrialsTable.js';

interface PartAnswer extends StoredPart {
  readonly summary: PartSummary;
  readonly revisions: readonly PartRevision[];
}

const PARTS = [['Parts', to.parts]] as const;

/** A part: what was read, folded and flat, its nominal blank, and the way to try it on a machine. */
export const PartPage = ({ id }: { readonly id: string }) => {
  // another rule than the part's own, to see what it would give
  const [rule, setRule] = useState<RuleChoice>();
  const [revising, setRevising] = useState<{ readonly busy: boolean; readonly fault?: string; readonly of?: 'dimensions' }>({ busy: false });
  const [drawing, setDrawing] = useState<File>();
  const [lit, setLit] = useState<Lit>(NOTHING_LIT);
  // the faces and edges touched for a new dimension; undefined while none is being picked
  const [picked, setPicked] = useState<readonly Feature[]>();
  const here = `/api/parts/${encodeURIComponent(id)}`;
  const { value: asked, fault, again } = useAnswer<PartAnswer>(rule === undefined ? here : `${here}?${ruleQuery(rule)}`);
  const [last, setLast] = useState<PartAnswer>();
  if (asked && asked !== last) setLast(asked);
  // While another rule is reckoned with, the sheet keeps what it showed.
  const value = asked ?? last;
  const trials = useAnswer<{ readonly trials: readonly TrialRecord[] }>(`/api/trials?partId=${encodeURIComponent(id)}`);
  const sheet = useMemo((): Developed | undefined => value && { part: value.part, allowances: value.summary.bends.map(({ allowance }) => allowance) }, [value]);
  if (!value || !sheet) {
    return <Sheet title="Part" trail={PARTS} block={[['Sheet', 'Part']]}><div className="body">{fault ? <Fault sentence={fault} again={again} /> : <Waiting what="Fetching the part" />}</div></Sheet>;
  }
  const { part, summary } = value;
  const latestOne = value.revisions.at(-1)?.revision ?? value.revision;
  const send = async (change: Readonly<Record<string, unknown>>): Promise<void> => {
    try {
      await post(`${here}/revisions`, { ...change, after: latestOne });
    } catch (refusal) {
      // somebody else was quicker: what stands is shown, what was typed stays to be set again
      if (refusal instanceof ApiFault && refusal.status === 409) again();
      throw refusal;
    }
    setLit(NOTHING_LIT);
    setRule(undefined);
    again();
  };
  const revise = (change: Readonly<Record<string, unknown>>, done?: () => void): void => {
    setRevising({ busy: true });
    send(change).then(() => { setRevising({ busy: false }); done?.(); }, (refusal: unknown) => setRevising({ busy: false, fault: sentence(refusal), ...('dimensions' in change ? { of: 'dimensions' } : {}) }));
  };
  const pickNext = (feature: Feature): void => {
    const now = picked === undefined || picked.length > 1 ? [feature] : [...picked, feature];
    setPicked(now);
    setLit(lightsOf(part, now));
  };
  const openLayers = (): void => {
    getFile(`${here}/original`, value.source?.fileName ?? 'drawing.dxf').then(setDrawing, (refusal: unknown) => setRevising({ busy: false, fault: sentence(refusal) }));
  };
  const latest = trials.value?.trials[0];
  return (
    <Sheet
      title={value.name}
      under={<span>{mm(value.thickness)} thick, {summary.plates === 1 ? '1 plate' : `${summary.plates} plates`}, {value.bends === 1 ? '1 bend' : `${value.bends} bends`} {value.demo && <span className="tag">demo</span>}</span>}
      trail={PARTS}
      block={[
        ['Part', value.name],
        ['Revision', `${value.revision}: ${value.change}`],
        ['Metal', latest ? latest.metalName : (part.metal ?? 'not chosen yet')],
        ['From', value.source?.fileName ?? 'no file'],
        ['Who', value.by],
        ['When', day(value.createdAt)],
        ['Verdict', latest ? <Verdict verdict={latest.verdict} byEye={latest.summary.byEye} /> : 'not tried yet'],
        ['On', latest ? latest.machineName : '–'],
      ]}
      notes={<Cautions />}
    >
      {drawing && part.reading?.from === 'dxf' && (
        <div className="body">
          <FlatDesk
            file={drawing} told={part.reading} action="Read it so" leave={() => setDrawing(undefined)}
            take={async (told) => {
              await send({ told });
              setDrawing(undefined);
            }}
          />
        </div>
      )}
      <div className="body columns">
        {/* the check list is long: on a narrow page what it leads to stands far below */}
        <button type="button" className="only-narrow no-print" onClick={() => document.getElementById('run-title')?.scrollIntoView()}>Try it on a machine</button>
        <div>
          <FoldView id={id} name={value.name} sheet={sheet} lit={lit} pick={picked && pickNext} />
          {value.refused.length > 0 && (
            <section className="section stack">
              {value.refused.map(({ index, name, sentence }) => <Warning key={index} word={`Solid ${index + 1} of the same file${name === undefined ? '' : `, ${name},`} was refused.`}>{sentence}</Warning>)}
            </section>
          )}
          <CheckList part={part} summary={summary} revisions={value.revisions} lit={lit} light={setLit} revise={revise} busy={revising.busy} fault={revising.of === undefined ? revising.fault : undefined} layers={openLayers} />
        </div>
        <div>
          <RunTrial key={part.metal} partId={id} metal={part.metal} ended={trials.again} />
          <TrialsTable trials={trials.value?.trials ?? []} fault={trials.fault} again={trials.again} partId={id} />
          <DimensionPanel sheet={sheet} summary={summary} lit={lit} light={setLit} revise={revise} busy={revising.busy} fault={revising.of === 'dimensions' ? revising.fault : undefined} picked={picked} pick={setPicked} />
          <BlankPanel here={here} summary={summary} rule={rule ?? ruleChoice(part.rule)} change={setRule} fault={fault} again={again} lit={lit.bends} />
        </div>
      </div>
    </Sheet>
  );
};

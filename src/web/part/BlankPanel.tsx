import type { PartSummary } from '../../server/index.js';
import { Fault } from '../sheet/Fault.js';
import { KeptFigure } from '../sheet/FigureField.js';
import { mm } from '../wording.js';
import { BlankDrawing } from './BlankDrawing.js';
import { RULES, type RuleChoice, ruleQuery } from './ruleChoice.js';

const K = { what: 'K', least: 0, most: 0.6 } as const;

interface BlankPanelProps {
  /** The part's address in the API. */
  readonly here: string;
  readonly summary: PartSummary;
  readonly rule: RuleChoice;
  readonly change: (rule: RuleChoice) => void;
  readonly fault: string | undefined;
  /** Bends that are lit up. */
  readonly again: () => void;
  readonly lit: readonly string[];
}

/** The nominal blank by a chosen rule, its size, its drawing, and the files. */
export const BlankPanel = ({ here, summary: { nominalBlank }, rule, change, fault, again, lit }: BlankPanelProps) => {
  const query = ruleQuery(rule);
  return (
    <section className="section" aria-labelledby="blank-title">
      <h2 id="blank-title">Nominal blank</h2>
      <div className="blank-head">
        <label className="field"><span>Rule for the bends</span>
          <select value={rule.rule} onChange={(event) => change({ ...rule, rule: event.target.value })}>
            {RULES.map(([id, name]) => <option key={id} value={id}>{name}</option>)}
          </select>
        </label>
        {rule.rule === 'K-factor' && (
          <KeptFigure label="K" first={rule.k} range={K} change={(k) => k !== undefined && change({ ...rule, k })} />
        )}
        {nominalBlank.ok && (
          <p className="blank-size"><strong>{mm(nominalBlank.length)} × {mm(nominalBlank.width)}</strong><br />
            <span className="small soft">nominal, by rule {nominalBlank.rule}</span></p>
        )}
        {nominalBlank.ok && (
          <div className="buttons no-print">
            <a className="button" href={`${here}/blank.dxf?${query}`} download>DXF</a>
            <a className="button" href={`${here}/blank.svg?${query}`} download>SVG</a>
          </div>
        )}
      </div>
      <Fault sentence={fault ?? (nominalBlank.ok ? undefined : nominalBlank.failure.sentence)} again={again} />
      {nominalBlank.ok && <BlankDrawing blank={nominalBlank.blank} lit={lit} title={`Nominal blank by rule ${nominalBlank.rule}, seen from its A side, ${mm(nominalBlank.length)} by ${mm(nominalBlank.width)}`} />}
      <p className="small soft">Seen from the A side, mm; A or B is the side that the bend closes towards, the degrees are bend angle. The real blank depends on metal, V and punch tip: it belongs to a trial.</p>
    </section>
  );
};

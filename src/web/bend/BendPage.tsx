import { useEffect, useState } from 'react';
import type { AirBendCurve, ClosedForm, DeductionAnswer, ReliefHole, StockRange, TestStripPlan, ToolChoice } from '../../forming/index.js';
import type { Metal } from '../../metal/index.js';
import { post, sentence } from '../ask.js';
import { to } from '../place.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault, Waiting, Warning } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { useAnswer } from '../useAnswer.js';
import { asSentence, degrees, figure, kilonewtons, mm } from '../wording.js';
import { Beside } from './Beside.js';
import { CurvePicture } from './CurvePicture.js';

interface Answer {
  readonly ranked: readonly ToolChoice[];
  readonly words: readonly string[];
  readonly chosen: {
    readonly choice: ToolChoice; readonly punchName: string; readonly dieName: string; readonly dieAngle: number;
    readonly force: number | null; readonly byRule: readonly ClosedForm[];
    readonly range: Extract<StockRange, { ok: true }>['value'] | { readonly sentence: string } | null; readonly strip: TestStripPlan | null; readonly reliefHole: ReliefHole | null; readonly deduction: DeductionAnswer | null; readonly curve: AirBendCurve | null;
  } | null;
}

/** The shop's own deduction, where its table has this metal and these tools. */
const measuredRow = (own: DeductionAnswer | null): [string, string][] =>
  own === null || own.source === 'strip' ? [] : [[`By the shop’s own table: ${own.words}`, mm(own.deduction)]];

/** ms after the last key before the server is asked. */
const PAUSE = 350;
const SHOWN = 8;

/** One bend worked out at the counter from metal, thickness, length, angle and the rack's tools. */
export const BendPage = () => {
  const metals = useAnswer<{ readonly metals: readonly Metal[] }>('/api/metals');
  const [metalId, setMetal] = useState('dc01');
  const [typed, setTyped] = useState({ thickness: '2', length: '1000', bendAngle: '90', flange: '' });
  const [pair, setPair] = useState<{ readonly punchId: string; readonly dieId: string } | null>(null);
  const [answer, setAnswer] = useState<Answer>();
  const [fault, setFault] = useState<string>();
  const [turn, setTurn] = useState(0);
  useEffect(() => {
    let current = true;
    const { flange, ...rest } = typed;
    const figures = Object.fromEntries(Object.entries(rest).map(([k, v]) => [k, Number(v)]));
    const waiting = setTimeout(() => {
      post<Answer>('/api/bend', { metalId, ...figures, ...(flange.trim() === '' ? {} : { flange: Number(flange) }), ...pair }).then(
        (value) => { if (current) { setAnswer(value); setFault(undefined); } },
        (refusal: unknown) => { if (current) setFault(sentence(refusal)); },
      );
    }, PAUSE);
    return () => { current = false; clearTimeout(waiting); };
  }, [metalId, typed, pair, turn]);
  const field = (name: keyof typeof typed, label: string) => (
    <label className="field"><span>{label}</span>
      <input type="number" inputMode="decimal" min="0" step="any" value={typed[name]} onChange={(event) => { setTyped({ ...typed, [name]: event.target.value }); setPair(null); }} />
    </label>
  );
  const bend = answer?.chosen?.choice.bend ?? null;
  const metal = metals.value?.metals.find(({ id }) => id === metalId);
  return (
    <Sheet
      title="One bend" trail={[['Parts', to.parts], ['Own metals', to.metals]]} notes={<Cautions />}
      block={[['Metal', metal?.name ?? metalId], ['Thickness', `${typed.thickness} mm`], ['Bend angle', `${typed.bendAngle}°`], ['Length', `${typed.length} mm`]]}
    >
      <div className="body">
        <section className="bend-form" aria-label="What is to be bent">
          <label className="field"><span>Metal</span>
            <select value={metalId} onChange={(event) => { setMetal(event.target.value); setPair(null); }}>
              {metals.value?.metals.map(({ id, name, temper }) => <option key={id} value={id}>{name}{temper && `, ${temper}`}</option>)}
            </select>
          </label>
          {field('thickness', 'Thickness, mm')}{field('length', 'Length, mm')}{field('bendAngle', 'Bend angle, degrees')}{field('flange', 'Shortest flange, mm (may stay empty)')}
        </section>
        <Fault sentence={fault ?? metals.fault} again={() => { metals.again(); setTurn(turn + 1); }} />
        {!answer && !fault && <Waiting what="Working it out" />}
        {answer && (
          <div className="columns section">
            <section className="stack" aria-labelledby="bend-title">
              <h2 id="bend-title">{answer.chosen ? `${answer.chosen.dieName}, ${answer.chosen.punchName.toLowerCase()}` : 'No tools'}</h2>
              {answer.chosen?.curve && <CurvePicture curve={answer.chosen.curve} depth={bend?.depth ?? null} />}
              {answer.chosen?.choice.against.map((words) => <Warning key={words} word="Against it.">{words}</Warning>)}
              {bend?.warnings.map((words) => <Warning key={words} word="Beware.">{asSentence(words)}</Warning>)}
              {(pair === null || !answer.chosen) && answer.words.map((words) => <p key={words}>{words}</p>)}
            </section>
            {bend && answer.chosen && (
              <section aria-labelledby="figures-title">
                <h2 id="figures-title">Figures</h2>
                <table><tbody>
                  {([
                    ['Depth from first touch', mm(bend.depth)], ['Bend angle under load', degrees(bend.bendAngleUnderLoad)], ['Included angle under load', degrees(bend.includedAngleUnderLoad)],
                    ['Springback', degrees(bend.springback)], ['Inside radius that forms', mm(bend.insideRadius)], ['Peak force', `${kilonewtons(answer.chosen.force ?? 0)} (${figure(bend.peakForcePerLength, 0)} N/mm)`],
                    ['Flat length of the arc', mm(bend.allowance)], [`Deduction, to the ${bend.deductionConvention}`, mm(bend.deduction)], ...measuredRow(answer.chosen?.deduction ?? null), ['Smallest flange, outside', mm(bend.minFlange, 1)],
                    ['V sharp / tangent', `${figure(bend.vSharp, 1)} / ${mm(bend.vTangent, 1)}`],
                  ] as const).map(([name, value]) => <tr key={name}><td>{name}</td><td className="number">{value}</td></tr>)}
                </tbody></table>
              </section>
            )}
          </div>
        )}
        {bend && answer?.chosen && <Beside {...answer.chosen} length={Number(typed.length)} />}
        {answer && (
          <section className="section" aria-labelledby="pairs-title">
            <h2 id="pairs-title">Tools of the rack, best first (demo)</h2>
            <div className="scroll" tabIndex={0} role="group" aria-label="Tools ranked">
              <table>
                <thead><tr><th scope="col">Punch and die</th><th scope="col" className="number">V / t</th><th scope="col" className="number">Radius mm</th><th scope="col" className="number">Peak N/mm</th><th scope="col">Suits</th><th scope="col"><span className="hidden">Take it</span></th></tr></thead>
                <tbody>
                  {answer.ranked.slice(0, SHOWN).map((c) => (
                    <tr key={`${c.punch} ${c.die}`}>
                      <td>{c.punch}, {c.die}</td><td className="number">{figure(c.vOverThickness, 1)}</td>
                      <td className="number">{c.bend ? figure(c.bend.insideRadius, 2) : '–'}</td><td className="number">{c.bend ? figure(c.bend.peakForcePerLength, 0) : '–'}</td>
                      <td>{c.suits ? '✓ yes' : `✕ ${c.against.join(' ')}`}</td>
                      <td><button type="button" onClick={() => setPair({ punchId: c.punch, dieId: c.die })} aria-label={`Work out ${c.punch} in ${c.die}`}>Work out</button></td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          </section>
        )}
      </div>
    </Sheet>
  );
};

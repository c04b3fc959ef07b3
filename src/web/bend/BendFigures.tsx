import type { DeductionAnswer } from '../../forming/index.js';
import { Warning } from '../sheet/Fault.js';
import { asSentence, degrees, figure, kilonewtons, mm } from '../wording.js';
import { CurvePicture } from './CurvePicture.js';
import type { BendAnswer } from './useBend.js';

/** The shop's own deduction, where its table has this metal and these tools. */
const measuredRow = (own: DeductionAnswer | null): [string, string][] =>
  own === null || own.source === 'strip' ? [] : [[`By the shop’s own table: ${own.words}`, mm(own.deduction)]];

interface BendFiguresProps {
  readonly answer: BendAnswer;
  /** The first of the rack's pairs: why it is the first is told. */
  readonly best: boolean;
  /** Ids of the tools that are marked demo. */
  readonly invented: ReadonlySet<string>;
}

/** The pair that is worked out: its curve, what speaks against it, its figures. */
export const BendFigures = ({ answer: { chosen, words }, best, invented }: BendFiguresProps) => {
  const bend = chosen?.choice.bend ?? null;
  return (
    <div className="columns section">
      <section className="stack" aria-labelledby="bend-title">
        <h2 id="bend-title">{chosen ? `${chosen.dieName}, ${chosen.punchName.toLowerCase()}` : 'No tools'}{chosen && (invented.has(chosen.choice.punch) || invented.has(chosen.choice.die)) && <> <span className="tag">demo</span></>}</h2>
        {chosen?.curve && <CurvePicture curve={chosen.curve} depth={bend?.depth ?? null} />}
        {chosen?.choice.against.map((sentence) => <Warning key={sentence} word="Against it.">{sentence}</Warning>)}
        {bend?.warnings.map((sentence) => <Warning key={sentence} word="Beware.">{asSentence(sentence)}</Warning>)}
        {(best || !chosen) && words.map((sentence) => <p key={sentence}>{sentence}</p>)}
      </section>
      {bend && chosen && (
        <section aria-labelledby="figures-title">
          <h2 id="figures-title">Figures</h2>
          <table><tbody>
            {([
              ['Depth from first touch', mm(bend.depth)], ['Bend angle under load', degrees(bend.bendAngleUnderLoad)], ['Included angle under load', degrees(bend.includedAngleUnderLoad)],
              ['Springback', degrees(bend.springback)], ['Inside radius that forms', mm(bend.insideRadius)], ['Peak force', `${kilonewtons(chosen.force ?? 0)} (${figure(bend.peakForcePerLength, 0)} N/mm)`],
              ['Flat length of the arc', mm(bend.allowance)], [`Deduction, to the ${bend.deductionConvention}`, mm(bend.deduction)], ...measuredRow(chosen.deduction), ['Smallest flange, outside', mm(bend.minFlange, 1)],
              ['V sharp / tangent', `${figure(bend.vSharp, 1)} / ${mm(bend.vTangent, 1)}`],
            ] as const).map(([name, value]) => <tr key={name}><td>{name}</td><td className="number">{value}</td></tr>)}
          </tbody></table>
        </section>
      )}
    </div>
  );
};

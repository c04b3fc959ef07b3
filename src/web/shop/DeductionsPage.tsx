import { useState } from 'react';
import { spreadOf } from '../../forming/index.js';
import type { ShopRevision } from '../../store/index.js';
import { post } from '../ask.js';
import { nameOnRecord } from '../nameOnRecord.js';
import { to } from '../place.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { useAnswer } from '../useAnswer.js';
import { degrees, figure } from '../wording.js';
import { HandIn } from './HandIn.js';
import { Revisions } from './Revisions.js';
import type { MeasuredAnswer } from './deductions.js';

/** The shop's own measured deductions: they override the calculation in every trial. */
export const DeductionsPage = () => {
  const [shown, setShown] = useState<number>();
  const { value, fault, again } = useAnswer<MeasuredAnswer>(`/api/deductions${shown === undefined ? '' : `?revision=${shown}`}`);
  const takeIn = (mode: 'add' | 'replace') => async (csv: string): Promise<string> => {
    const kept = await post<ShopRevision>('/api/deductions', { csv, mode });
    setShown(undefined);
    again();
    return `${kept.change}: kept as revision ${kept.revision}.`;
  };
  return (
    <Sheet
      title="Measured deductions" trail={[['Floor', to.floor], ['Racks', to.racks], ['Own metals', to.metals]]}
      under={<span className="soft">What test strips told in this shop. Trials take a row in place of the calculation where metal, thickness, V and tip are the same.</span>}
      block={[['Sheet', 'Measured deductions'], ['Rows', value ? String(value.rows.length) : '–'], ['Revision', value?.revision ? String(value.revision) : 'none yet'], ['Who', nameOnRecord() || 'local'], ['What is kept', 'every revision']]}
    >
      <div className="body">
        <Fault sentence={fault} again={again} />
        {!value && !fault && <Waiting what="Fetching the table" />}
        {value?.rows.length === 0 && <p>Nothing is measured yet. Write a test strip down at a trial&rsquo;s pieces, or hand a table in.</p>}
        {value && value.rows.length > 0 && (
          <div className="scroll section" tabIndex={0} role="group" aria-label="Measured deductions">
            <table>
              <thead><tr><th scope="col">Metal</th><th scope="col" className="number">Thickness mm</th><th scope="col" className="number">V mm</th><th scope="col">V between</th><th scope="col" className="number">Tip mm</th><th scope="col" className="number">Bend angle</th><th scope="col" className="number">Deduction mm</th><th scope="col" className="number">± mm</th><th scope="col" className="number">Pieces</th><th scope="col" className="number">Fitted K</th><th scope="col">Note</th></tr></thead>
              <tbody>{value.tools.flatMap(({ rows, k }, g) => rows.map((r, i) => (
                <tr key={`${g} ${i}`}>
                  <td>{r.metal}</td><td className="number">{figure(r.thickness, 2)}</td><td className="number">{figure(r.v, 1)}</td><td>{r.vConvention === 'sharp' ? 'sharp corners' : 'tangent points'}</td>
                  <td className="number">{figure(r.tipRadius, 2)}</td><td className="number">{degrees(r.bendAngle)}</td><td className="number">{figure(r.deduction, 2)}</td><td className="number">{spreadOf(r) === null ? 'not known' : figure(r.spread, 2)}</td><td className="number">{r.pieces}</td>
                  <td className="number">{i > 0 ? '' : k === null ? 'not known' : `${figure(k.k, 3)} (${figure(k.min, 3)} to ${figure(k.max, 3)})`}</td><td>{r.note}</td>
                </tr>
              )))}</tbody>
            </table>
          </div>
        )}
        <div className="buttons section no-print">
          <HandIn label="Add rows from CSV" accept=".csv" take={takeIn('add')} />
          <HandIn label="Replace the table by CSV" accept=".csv" take={takeIn('replace')} />
          <a className="button" href="/api/deductions.csv" download>Save the table as CSV</a>
        </div>
        {value && value.revisions.length > 0 && <Revisions revisions={value.revisions} shown={value.revision ?? 0} show={setShown} />}
      </div>
    </Sheet>
  );
};

import { useState, type FormEvent } from 'react';
import type { FitSummary, FitView } from '../../server/index.js';
import { listed } from '../../trial/index.js';
import { post, sentence } from '../ask.js';
import { to, useGo } from '../place.js';
import { Fault } from '../sheet/Fault.js';

/** s that may be asked for a cell (docs/api.md). */
const MOST = 600;
const TIMES = [1, 3, 10];

const cells = (n: number): string => (n === 1 ? '1 cell' : `${n} cells`);

/** Parts named as far as they are few. */
const NAMED = 8;

type Asked = Pick<FitView, 'id' | 'cells' | 'seconds' | 'state' | 'parts' | 'machines'>;
type Cell = FitView['cells'][number][number];

/** The parts of these cells, each with its machines: ' (a on x and y; b on each of the 5 machines)'; '' where they are many. */
const named = ({ parts, machines, cells: rows }: Asked, of: (cell: Cell) => boolean): string => {
  const found = rows.map((row, p) => ({ part: parts[p]!.name, on: row.flatMap((cell, c) => (of(cell) ? [machines[c]!.name] : [])) })).filter(({ on }) => on.length > 0);
  const where = (on: readonly string[]): string => (on.length === machines.length && on.length > 1 ? `each of the ${on.length} machines` : listed(on));
  return found.length > NAMED ? '' : ` (${found.map(({ part, on }) => `${part} on ${where(on)}`).join('; ')})`;
};

const verdictOf = (cell: Cell): string => cell?.verdict ?? 'not tried';

/** What of an ended fit is not answered, and the way to try it again with more time; nothing where all is. */
export const TryAgain = ({ fit }: { readonly fit: Asked }) => {
  const go = useGo();
  const of = (verdict: string): number => fit.cells.flat().filter((cell) => verdictOf(cell) === verdict).length;
  const [undecided, untried] = [of('not decided'), of('not tried')];
  const cut = fit.cells.flat().filter((cell) => cell?.remediesCut).length;
  const all = undecided + untried + cut;
  const choices = [...new Set([...TIMES.map((k) => Math.min(MOST, k * fit.seconds)), MOST])].filter((s) => untried > 0 || s > fit.seconds);
  const [chosen, choose] = useState<number>();
  const [fault, setFault] = useState<string>();
  const [asking, setAsking] = useState(false);
  if (all === 0) return null;
  const seconds = chosen ?? choices.find((s) => undecided + cut === 0 || s > fit.seconds) ?? choices[0];
  const ask = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setAsking(true);
    setFault(undefined);
    try {
      go(to.fit((await post<FitSummary>(`/api/fits/${encodeURIComponent(fit.id)}/again`, { seconds })).id));
    } catch (refusal) {
      setFault(sentence(refusal));
    } finally {
      setAsking(false);
    }
  };
  return (
    <form className="try-again no-print" onSubmit={(event) => void ask(event)}>
      <p>
        {undecided > 0 && <><strong>{cells(undecided)} not decided</strong>{named(fit, (cell) => verdictOf(cell) === 'not decided')}: within {fit.seconds} s of computing neither a way to make the part was found nor shown that there is none. That is not a “no”. </>}
        {untried > 0 && <><strong>{cells(untried)} not tried:</strong> it was stopped before their turn came. </>}
        {cut > 0 && <><strong>{cells(cut)} with what may help not settled</strong>{named(fit, (cell) => cell?.remediesCut === true)}: it is not made as it stands, but of some changes it was not found out in time whether they help. </>}
        What is decided stays as it is.
      </p>
      {seconds === undefined ? <p>That was the longest that may be asked for.</p> : (
        <div className="buttons">
          <label className="field"><span>Computing time for each cell</span>
            <select value={seconds} onChange={(event) => choose(Number(event.target.value))}>{choices.map((s) => <option key={s} value={s}>{s} s</option>)}</select>
          </label>
          <button type="submit" disabled={asking}>Try {all === 1 ? 'it' : 'these'} again</button>
        </div>
      )}
      <Fault sentence={fault} />
    </form>
  );
};

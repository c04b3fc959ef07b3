import type { KeptCell } from '../../server/index.js';
import { figure, VERDICT_SIGNS } from '../wording.js';

/** What stands under the word: how much of which limit is used, or the first reason in a word. */
const tight = ({ verdict, margins, reasons }: KeptCell): string => {
  const [first] = margins;
  if (verdict === 'makes') return first ? `${first.kind} ${figure(first.share * 100, 0)} %` : 'nothing to bend';
  return reasons[0]?.code ?? '';
};

/** One cell: sign, word, the tightest margin or the reason; pressed, it shows all of itself. */
export const FitCellView = ({ cell, label, open, choose }: { readonly cell: KeptCell | null; readonly label: string; readonly open: boolean; readonly choose: () => void }) =>
  cell === null ? <span className="soft" aria-label={`${label}: not computed yet`}>…</span> : (
    <button type="button" className={`cell ${cell.verdict === 'makes' ? '' : 'no'}`} aria-pressed={open} aria-label={`${label}: ${cell.verdict}, ${tight(cell)}`} onClick={choose}>
      <span className="cell-word"><span className="sign" aria-hidden="true">{VERDICT_SIGNS[cell.verdict]}</span> {cell.verdict === 'makes with remedy' ? 'with remedy' : cell.verdict === 'does not make' ? 'no' : cell.verdict}</span>
      <span className="cell-more">{tight(cell)}</span>
      {cell.verdict === 'makes' && cell.partsAnHour !== null && <span className="cell-more">{figure(cell.partsAnHour, 0)} an hour</span>}
    </button>
  );

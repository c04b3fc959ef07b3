import { VERDICT_SIGNS, changeSigns } from '../../fit/index.js';
import type { KeptCell } from '../../server/index.js';
import { figure } from '../wording.js';

/** Force is limited in all and by the length: which of the two. */
const limitOf = ({ kind, name }: KeptCell['margins'][number]): string => (kind === 'force' && name.startsWith('force per length') ? 'force per length' : kind);

/** Per cent, never rounded up to all of it. */
const shareOf = (share: number): string => `${share < 0.99 ? figure(share * 100, 0) : figure(Math.floor(share * 1000) / 10, 1)} %`;

const anHour = (parts: number): string => `${figure(parts, 0)} parts an hour`;

/** What stands under the word: how much of which limit is used, or why not, and what would change it. */
const under = ({ verdict, margins, inShort, changeShort, partsAnHour, slowedBy, remedies }: KeptCell): readonly string[] => {
  const [tight] = margins;
  if (verdict === 'makes') {
    return [tight ? tight.share >= 0.9995 ? `${limitOf(tight)} all used` : `${limitOf(tight)} ${shareOf(tight.share)} used` : 'nothing to bend', ...(partsAnHour === null ? [] : [anHour(partsAnHour)]), ...(slowedBy ? [`${slowedBy.what} ${figure(slowedBy.seconds, 0)} s a part`] : [])];
  }
  const change = verdict === 'makes with remedy' ? remedies.find(({ confirmed }) => confirmed) : undefined;
  const joined = change?.items?.some(({ kind }) => kind === 'split') === true ? ' without joining' : '';
  return [inShort, changeShort, change?.partsAnHour === undefined ? null : `${anHour(change.partsAnHour)}${joined}`].filter((words) => words !== null);
};

/** One cell: sign, word, the tightest margin or the reason and remedy; pressed, it shows all of itself. */
export const FitCellView = ({ cell, label, open, choose }: { readonly cell: KeptCell | null; readonly label: string; readonly open: boolean; readonly choose: () => void }) => {
  if (cell === null) return <span className="soft" role="img" aria-label={`${label}: not computed yet`}>…</span>;
  const changes = changeSigns(cell);
  const signs = changes.length > 0 ? changes : [{ sign: VERDICT_SIGNS[cell.verdict], word: cell.verdict }];
  return (
    <button type="button" className={`cell ${cell.verdict === 'does not make' ? 'no' : ''}`} aria-pressed={open} onClick={choose}>
      <span className="hidden">{label}: </span>
      {signs.map(({ sign, word }) => <span key={word} className="cell-word"><span className="sign" aria-hidden="true">{sign}</span> {word}</span>)}
      {under(cell).map((words) => <span key={words} className="cell-more">{words}</span>)}
    </button>
  );
};

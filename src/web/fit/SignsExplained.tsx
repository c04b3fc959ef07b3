import { CHANGE_SIGNS, VERDICT_SIGNS, changeSigns } from '../../fit/index.js';
import type { FitView } from '../../server/index.js';

const MEANINGS = {
  makes: 'makes as it stands, with the limit that is used furthest and, where one thing beside bending takes a third of the time or more, what it is',
  'does not make': 'does not make; under the reason, whether nothing looked at helps, only a line scribed by eye, or it was not looked for to the end',
  'not decided': 'not decided in the time given, which is not a no',
  'not tried': 'not tried',
} as const;

/** Words of the trade that stand in the cells, said once. */
const TERMS: readonly (readonly [term: string, meaning: string])[] = [
  ['beyond the rack', 'a tool that is not among those at hand (the rack), to be bought'],
  ['relief', 'how far a gooseneck’s neck stands back, so that a flange passes it'],
  ['daylight', 'the room between upper and lower beam with the ram up, less the tools'],
  ['b1, b2 and so on', 'the bends as they are numbered on the part’s page'],
];

/** What the signs of this board mean, only those that it has, and the words in its cells. */
export const SignsExplained = ({ cells }: Pick<FitView, 'cells'>) => {
  const all = cells.flat().filter((cell) => cell !== null);
  const changes = new Set(all.flatMap(changeSigns));
  const signs = [
    ...(Object.keys(MEANINGS) as (keyof typeof MEANINGS)[]).filter((verdict) => verdict === 'makes' || all.some((cell) => cell.verdict === verdict)).map((verdict) => [VERDICT_SIGNS[verdict], MEANINGS[verdict]] as const),
    ...Object.values(CHANGE_SIGNS).filter((sign) => changes.has(sign)).map(({ sign, word, says }) => [sign, `${word}: ${says}`] as const),
  ];
  return (
    <>
      <ul className="plain signs small soft">{signs.map(([sign, says]) => <li key={sign}><span className="sign" aria-hidden="true">{sign}</span> {says}</li>)}</ul>
      <p className="small soft">{changes.size > 0 ? 'Each change was planned again and confirmed. ' : ''}{TERMS.map(([term, says], k) => <span key={term}>{k > 0 && '; '}<i>{term}</i>: {says}</span>)}. Press a cell for its margins, reasons and remedies.</p>
    </>
  );
};

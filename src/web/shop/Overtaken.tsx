import { useEffect, useState } from 'react';
import { changeWords, mergeChanges } from '../../shop/index.js';
import { ApiFault, get, sentence } from '../ask.js';
import { Fault } from '../sheet/Fault.js';
import type { Draft } from './useDraft.js';
import type { Entry } from './useEntry.js';

/** How what was typed is brought together with what somebody else kept meanwhile. */
export interface Merge {
  /** Of the entry, as it is fetched. */
  readonly path: string;
  /** What was typed on where there was no revision yet. */
  readonly from?: unknown;
  /** What was typed, and where it lies in the entry's data; the whole of them where this is absent. */
  readonly mine: unknown;
  readonly of?: (data: unknown) => unknown;
  /** Goes on typing on the revision that stands. */
  readonly take: (draft: Draft) => void;
}

interface Standing {
  readonly revision: number;
  readonly theirs: string;
  readonly mine: string;
  readonly both: readonly { readonly place: string; readonly theirs: unknown; readonly mine: unknown }[];
  readonly data: unknown;
}

const shown = (value: unknown): string => (value === undefined ? 'taken out' : typeof value === 'object' ? 'changed' : String(value as string | number));

const standingOf = async ({ path, from, mine, of = (data) => data }: Merge, after: number): Promise<Standing> => {
  const [latest, base] = await Promise.all([get<Entry>(path), after === 0 ? undefined : get<Entry>(`${path}?revision=${after}`)]);
  const before = base === undefined ? from : of(base.data);
  const now = of(latest.data);
  const { data, both } = mergeChanges(before, now, mine);
  return { revision: latest.revision, theirs: (now === undefined ? '' : changeWords(before, now)) || latest.change, mine: before === undefined ? 'new' : changeWords(before, mine), both, data };
};

/** Shown after a refusal because somebody else was quicker: what was changed there, what here, and the way to have both. */
export const Overtaken = ({ merge, after }: { readonly merge: Merge; readonly after: number }) => {
  const [standing, setStanding] = useState<Standing | 'taken off'>();
  const [fault, setFault] = useState<string>();
  useEffect(() => {
    let shownStill = true;
    standingOf(merge, after).then((it) => shownStill && setStanding(it), (refusal: unknown) => {
      if (!shownStill) return;
      if (refusal instanceof ApiFault && refusal.status === 404) setStanding('taken off');
      else setFault(sentence(refusal));
    });
    return () => { shownStill = false; };
    // what is typed on after the refusal is brought in when it is asked for
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [merge.path, after]);
  const take = (): void => {
    standingOf(merge, after).then(({ revision, data }) => merge.take({ after: revision, data }), (refusal: unknown) => setFault(sentence(refusal)));
  };
  if (fault !== undefined) return <Fault sentence={fault} />;
  if (standing === undefined) return null;
  if (standing === 'taken off') return <p>What was typed stays here. <button type="button" className="next" onClick={() => merge.take({ after: 0, data: merge.mine })}>Bring it back with what was typed</button></p>;
  return (
    <div className="stack">
      <p>
        {/* the refusal itself tells the last change */}
        {standing.revision > after + 1 && <>Since revision {after}, up to {standing.revision}: {standing.theirs}. </>}Typed here: {standing.mine || 'nothing'}.
        {standing.both.length > 0 && <> <strong>Set in both:</strong> {standing.both.map(({ place, theirs, mine }) => `${place === '' ? 'the whole of it' : place} (there ${shown(theirs)}, here ${shown(mine)})`).join('; ')}: what was typed here would stand.</>}
      </p>
      <div className="buttons"><button type="button" className="next" onClick={take}>Put what was typed on revision {standing.revision}</button></div>
    </div>
  );
};

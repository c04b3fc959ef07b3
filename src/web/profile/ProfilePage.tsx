import { useMemo, useRef, useState, type FormEvent } from 'react';
import { DEFAULT_K } from '../../forming/index.js';
import { PROFILE_EXAMPLE, PROFILE_WORDS, blank, develop, lineProfile, partFromLine } from '../../sheet/index.js';
import type { PartRevision } from '../../store/index.js';
import { post, sentence } from '../ask.js';
import { nameOnRecord } from '../nameOnRecord.js';
import { FoldView } from '../part/FoldView.js';
import { to, useGo } from '../place.js';
import { NOTHING_LIT } from '../scene/sheetMesh.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { useTypedFields } from '../shop/useTypedFields.js';
import { mm } from '../wording.js';
import { SectionPicture } from './SectionPicture.js';

const FIRST = '40 ^90 60 v45 30  t1.5 w200';
const RULE = { name: 'K-factor', k: DEFAULT_K } as const;

/** A profile typed as one line: the part appears as it is typed, and is kept as a part like any other. */
export const ProfilePage = () => {
  const go = useGo();
  const [{ line, name }, type, forget] = useTypedFields('profile', { line: FIRST, name: '' });
  const [cursor, setCursor] = useState<number>();
  const [fault, setFault] = useState<string>();
  const [busy, setBusy] = useState(false);
  const field = useRef<HTMLInputElement>(null);
  const typed = useMemo(() => partFromLine(line, 'Profile'), [line]);
  const sheet = useMemo(() => (typed.ok ? develop(typed.value, RULE) : undefined), [typed]);
  // what was last right stays in sight while the line is half typed
  const [last, setLast] = useState(sheet);
  if (sheet && sheet !== last) setLast(sheet);
  const shown = sheet ?? last;
  const flat = useMemo(() => (shown ? blank(shown) : undefined), [shown]);
  const places = useMemo(() => {
    const read = lineProfile(line, 'Profile');
    return read.ok ? read.value.flanges : [];
  }, [line]);
  const at = cursor === undefined ? -1 : places.findIndex(([from, end]) => cursor >= from && cursor <= end);
  const keep = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setBusy(true);
    try {
      const { parts } = await post<{ readonly parts: readonly PartRevision[] }>('/api/parts', { profile: { name: name.trim() === '' ? line.trim().slice(0, 60) : name.trim(), line } });
      forget();
      go(to.part(parts[0]!.id));
    } catch (refusal) {
      setFault(sentence(refusal));
      setBusy(false);
    }
  };
  return (
    <Sheet
      title="A profile, typed"
      under={<span className="soft">Flange, bend, flange; then thickness and width.</span>}
      trail={[['Parts', to.parts]]}
      block={[
        ['Sheet', 'Profile'],
        ['Thickness', typed.ok ? mm(typed.value.thickness) : '–'],
        ['Bends', typed.ok ? String(typed.value.bends.length) : '–'],
        ['Who', nameOnRecord() || 'local'],
        ['Nominal blank', typed.ok && flat?.ok ? `${mm(flat.value.length)} × ${mm(flat.value.width)}` : '–'],
        ['Rule', `K-factor ${DEFAULT_K}`],
      ]}
      notes={<Cautions />}
    >
      <div className="body">
        <form className="profile-form" onSubmit={(event) => void keep(event)}>
          <label className="field profile-line"><span>Profile</span>
            <input
              ref={field} type="text" value={line} autoComplete="off" autoCapitalize="off" spellCheck={false} aria-describedby="line-says" aria-invalid={!typed.ok}
              onChange={(event) => { type({ line: event.target.value }); setCursor(event.target.selectionStart ?? undefined); }}
              onSelect={(event) => setCursor(event.currentTarget.selectionStart ?? undefined)}
            />
          </label>
          <label className="field"><span>Name</span><input type="text" maxLength={200} value={name} placeholder="the line itself" autoComplete="off" onChange={(event) => type({ name: event.target.value })} /></label>
          <button type="submit" className="next" disabled={!typed.ok || busy}>Keep as a part</button>
        </form>
        <div id="line-says" aria-live="polite" className="line-says">
          {typed.ok
            ? <p className="small soft">{flat?.ok === false ? flat.failure.sentence : 'Read in full.'}</p>
            : <p><button type="button" className="place" onClick={() => { field.current?.focus(); field.current?.setSelectionRange(typed.fault.from, typed.fault.to); }}>Show the place</button> {typed.fault.sentence}</p>}
        </div>
        <Fault sentence={fault} />
        {shown && (
          <div className={typed.ok ? 'columns' : 'columns stale'}>
            <FoldView name="The profile" sheet={shown} lit={at >= 0 ? { plates: [at], bends: [] } : NOTHING_LIT} />
            <div>
              <section className="section" aria-label="Section">
                <h2>Section</h2>
                <SectionPicture sheet={shown} lit={at >= 0 ? at : undefined} />
                <p className="small soft">Numbers stand on the A side of each flange. The flange under the cursor is lit.</p>
              </section>
            </div>
          </div>
        )}
        <section className="section" aria-labelledby="notation-title">
          <h2 id="notation-title">How it is written</h2>
          <p className="small soft">Along the profile: flange, bend, flange, bend, flange, then what holds for all, as in <code>{PROFILE_EXAMPLE}</code>. Spaces are free, a comma does as well as a point.</p>
          <dl className="notation">{PROFILE_WORDS.map(([written, means]) => <div key={written}><dt><code>{written}</code></dt><dd>{means}</dd></div>)}</dl>
        </section>
      </div>
    </Sheet>
  );
};

import { type FormEvent, useState } from 'react';
import type { Metal } from '../../metal/index.js';
import type { ShopRevision } from '../../store/index.js';
import { post, sentence } from '../ask.js';
import { noNumber, typedNumber } from '../pieces/pieces.js';
import { Fault } from '../sheet/Fault.js';

/** Key, label, and whether it may stay empty. */
type Field = readonly [key: string, label: string, open?: 'may stay empty'];
const TEST: readonly Field[] = [['yield', 'Yield, MPa'], ['tensile', 'Tensile strength, MPa'], ['uniformElongation', 'Elongation at greatest force Ag, percent'], ['reductionOfArea', 'Reduction of area Z, percent', 'may stay empty']];
const TOOLS: readonly Field[] = [['thickness', 'Thickness as measured, mm'], ['v', 'V opening, mm'], ['dieAngle', 'Included angle of the die, degrees'], ['shoulderRadius', 'Shoulder radius, mm'], ['tipRadius', 'Tip radius, mm']];
const BEND: readonly Field[] = [['depth', 'Depth from first touch, mm'], ['bendAngleReleased', 'Bend angle released, degrees'], ['bendAngleUnderLoad', 'Bend angle under load, degrees', 'may stay empty'], ['peakForcePerLength', 'Greatest force, N per mm of bend', 'may stay empty']];
const BENDS = ['First bend', 'Second bend'] as const;

type Typed = Readonly<Record<string, string>>;

/** The figures of some fields, or the label of the first that is none. */
const figures = (fields: readonly Field[], group: string, typed: Typed): Readonly<Record<string, number>> | string => {
  const out: Record<string, number> = {};
  for (const [key, label, open] of fields) {
    const text = typed[`${group} ${key}`] ?? '';
    if (open !== undefined && text.trim() === '') continue;
    const value = typedNumber(text);
    if (Number.isNaN(value)) return noNumber(`${group}, ${label}`, text);
    if (value <= 0) return `${group}, ${label}: "${text}" is no figure above zero.`;
    out[key] = value;
  }
  return out;
};

/** A metal of the shop's own: named, like one of the list, and what was measured. */
export const OwnMetalForm = ({ like, kept }: { readonly like: readonly Metal[]; readonly kept: () => void }) => {
  const [by, setBy] = useState<'tensile test' | 'two bends'>('tensile test');
  const [head, setHead] = useState({ name: '', like: like[0]?.id ?? '', vConvention: 'sharp' });
  const [typed, setTyped] = useState<Typed>({});
  const [fault, setFault] = useState<string>();
  const [said, setSaid] = useState<string>();
  const measured = (): object | string => {
    if (by === 'tensile test') {
      const test = figures(TEST, 'Tensile test', typed);
      return typeof test === 'string' ? test : { test };
    }
    const tools = figures(TOOLS, 'Tools', typed);
    if (typeof tools === 'string') return tools;
    const bends = BENDS.map((bend) => figures(BEND, bend, typed));
    return bends.find((bend) => typeof bend === 'string') ?? { tools: { ...tools, vConvention: head.vConvention }, bends };
  };
  const send = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setSaid(undefined);
    const what = measured();
    if (typeof what === 'string') return setFault(what);
    try {
      const revision = await post<ShopRevision>('/api/metals', { name: head.name, like: head.like, ...what });
      setFault(undefined);
      setSaid(`${revision.name}, ${revision.change}: kept as revision ${revision.revision}.`);
      kept();
    } catch (refusal) {
      setFault(sentence(refusal));
    }
  };
  const fields = (group: string, list: readonly Field[]) => (
    <ul className="piece-fields" aria-label={group}>{list.map(([key, label, open]) => (
      <li key={key}><label><span className="what">{group === 'Tensile test' ? '' : `${group}: `}{label}{open && ` (${open})`}</span><input type="text" inputMode="decimal" autoComplete="off" value={typed[`${group} ${key}`] ?? ''} onChange={(event) => setTyped({ ...typed, [`${group} ${key}`]: event.target.value })} /></label></li>
    ))}</ul>
  );
  return (
    <form className="piece-form section no-print" onSubmit={(event) => void send(event)} aria-labelledby="own-metal-title">
      <h2 id="own-metal-title">Add a metal</h2>
      <div className="piece-head">
        <label className="field"><span>Name</span><input type="text" required maxLength={60} value={head.name} onChange={(event) => setHead({ ...head, name: event.target.value })} /></label>
        <label className="field"><span>In all else like</span><select value={head.like} onChange={(event) => setHead({ ...head, like: event.target.value })}>{like.map(({ id, name, temper }) => <option key={id} value={id}>{name}{temper && `, ${temper}`}</option>)}</select></label>
        <label className="field"><span>What was measured</span><select value={by} onChange={(event) => setBy(event.target.value as typeof by)}><option>tensile test</option><option>two bends</option></select></label>
        {by === 'two bends' && <label className="field"><span>V between</span><select value={head.vConvention} onChange={(event) => setHead({ ...head, vConvention: event.target.value })}><option value="sharp">sharp corners</option><option value="tangent">tangent points</option></select></label>}
      </div>
      {by === 'tensile test' ? fields('Tensile test', TEST) : <>{fields('Tools', TOOLS)}{BENDS.map((bend) => <div key={bend}>{fields(bend, BEND)}</div>)}</>}
      <p className="small soft">{by === 'tensile test' ? 'Ag is the elongation at the greatest force, not at break.' : 'Angles alone tell little of the strength; one angle under load or one force tells it.'} A name that is there already gets another revision.</p>
      <div className="buttons"><button type="submit">Keep the metal</button>{said && <span role="status">{said}</span>}</div>
      <Fault sentence={fault} />
    </form>
  );
};

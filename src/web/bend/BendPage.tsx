import { useState } from 'react';
import type { Metal } from '../../metal/index.js';
import type { Rack } from '../../shop/index.js';
import { to } from '../place.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault } from '../sheet/Fault.js';
import { FigureField } from '../sheet/FigureField.js';
import { Sheet } from '../sheet/Sheet.js';
import { useAnswer } from '../useAnswer.js';
import { BendFigures } from './BendFigures.js';
import { BendPairs } from './BendPairs.js';
import { Beside } from './Beside.js';
import { figureTyped } from '../shop/figureTyped.js';
import { type BendQuestion, BEND_RANGES, useBend } from './useBend.js';

const START: BendQuestion = { metalId: 'dc01', thickness: '2', length: '1000', bendAngle: '90', flange: '', pair: null };

/** One bend worked out at the counter from metal, thickness, length, angle and the rack's tools. */
export const BendPage = () => {
  const metals = useAnswer<{ readonly metals: readonly Metal[] }>('/api/metals');
  const { value: tools } = useAnswer<{ readonly rack: Rack }>('/api/tools');
  const invented = new Set(tools && [...tools.rack.punches, ...tools.rack.dies].filter(({ demo }) => demo).map(({ id }) => id));
  const [question, setQuestion] = useState(START);
  const { worked, stale, unread, fault, again } = useBend(question);
  // the best pair of another bend is another one
  const type = (change: Partial<BendQuestion>): void => setQuestion({ ...question, pair: null, ...change });
  const nameOf = (metalId: string): string => metals.value?.metals.find(({ id }) => id === metalId)?.name ?? metalId;
  const field = (name: 'thickness' | 'length' | 'bendAngle' | 'flange', label: string) => (
    <FigureField label={label} text={question[name]} range={BEND_RANGES[name]} type={(text) => type({ [name]: text })} />
  );
  const answer = worked?.answer;
  // figures under what was typed since would be taken for figures of it
  const of = worked?.of ?? question;
  const [thickness, length, bendAngle] = [of.thickness, of.length, of.bendAngle].map(figureTyped);
  return (
    <Sheet
      title="One bend" trail={[['Parts', to.parts], ['Own metals', to.metals]]} notes={<Cautions />}
      block={[['Metal', nameOf(of.metalId)], ['Thickness', `${thickness} mm`], ['Bend angle', `${bendAngle}°`], ['Length', `${length} mm`]]}
    >
      <div className="body">
        <section className="bend-form" aria-label="What is to be bent">
          <label className="field"><span>Metal</span>
            <select value={question.metalId} onChange={(event) => type({ metalId: event.target.value })}>
              {metals.value?.metals.map(({ id, name, temper }) => <option key={id} value={id}>{name}{temper && `, ${temper}`}</option>)}
            </select>
          </label>
          {field('thickness', 'Thickness, mm')}{field('length', 'Length, mm')}{field('bendAngle', 'Bend angle, degrees')}{field('flange', 'Shortest flange, mm (may stay empty)')}
        </section>
        <Fault sentence={fault ?? metals.fault} again={() => { metals.again(); again(); }} />
        <div role="status" className="bend-says">
          {stale && <p>{!fault && !unread && <span className="soft">Working it out … </span>}{worked && <>The figures below are still those of {nameOf(of.metalId)}, {thickness} mm thick, {length} mm long, bent by {bendAngle}°.</>}</p>}
        </div>
        {worked && answer && (
          <div className={stale ? 'stale' : undefined} aria-busy={stale}>
            <BendFigures answer={answer} best={of.pair === null} invented={invented} />
            {answer.chosen?.choice.bend && <Beside {...answer.chosen} length={Number(length)} />}
            <BendPairs ranked={answer.ranked} invented={invented} take={(pair) => type({ pair })} />
          </div>
        )}
      </div>
    </Sheet>
  );
};

import { Fragment, useState } from 'react';
import { type BoardMachine, cheapestInShort } from '../../fit/index.js';
import { post, sentence } from '../ask.js';
import { HandoutLinks } from '../handout/HandoutLinks.js';
import { to } from '../place.js';
import { Beware } from '../sheet/Beware.js';
import { Cautions } from '../sheet/Cautions.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { day, figure } from '../wording.js';
import { CellDetail } from './CellDetail.js';
import { Breakable } from './Breakable.js';
import { CheapestLines } from './CheapestLines.js';
import { OptionLines } from './OptionLines.js';
import { FitCellView } from './FitCellView.js';
import { SignsExplained } from './SignsExplained.js';
import { mostFirst } from './mostFirst.js';
import { MachineSums } from './MachineSums.js';
import { TryAgain } from './TryAgain.js';
import { useFit } from './useFit.js';

const Head = ({ machine, makes, of }: { readonly machine: BoardMachine; readonly makes: number; readonly of: number }) => (
  <th scope="col">
    <span className="machine">{machine.name}</span>
    <span className="soft">makes {makes} of {of}</span>
    <Beware of={machine.standsStill} />
    {machine.whose !== 'ours' && <span className="tag">{machine.whose}</span>}
    {machine.whose !== 'ours' && <span className="small soft">holds {machine.tools.held} of {machine.tools.of} tools of {machine.rack}{machine.tools.others.length > 0 ? `; not ${machine.tools.others.join(', ')}` : ''}</span>}
  </th>
);

/** Rows after which the machines are named again, since the head has left the screen by then. */
const HEAD_AGAIN = 9;

/** The fit board: parts down, machines across, each cell a word, a sign and the tightest margin. */
export const FitPage = ({ id }: { readonly id: string }) => {
  const { value: fit, fault, progress, again } = useFit(id);
  const [open, setOpen] = useState<{ readonly part: number; readonly column: number }>();
  const [refused, setRefused] = useState<string>();
  if (!fit) {
    return <Sheet title="Fit" trail={[['Fit', to.fits]]} block={[['Sheet', 'Fit board']]}><div className="body">{fault ? <Fault sentence={fault} again={again} /> : <Waiting what="Fetching the board" />}</div></Sheet>;
  }
  const now = progress ?? fit;
  const under = now.endedAt === null;
  const cells = fit.parts.length * fit.machines.length;
  const chosen = open && fit.cells[open.part]?.[open.column];
  const makesAll = fit.machines.filter((_, c) => fit.cells.every((row) => row[c]?.verdict === 'makes'));
  const least = cheapestInShort(fit);
  // while it is computed columns stay where they are
  const order = under ? fit.machines.map((_, c) => c) : mostFirst(fit.sums);
  const stop = (): void => {
    post(`/api/fits/${encodeURIComponent(id)}/stop`).then(again, (refusal: unknown) => setRefused(sentence(refusal)));
  };
  return (
    <Sheet
      title={`${fit.parts.length === 1 ? '1 part' : `${fit.parts.length} parts`} on ${fit.machines.length === 1 ? '1 machine' : `${fit.machines.length} machines`}`}
      under={<span>{fit.quantity} of each, {fit.metalName}, {fit.toleranceClass ? `ISO 2768-1 class ${fit.toleranceClass}` : 'no general tolerance'}</span>}
      trail={[['Parts', to.parts], ['Fit', to.fits]]} notes={<Cautions />}
      block={[
        ['Sheet', 'Fit board'], ['Metal', fit.metalName], ['Quantity', `${fit.quantity} of each`], ['General tolerance', fit.toleranceClass ? `ISO 2768-1 class ${fit.toleranceClass}` : 'none asked'],
        ['Who', fit.by], ['When', day(fit.createdAt)], ['Makes all', fit.endedAt === null ? '–' : makesAll.map((m) => `${m.name}${m.standsStill ? ', ⚠ stands still' : ''}`).join('; ') || (fit.sums.some(({ open, no }) => open > 0 && no === 0) ? 'none yet; something is open' : 'none as it stands')],
      ]}
    >
      <div className="body">
        {under && (
          <div className="under-way no-print">
            <p role="status">{now.state === 'queued' ? 'Waiting for another fit' : `${now.done} of ${now.of} trials${now.of > cells ? `: ${cells} as the machines stand, then each option fitted` : ''}${now.fromCache > 0 ? `; ${now.fromCache} known already` : ''}`}</p>
            <progress aria-label="Trials done" value={now.of === 0 ? 0 : now.done / now.of} />
            <p className="small soft">{now.doing ?? 'Starting'} …</p>
            <button type="button" onClick={stop}>Stop</button>
          </div>
        )}
        {!under && fit.why !== null && <p>{fit.why}</p>}
        <Fault sentence={refused} />
        {under ? null : <p className="fit-answer">{fit.answer}</p>}
        {under ? null : least.map((words) => <p key={words} className="fit-least">{words}</p>)}
        {under ? null : <TryAgain fit={fit} />}
        <MachineSums fit={fit} under={under} />
        <h2>Part by part</h2>
        <SignsExplained cells={fit.cells} />
        <div className="scroll" tabIndex={0} role="group" aria-label="Fit board">
          <table className="fit-board">
            <thead><tr><th scope="col">Part</th>{order.map((c) => <Head key={fit.machines[c]!.id} machine={fit.machines[c]!} makes={fit.sums[c]!.makes} of={fit.parts.length} />)}</tr></thead>
            <tbody>
              {fit.parts.map((part, p) => (
                <Fragment key={part.id}>
                  {p > 0 && p % HEAD_AGAIN === 0 && <tr className="head-again no-print" aria-hidden="true"><td />{order.map((c) => <td key={c}>{fit.machines[c]!.name}</td>)}</tr>}
                  <tr>
                    <th scope="row"><a href={to.part(part.id)}><Breakable name={part.name} /></a><span className="small soft">{figure(part.thickness, 2)} mm, {part.bends === 1 ? '1 bend' : `${part.bends} bends`}</span></th>
                    {order.map((c) => (
                      <td key={fit.machines[c]!.id}>
                        <FitCellView cell={fit.cells[p]![c]!} label={`${part.name} on ${fit.machines[c]!.name}`} open={open?.part === p && open.column === c} choose={() => setOpen({ part: p, column: c })} />
                      </td>
                    ))}
                  </tr>
                </Fragment>
              ))}
            </tbody>
          </table>
        </div>
        {open && chosen && <CellDetail part={fit.parts[open.part]!} machine={fit.machines[open.column]!} cell={chosen} seconds={fit.seconds} />}
        <CheapestLines fit={fit} />
        <OptionLines fit={fit} />
        {!under && <HandoutLinks fit={fit} />}
      </div>
    </Sheet>
  );
};

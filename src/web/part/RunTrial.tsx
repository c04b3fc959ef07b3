import { useState, type FormEvent } from 'react';
import type { Metal } from '../../metal/index.js';
import type { Machine } from '../../shop/index.js';
import { post, sentence } from '../ask.js';
import { chosenOf } from '../chosenOf.js';
import { to, useGo } from '../place.js';
import { Fault } from '../sheet/Fault.js';
import { KeptFigure } from '../sheet/FigureField.js';
import { useAnswer } from '../useAnswer.js';
import { JobLine } from './JobLine.js';
import type { MeasuredAnswer } from '../shop/deductions.js';
import { PIECES } from '../shop/figureWithin.js';
import { useJobs } from './useJobs.js';

interface Asked {
  readonly jobs: readonly { readonly jobId: string; readonly machineId: string }[];
}

const ALL = 'all';
/** Chosen at first where they are there: of the demo floor its middle machine, and the commonest steel. */
const USUAL_MACHINE = 'general';
const USUAL_METAL = 'dc01';

/** Metal, machine and quantity, and the button that tries it. */
export const RunTrial = ({ partId, metal, ended }: { readonly partId: string; readonly metal: string | undefined; readonly ended: () => void }) => {
  const machines = useAnswer<{ readonly machines: readonly Machine[] }>('/api/machines');
  const metals = useAnswer<{ readonly metals: readonly Metal[] }>('/api/metals');
  const measured = useAnswer<MeasuredAnswer>('/api/deductions');
  const [left, setLeft] = useState(false);
  const [pickedMetal, setMetal] = useState<string>();
  const [pickedMachine, setMachine] = useState<string>();
  const [quantity, setQuantity] = useState<number | undefined>(10);
  const [fault, setFault] = useState<string>();
  const [asking, setAsking] = useState(false);
  const { jobs, follow } = useJobs(partId, ended);
  const go = useGo();
  const floor = machines.value?.machines ?? [];
  const machineId = pickedMachine === ALL ? ALL : chosenOf(floor, pickedMachine, USUAL_MACHINE) ?? ALL;
  const metalId = chosenOf(metals.value?.metals ?? [], pickedMetal, metal, USUAL_METAL) ?? '';
  const running = jobs.some((job) => job.endedAt === null);
  const nameOf = (id: string): string => floor.find((machine) => machine.id === id)?.name ?? id;
  const families = [...new Set(metals.value?.metals.map(({ family }) => family))];
  const ask = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setAsking(true);
    setFault(undefined);
    try {
      const asked = await post<Asked>('/api/trials', { partId, machineId, metalId, quantity, measured: left ? 'left out' : 'taken' });
      if (machineId === ALL) return go(to.board(partId));
      follow(asked.jobs.map(({ jobId }) => jobId));
    } catch (refusal) {
      setFault(sentence(refusal));
    } finally {
      setAsking(false);
    }
  };
  return (
    <section className="section run no-print" aria-labelledby="run-title">
      <h2 id="run-title">Try it</h2>
      <form onSubmit={(event) => void ask(event)}>
        <label className="field"><span>Machine</span>
          <select value={machineId} onChange={(event) => setMachine(event.target.value)}>
            <option value={ALL}>Every machine at once</option>
            {floor.map(({ id, name }) => <option key={id} value={id}>{name}</option>)}
          </select>
        </label>
        <label className="field"><span>Metal</span>
          <select value={metalId} onChange={(event) => setMetal(event.target.value)}>
            {families.map((family) => (
              <optgroup key={family} label={family}>
                {metals.value?.metals.filter((metal) => metal.family === family).map(({ id, name, temper }) => <option key={id} value={id}>{name}{temper && `, ${temper}`}</option>)}
              </optgroup>
            ))}
          </select>
        </label>
        <KeptFigure label="Quantity" first={quantity} range={PIECES} change={setQuantity} />
        <button type="submit" className={jobs.some((job) => job.trialId) ? '' : 'next'} disabled={asking || running || quantity === undefined || floor.length === 0 || !metals.value}>
          {running ? 'Trial under way' : 'Run the trial'}
        </button>
      </form>
      {machines.value && floor.length === 0 && <p>No machine is on the floor. <a href={to.machine('new')}>Add one</a> to try the part on.</p>}
      {(measured.value?.rows.length ?? 0) > 0 && (
        <p><label><input type="checkbox" checked={!left} onChange={(event) => setLeft(!event.target.checked)} /> Take the <a href={to.deductions}>shop&rsquo;s measured deductions</a> where they fit</label></p>
      )}
      <Fault sentence={machines.fault ?? metals.fault} again={() => { for (const answer of [machines, metals, measured]) answer.again(); }} />
      <Fault sentence={fault} />
      {jobs.map((job) => <JobLine key={job.id} job={job} machine={nameOf(job.machineId)} />)}
    </section>
  );
};

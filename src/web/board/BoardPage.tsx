import type { JobView } from '../../server/index.js';
import { type Machine, standsStill } from '../../shop/index.js';
import type { PartRevision, TrialRecord } from '../../store/index.js';
import { useJobs } from '../part/useJobs.js';
import { to } from '../place.js';
import { Beware } from '../sheet/Beware.js';
import { Cautions } from '../sheet/Cautions.js';
import { DemoTag } from '../sheet/DemoTag.js';
import { Fault, Waiting } from '../sheet/Fault.js';
import { Sheet } from '../sheet/Sheet.js';
import { Verdict } from '../sheet/Verdict.js';
import { useAnswer } from '../useAnswer.js';
import { day, figure, seconds } from '../wording.js';
import { asItStands } from './asItStands.js';
import { StopJob } from './StopJob.js';

/** The tightest margin in words: how much of which limit is used. */
const marginWords = ({ summary: { tightest } }: TrialRecord): string =>
  tightest ? `${tightest.name}: ${figure(tightest.value, 1)} of ${figure(tightest.limit, 1)} ${tightest.unit}, step ${tightest.step}` : '';

const Row = ({ machine, trial, job, stopped }: { readonly machine: Machine; readonly trial: TrialRecord | undefined; readonly job: JobView | undefined; readonly stopped: () => void }) => {
  const under = job && job.endedAt === null;
  return (
    <tr>
      <th scope="row"><span className="machine">{machine.name}</span><DemoTag of={machine} /><span className="small soft summary">{machine.summary}</span><Beware of={standsStill(machine)} /></th>
      <td>
        {under ? <span className="under-way"><span>{job.state === 'queued' ? 'waiting' : job.what}</span><progress aria-label={`Trial on ${machine.name}`} value={job.share} /></span>
          : trial ? <><Verdict verdict={trial.verdict} byEye={trial.summary.byEye} />{trial.asked && <span className="small soft summary">{trial.asked.toleranceClass === null ? 'no class asked' : `held to class ${trial.asked.toleranceClass}`}</span>}</> : <span className="soft">not tried</span>}
      </td>
      <td>{!under && trial && (trial.summary.reason ?? marginWords(trial))}{!under && trial?.summary.remedy && <><br /><span className="small">Remedy: {trial.summary.remedy}</span></>}
        {under && job.bestSeconds !== null && `best so far ${seconds(job.bestSeconds)} a part`}</td>
      <td className="number">{!under && trial && trial.verdict === 'makes' && trial.summary.steps > 0 ? figure(trial.summary.seconds, 1) : ''}</td>
      <td>{under ? <StopJob id={job.id} machine={machine.name} stopped={stopped} /> : trial && <a className="button" href={to.trial(trial.id)} aria-label={`Open the trial on ${machine.name}`}>Open</a>}</td>
    </tr>
  );
};

/** One part on every machine: a word, a sign, and the reason or the tightest margin. */
export const BoardPage = ({ partId }: { readonly partId: string }) => {
  const part = useAnswer<PartRevision>(`/api/parts/${encodeURIComponent(partId)}`);
  const machines = useAnswer<{ readonly machines: readonly Machine[] }>('/api/machines');
  const trials = useAnswer<{ readonly trials: readonly TrialRecord[] }>(`/api/trials?partId=${encodeURIComponent(partId)}`);
  const { jobs } = useJobs(partId, trials.again);
  const name = part.value?.name ?? 'Part';
  const plain = asItStands(trials.value?.trials ?? []);
  const newest = plain[0];
  const under = jobs.filter((job) => job.endedAt === null).length;
  const makes = trials.value && machines.value ? machines.value.machines.filter(({ id }) => plain.find((trial) => trial.machineId === id)?.verdict === 'makes').length : 0;
  const fault = part.fault ?? machines.fault ?? trials.fault;
  return (
    <Sheet
      title={`${name}: every machine`}
      under={under > 0 ? <span>{under === 1 ? '1 trial' : `${under} trials`} under way</span> : undefined}
      trail={[['Parts', to.parts], [name, to.part(partId)]]}
      block={[
        ['Part', name], ['Revision', String(part.value?.revision ?? '–')],
        ['Metal', newest?.metalName ?? '–'], ['Quantity', newest ? String(newest.quantity) : '–'],
        ['Who', newest?.by ?? '–'], ['When', newest ? day(newest.createdAt) : '–'],
        ['Verdict', `made by ${makes} of ${machines.value?.machines.length ?? '–'} machines`], ['Sheet', 'Board'],
      ]}
      notes={<Cautions />}
    >
      <div className="body">
        <Fault sentence={fault} again={() => { part.again(); machines.again(); trials.again(); }} />
        {!fault && (!machines.value || !trials.value) && <Waiting what="Fetching the trials" />}
        {trials.value && machines.value && (
          <>
            {plain.length === 0 && under === 0 && <p>Nothing is tried yet. <a href={to.part(partId)}>Go to the part</a> and try it on every machine at once.</p>}
            <div className="scroll" tabIndex={0} role="group" aria-label="Board of machines">
              <table className="board">
                <thead><tr><th scope="col">Machine</th><th scope="col">Verdict</th><th scope="col">Reason, or tightest margin</th><th scope="col" className="number">Seconds a part</th><th scope="col"><span className="hidden">Open</span></th></tr></thead>
                <tbody>
                  {machines.value.machines.map((machine) => (
                    <Row key={machine.id} machine={machine} stopped={trials.again}
                      trial={plain.find((trial) => trial.machineId === machine.id)}
                      job={jobs.find((job) => job.machineId === machine.id)} />
                  ))}
                </tbody>
              </table>
            </div>
            <p className="small soft">The newest trial on each machine as it stands with tools of ours is shown, whatever its metal and quantity; trials with an option fitted and with the buyer’s own are found from their fit{machines.value.machines.some(({ demo }) => demo) && '; machines marked demo are invented'}. Seconds a part are predicted, set-up shared over the quantity.</p>
          </>
        )}
      </div>
    </Sheet>
  );
};

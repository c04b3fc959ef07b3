// npm run bench -- settled [id] [seconds for the solver]: the benchmark parts of up to ten strokes, each against every order by subset dynamic programming and against a mixed-integer
// solver, on the planner's own strokes and commitments. (The same strokes as the proof engine answers them: npm run bench -- exhaustive.)
import { pathToFileURL } from 'node:url';
import { metalById } from '../src/metal/index.js';
import { demoFloor } from '../src/shop/index.js';
import { groupsOf } from '../src/trial/groups.js';
import { cpuMilliseconds } from './cpuMilliseconds.js';
import { exhaustedParts } from './exhaustive.js';
import { compare } from './oracle/agreement.js';
import { oracleRack } from './oracle/racks.js';
import { benchParts } from './parts.js';

/** Strokes up to which the oracles are asked. */
const MOST_STROKES = 10;
/** s that the mixed-integer solver gets for one model where no other limit is asked, and the planner for one part. */
const SOLVER_LIMIT = 120;
const PLAN_LIMIT = 120;

/** Prints a line for each part, or for `only` one; answers with how many did not agree. */
export const settledBench = async (print: (line: string) => void, only?: string, solverLimit = SOLVER_LIMIT): Promise<number> => {
  const metal = metalById('dc01');
  if (!metal) throw new Error('the metals have no dc01');
  let wrong = 0;
  for (const { id, part } of benchParts()) {
    if ((only !== undefined && id !== only) || groupsOf(part).length > MOST_STROKES) continue;
    // the tools and the machine on which every order is asked of the proof engine too; P13 has more strokes than that
    const asked = exhaustedParts(id)[0] ?? { rack: oracleRack('three punches'), machine: 'general' };
    const machine = demoFloor().find((m) => m.id === asked.machine)!;
    const { trial, ...said } = await compare({ part, machine, rack: asked.rack, metal, quantity: 50, limits: { seconds: PLAN_LIMIT } }, solverLimit, cpuMilliseconds);
    if (said.wrong.length > 0) wrong++;
    print(`settled, ${id} on ${machine.id}: ${trial.verdict}${trial.verdict === 'makes' ? ` in ${trial.seconds.toFixed(3)} s, ${trial.proven ? 'called best' : 'not called best'}` : ''}; ${said.searches} searches, every order ` +
      `${said.wrong.length === 0 ? 'agrees' : 'DISAGREES'}; the solver settled ${said.settled}, gave up ${said.gaveUp}; ${said.notClaimed} claim no best order`);
    for (const w of said.wrong) print(`  DISAGREES: ${w}`);
  }
  return wrong;
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) process.exitCode = (await settledBench((line) => console.log(line), process.argv[2], process.argv[3] === undefined ? undefined : Number(process.argv[3]))) > 0 ? 1 : 0;

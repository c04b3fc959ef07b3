// npm run bench -- oneLayout [ROWS [MODELS]]: P17 with the whole demo rack on each demo machine, 2,000 mm of its bed; then seeded small
// rows against every row there is and against the mixed-integer solver. Exits 1 on a disagreement or a rejected plan.
import { oneLayout } from '../src/fit/index.js';
import { metalById } from '../src/metal/index.js';
import { demoFloor, demoRack } from '../src/shop/index.js';
import { leastRow } from '../src/trial/shared/leastRow.js';
import { cpuMilliseconds } from './cpuMilliseconds.js';
import { mulberry32 } from './mulberry32.js';
import { everyRow } from './oracle/everyRow.js';
import { mixedIntegerRow } from './oracle/mixedIntegerRow.js';
import { questionOf, randomRow } from './oracle/rowProblem.js';
import { benchParts } from './parts.js';

const BED = 2000;
const SEED = 20261125;
const [rows = 500, models = 60] = process.argv.slice(2).map(Number);
// limits in processor time: a busy machine finds the same plans
const now = cpuMilliseconds;
let wrong = 0;

for (const machine of demoFloor().filter(({ length }) => length >= BED)) {
  const inputs = ['P5', 'P7', 'P8'].map((id) => ({ part: benchParts().find((b) => b.id === id)!.part, machine, rack: demoRack(), metal: metalById('dc01')!, quantity: 10, limits: { seconds: 60 } }));
  const started = cpuMilliseconds();
  const made = await oneLayout({ inputs, bed: BED }, { now });
  const seconds = ((cpuMilliseconds() - started) / 1000).toFixed(1);
  if (!made.ok) {
    console.log(`P17 on ${machine.id}: ${made.sentence} (${seconds} s of processor time)`);
    continue;
  }
  const { length, bound, proven, trials, more, counts, serves } = made.value;
  console.log(`P17 on ${machine.id}: ${length} mm of ${BED} mm, ${proven ? 'proven' : `bound ${bound} mm`}, ${seconds} s of processor time with planning and proofs, ${counts.candidates} choices and ${counts.orders} beginnings of orders`);
  for (const s of trials[0]!.stations) console.log(`  ${s.id}: ${s.punch} over ${s.die} on ${s.riser} mm: ${serves.find(({ station }) => station === s.id)!.parts.map(({ part, steps }) => `${trials[part]!.sheet.part.name}, ${steps.length} strokes`).join('; ')}`);
  trials.forEach((t, i) => {
    console.log(`  ${t.sheet.part.name}: proof ${t.proof.passed ? 'passed' : 'rejected'}, smallest clearance ${t.proof.smallestClearance?.toFixed(2)} mm, ${t.seconds.toFixed(1)} s a piece (${more[i]! >= 0 ? '+' : ''}${more[i]!.toFixed(1)})`);
    if (!t.proof.passed) wrong++;
  });
}

const random = mulberry32(SEED);
let stood = 0;
for (let i = 0; i < rows; i++) {
  const problem = randomRow(random);
  const [found, true_] = [leastRow(questionOf(problem)).best?.span ?? null, everyRow(problem)];
  const solved = i < models ? await mixedIntegerRow(problem) : undefined;
  if (true_ !== null) stood++;
  if (found === true_ && (solved === undefined || (solved === null ? found === null : found !== null && Math.abs(solved - found) < 1e-4))) continue;
  wrong++;
  console.log(`row ${i} of seed ${SEED}: ${found}, every row ${true_}, solver ${solved}`);
}
console.log(`rows (seed ${SEED}): ${rows} against every row, ${Math.min(rows, models)} of them against the solver; ${stood} can stand; ${wrong === 0 ? 'no disagreement' : `${wrong} wrong`}`);
process.exitCode = wrong > 0 ? 1 : 0;

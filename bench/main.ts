// npm run bench (bench:full with the oracles and the proof campaign): the forming times, and how long planning takes on benchmark parts (median, least and most of five, warm).
import { spawnSync } from 'node:child_process';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { metalById } from '../src/metal/index.js';
import { demoFloor, demoRack } from '../src/shop/index.js';
import { planTrial } from '../src/trial/index.js';
import { feTable } from './feTable.js';
import { formingBench } from './forming.js';
import { formingSweep, sweepInWords } from './formingSweep.js';
import { agreementBench } from './agreement.js';
import { campaign } from './campaign.js';
import { fitScaleBench } from './fitScale.js';
import { exhaustiveBench } from './exhaustive.js';
import { benchParts } from './parts.js';
import { prismBench } from './prism.js';
import { refusalsBench } from './refusals.js';
import { settledBench } from './settled.js';
import { timesBench } from './times.js';

const ROUNDS = 5;

console.log(`${cpus().length} cores, ${cpus()[0]?.model ?? 'unknown'}`);
formingBench((line) => console.log(line));
feTable((line) => console.log(line));
const machine = demoFloor().find((m) => m.id === 'general');
const metal = metalById('dc01');
if (!machine || !metal) throw new Error('the demo floor has no general machine, or the metals no dc01');
for (const { id, part } of benchParts().filter((b) => ['P1', 'P2', 'P3', 'P5', 'P7'].includes(b.id))) {
  const times = Array.from({ length: ROUNDS + 1 }, () => {
    const started = performance.now();
    const { verdict } = planTrial({ part, machine, rack: demoRack(), metal, quantity: 50 }, { now: () => performance.now() });
    return { verdict, ms: performance.now() - started };
  }).slice(1).sort((a, b) => a.ms - b.ms);
  console.log(`plan ${id}: ${times[0]!.verdict}, median ${times[Math.floor(ROUNDS / 2)]!.ms.toFixed(0)} ms, least ${times[0]!.ms.toFixed(0)}, most ${times[ROUNDS - 1]!.ms.toFixed(0)}`);
}
const print = (line: string): void => console.log(line);
await prismBench(print);
if (process.argv.includes('--full')) {
  await fitScaleBench(100, 10, 5, print);
  timesBench(print);
  const sweep = formingSweep(3000, 20261125);
  print(sweepInWords(sweep));
  sweep.breaks.forEach(print);
  // hours: agreement, refusals and campaign keep what they have done and go on from there
  const disagreements = sweep.breaks.length + (await settledBench(print)) + (await exhaustiveBench(20, print)) + (await agreementBench(300, print)) + (await refusalsBench(500, print)) + (await campaign(2000, print));
  process.exitCode = disagreements > 0 ? 1 : 0;
  // several parts on one layout; intake: round trips, damaged files, reading times
  for (const [name, ...words] of [['oneLayout'], ['stepRoundTrip', '1000'], ['dxf', '1000'], ['fuzzStep', '5000'], ['fuzzDxf', '5000'], ['step']] as const) {
    const { status } = spawnSync(process.execPath, [fileURLToPath(new URL(`./${name}.js`, import.meta.url)), ...words], { stdio: 'inherit' });
    if (status !== 0) process.exitCode = 1;
  }
}

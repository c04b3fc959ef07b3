// npm run bench -- fuzzStep 5000 [first seed] [seconds]: damaged and hostile STEP files, read as the program reads them (in a worker with its
// limits of time and memory); each must end in a part or in a sentence inside 10 s of computing and 1 GiB. `seconds` by the clock is what each
// is given: 9 as the program gives small files; more where the machine is busy with other work.
import { readStep, closeStepReader } from '../src/intake/index.js';
import { develop } from '../src/sheet/index.js';
import { damagedStep } from './damagedStep.js';
import { soundSteps } from './stepSources.js';

const count = Number(process.argv[2] ?? 5000);
const first = Number(process.argv[3] ?? 1);
const allowed = Number(process.argv[4] ?? 9);
/** s of computing to the sentence, all threads together. */
const MOST = 10;
const computing = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};
const sound = await soundSteps();
const ends: Record<string, number> = {};
let [slowest, bad, after, longest] = [{ seed: 0, seconds: 0 }, 0, 0, 0];
for (let seed = first; seed < first + count; seed++) {
  const bytes = damagedStep(seed, sound);
  const [began, clock] = [computing(), performance.now()];
  const complain = (what: string): void => {
    bad += 1;
    console.log(`seed ${seed}: ${what}`);
  };
  try {
    const { parts, refused } = await readStep(bytes, `damaged ${seed}.step`, { seconds: allowed });
    const seconds = computing() - began;
    longest = Math.max(longest, (performance.now() - clock) / 1000);
    // the first file of a process waits for the kernel too
    if (seed > first && seconds > slowest.seconds) slowest = { seed, seconds };
    const end = refused[0]?.code ?? (parts.length > 0 ? 'read' : 'nothing');
    ends[end] = (ends[end] ?? 0) + 1;
    for (const { part } of parts) develop(part, { name: 'K-factor', k: 0.44 });
    if (parts.length + refused.length === 0) complain('neither a part nor a sentence');
    for (const { sentence } of refused) if (!/^\S.{10,}\.$/s.test(sentence)) complain(`no sentence: ${sentence}`);
    if (seconds > MOST) complain(`${seconds.toFixed(1)} s: ${refused[0]?.sentence ?? 'read'}`);
  } catch (fault) {
    complain(`thrown: ${fault instanceof Error ? (fault.stack ?? fault.message).split('\n').slice(0, 3).join(' ') : String(fault)}`);
  }
  after = Math.max(after, process.memoryUsage.rss());
  if ((seed - first + 1) % 100 === 0) console.log(`${seed - first + 1}: ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MiB at most, slowest seed ${slowest.seed} ${slowest.seconds.toFixed(2)} s, ${bad} bad`);
}
await closeStepReader();
console.log(`${count} STEP files from seed ${first}, made from ${sound.length} sound ones: ${Object.entries(ends).sort((a, b) => b[1] - a[1]).map(([end, n]) => `${n} ${end}`).join(', ')}`);
console.log(`${bad} without a sentence in time; slowest seed ${slowest.seed}, ${slowest.seconds.toFixed(2)} s of computing (${longest.toFixed(1)} s by the clock at most); most memory ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MiB, after a reading ${(after / 2 ** 20).toFixed(0)} MiB`);
process.exitCode = bad > 0 ? 1 : 0;

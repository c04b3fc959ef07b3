// npm run bench -- fuzzDxf 10000 [first seed]: damaged and hostile drawings; each must end in a part or in a sentence inside 10 s and 1 GiB.
import { readDamagedDxf } from './damagedDxf.js';

const count = Number(process.argv[2] ?? 10_000);
const first = Number(process.argv[3] ?? 1);
const ends: Record<string, number> = {};
let [slowest, bad] = [{ seed: 0, seconds: 0 }, 0];
for (let seed = first; seed < first + count; seed++) {
  try {
    const { end, sentence, seconds } = readDamagedDxf(seed, () => performance.now());
    ends[end] = (ends[end] ?? 0) + 1;
    if (seconds > slowest.seconds) slowest = { seed, seconds };
    const silent = end !== 'read' && !/^[A-Z].{8,}\.$/s.test(sentence);
    if (silent || seconds > 10) console.log(`seed ${seed}: ${end}, ${seconds.toFixed(1)} s: ${sentence}`);
    if (silent || seconds > 10) bad += 1;
  } catch (fault) {
    bad += 1;
    console.log(`seed ${seed}: thrown: ${fault instanceof Error ? (fault.stack ?? fault.message).split('\n').slice(0, 3).join(' ') : String(fault)}`);
  }
}
console.log(`${count} drawings: ${Object.entries(ends).sort((a, b) => b[1] - a[1]).map(([end, n]) => `${n} ${end}`).join(', ')}`);
console.log(`${bad} without a sentence in time; slowest seed ${slowest.seed}, ${slowest.seconds.toFixed(2)} s; most memory ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MiB`);
process.exitCode = bad > 0 ? 1 : 0;

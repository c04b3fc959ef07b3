import { killRounds, type Death } from '../test/kill-rounds.js';

/**
 * Kills a program that writes to the store, many times in three ways, and tells what was lost of what it had acknowledged.
 * Arguments: rounds of each kind, seed.
 */
const rounds = Number(process.argv[2] ?? 100);
const seed = Number(process.argv[3] ?? 1);
let lost = 0;
for (const death of ['clock', 'operation', 'power cut'] as const satisfies readonly Death[]) {
  const began = performance.now();
  const report = await killRounds(death, rounds, seed);
  lost += report.losses.length;
  const seconds = ((performance.now() - began) / 1000).toFixed(0);
  console.log(`${death}: ${report.rounds} rounds from seed ${seed} in ${seconds} s, ${report.acknowledged} changes acknowledged, ${report.losses.length} lost`);
  for (const loss of report.losses) console.log(`  ${loss}`);
}
process.exitCode = lost > 0 ? 1 : 0;

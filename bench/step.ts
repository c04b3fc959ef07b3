// npm run bench -- step: reading a STEP file to a Part beside the baseline (bench/stepBaseline.ts) in one run, warm, turn by turn in
// one process; then (not with --warm) the largest part cold, from the start of a process to the printed part.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { basename, resolve } from 'node:path';
import { readSolids } from '../src/intake/step/readSolids.js';
import { baselineKernel, visitStep } from './stepBaseline.js';

const ROUNDS = 7;
const folder = resolve('../shared/parts');
const names = [
  'Main-Brace_V1', 'Main-CPU_Duct_V1', 'Main-Cage_V1', 'Major-Cage_1_V1', 'Major-Flat-Cage_1_V2.1', 'Main-Bottom_Tray_V1',
  'Major-Bottom_V1', 'Major-Major_Bottom_V2.1b_Flat_Pattern', 'Main-Internal_V1-B1',
].map((name) => resolve(folder, 'system76__thelio', `${name}.step`));
const files = [...names, resolve(folder, 'Creality3DPrinting__Ender-3/Sheetmetal_enclosure_bottom.step')];
const present = files.filter((file) => existsSync(file));
console.log(`${cpus().length} cores, ${cpus()[0]?.model ?? 'unknown'}; ${present.length} of ${files.length} files found`);

/** Processor seconds of this process, its helpers' threads included: the machine may be busy with other work. */
const seconds = (run: () => void): number => {
  const began = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(began);
  return (user + system) / 1e6;
};
const middle = (all: number[]): number => all.sort((a, b) => a - b)[Math.floor(all.length / 2)]!;
const spread = (all: readonly number[]): string => `(${Math.min(...all).toFixed(3)} to ${Math.max(...all).toFixed(3)})`;

const kernel = await baselineKernel();
for (const file of present) {
  const bytes = readFileSync(file);
  let faces = 0;
  const [base, own]: [number[], number[]] = [[], []];
  for (let round = 0; round <= ROUNDS; round++) {
    const one = seconds(() => {
      faces = visitStep(kernel, bytes).faces;
    });
    const two = seconds(() => {
      const { parts, refused } = readSolids(kernel, bytes, { fileName: basename(file), text: bytes.toString('latin1') });
      if (parts.length !== 1) throw new Error(refused[0]?.sentence);
    });
    if (round === 0) continue;
    base.push(one);
    own.push(two);
  }
  const [a, b] = [middle(base), middle(own)];
  console.log(`${basename(file)}: ${faces} faces, baseline ${a.toFixed(3)} s ${spread(base)}, reader ${b.toFixed(3)} s ${spread(own)}, ratio ${(b / a).toFixed(2)}`);
}
const largest = present.find((file) => file.includes('Main-Internal'));
const cold = largest !== undefined && !process.argv.includes('--warm') ? [largest, largest, largest] : [];
for (const file of cold) {
  const began = performance.now();
  const { status } = spawnSync(process.execPath, ['brakewright', 'part', file], { stdio: ['ignore', 'ignore', 'inherit'] });
  console.log(`${basename(file)} cold through the command line: ${((performance.now() - began) / 1000).toFixed(2)} s, exit code ${status}`);
}

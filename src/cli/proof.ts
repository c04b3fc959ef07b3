import type { Command } from 'commander';
import { proveTrial } from '../proof/index.js';
import type { ProofSummary } from '../trial/index.js';
import { commandWith } from './commandLine.js';
import { Fault } from './fault.js';
import { type OutputOptions, JSON_UNITS, answer } from './print.js';
import { readTrial } from './readTrial.js';
import { show } from './units.js';

const inWords = (proof: ProofSummary, units: 'mm' | 'in' | undefined): string => {
  const { length } = show(units);
  const where = proof.where === undefined ? '' : ` (${proof.where})`;
  return [
    proof.passed ? 'The independent check confirms the plan.' : 'The independent check does not confirm the plan.',
    ...(proof.smallestClearance === null ? [] : [`Smallest clearance: ${length(proof.smallestClearance)}${where}.`]),
    ...(proof.largestMotion === null ? [] : [`Between two checked poses no point moved further than ${length(proof.largestMotion)}.`]),
    ...proof.findings,
  ].join('\n');
};

/** `proof`: replays a saved trial in the independent engine. Exit 0 confirmed, 3 not confirmed. */
export const proofCommand = (): Command =>
  commandWith('proof', 'replay a finished trial (trial --json) in the independent engine')
    .argument('<file>', "a trial as 'trial --json' prints it")
    .action(async (file: string, options: OutputOptions) => {
      const trial = await readTrial(file);
      if (trial.steps.length === 0) throw new Fault(`${file}: the trial has no steps, so nothing to prove.`);
      const proof = await proveTrial(trial);
      if (!proof.passed) process.exitCode = 3;
      await answer({ units: JSON_UNITS, ...proof }, () => inWords(proof, options.units), options);
    });

import { expect, test } from 'vitest';
import { killRounds, type Death } from '../../test/kill-rounds.js';

/** A few rounds each; bench/kill.ts runs many. */
const rounds = 3;
const seed = Number(process.env['KILL_SEED'] ?? Date.now() % 100_000);

test.each<Death>(['clock', 'operation', 'power cut'])(`nothing acknowledged is lost by death of kind: %s (KILL_SEED=${seed})`, async (death) => {
  const report = await killRounds(death, rounds, seed);
  expect(report.losses).toEqual([]);
  expect(report.acknowledged).toBeGreaterThan(0);
}, 240_000);

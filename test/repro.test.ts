import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compare } from '../bench/oracle/agreement.js';
import { type Family, familyPart } from '../bench/oracle/families.js';
import { oracleRack } from '../bench/oracle/racks.js';
import { planAndProve } from '../src/fit/index.js';
import { metalById } from '../src/metal/index.js';
import { demoFloor, demoRack } from '../src/shop/index.js';

// Plans that the proof once rejected, as the campaign found them (npm run bench -- campaign). Each must be planned so that it passes,
// or no longer be planned; the seed makes the part again.

interface Repro {
  readonly part: { readonly family: Family; readonly seed: number };
  readonly machine: string;
  readonly findings: readonly string[];
}

const folder = new URL('./repro/', import.meta.url);
const agreements = new URL('./repro/agreement/', import.meta.url);
const filesIn = (at: URL): string[] => (existsSync(at) ? readdirSync(at).filter((f) => f.endsWith('.json')) : []);
const files = filesIn(folder);

describe('plans once rejected by the independent check', () => {
  it.each(files)('%s', async (file) => {
    const { part, machine, findings } = JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as Repro;
    expect(findings.length).toBeGreaterThan(0);
    const trial = await planAndProve({
      part: familyPart(part.family, part.seed), machine: demoFloor().find((m) => m.id === machine)!, rack: demoRack(), metal: metalById('dc01')!, quantity: 50,
    }, { now: () => performance.now() });
    expect(trial.proof.findings).toEqual([]);
    expect(trial.proof.checked ? trial.proof.passed : trial.verdict !== 'makes').toBe(true);
  }, 240_000);
});

/** A plan whose cost an oracle contradicted, as the comparison found it (npm run bench -- agreement). */
interface Disagreement {
  readonly part: { readonly family: Family; readonly seed: number };
  readonly machine: string;
  readonly rack: Parameters<typeof oracleRack>[0];
  readonly wrong: readonly string[];
}

const replay = async ({ part, machine, rack, wrong }: Disagreement): Promise<void> => {
  expect(wrong.length).toBeGreaterThan(0);
  const again = await compare({
    part: familyPart(part.family, part.seed), machine: demoFloor().find((m) => m.id === machine)!, rack: oracleRack(rack), metal: metalById('dc01')!, quantity: 50, limits: { seconds: 60 },
  }, 20, () => performance.now());
  expect(again.searches).toBeGreaterThan(0);
  expect(again.wrong).toEqual([]);
};

describe('costs once contradicted by every order or the mixed-integer model', () => {
  // none was ever found: a part of the comparison itself keeps the way of replaying them in use
  it('as the comparison would write one', () => replay({ part: { family: 'tray', seed: 1 }, machine: 'general', rack: 'two punches', wrong: ['what it would be'] }), 240_000);
  it.each(filesIn(agreements))('%s', (file) => replay(JSON.parse(readFileSync(new URL(file, agreements), 'utf8')) as Disagreement), 240_000);
});

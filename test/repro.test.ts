import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Family, familyPart } from '../bench/oracle/families.js';
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
const files = existsSync(folder) ? readdirSync(folder).filter((f) => f.endsWith('.json')) : [];

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

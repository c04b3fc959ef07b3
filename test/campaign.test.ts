import { describe, expect, it } from 'vitest';
import { FAMILIES, familyPart } from '../bench/oracle/families.js';
import { oracleRack } from '../bench/oracle/racks.js';
import { planAndProve } from '../src/fit/index.js';
import { metalById } from '../src/metal/index.js';
import { demoFloor } from '../src/shop/index.js';

// Seeded plans of every family replayed by the check, machine by machine in turn. 2,000 of them: npm run bench -- campaign 2000.

const floor = demoFloor();

describe('seeded plans are not rejected by the check', () => {
  it.each(FAMILIES.flatMap((family) => (family === 'tray' ? [1, 5] : [1, 2, 5, 6]).map((seed) => [family, seed] as const)))('%s, seed %i', async (family, seed) => {
    const trial = await planAndProve(
      { part: familyPart(family, seed), machine: floor[seed % floor.length]!, rack: oracleRack('two punches'), metal: metalById('dc01')!, quantity: 50 }, { now: () => performance.now() },
    );
    expect(trial.proof.findings).toEqual([]);
    if (trial.verdict === 'makes') expect(trial.proof.passed).toBe(true);
    else expect(trial.reasons.length).toBeGreaterThan(0);
  });
});

import { expect, it } from 'vitest';
import { FAMILIES, familyPart } from '../bench/oracle/families.js';
import { benchParts } from '../bench/parts.js';
import { plateNames as provedNames } from '../src/proof/fold.js';
import { develop, plateNames } from '../src/sheet/index.js';

it('the check names every plate as the planner does: benchmark parts and twenty of each family', () => {
  const parts = [...benchParts().map(({ part }) => part), ...FAMILIES.flatMap((family) => Array.from({ length: 20 }, (_, i) => familyPart(family, i + 1)))];
  for (const part of parts) {
    const names = plateNames(part);
    expect(provedNames(develop(part, { name: 'K-factor', k: 0.44 })), part.name).toEqual(names);
    expect(names.filter((name) => name === 'the base'), part.name).toHaveLength(1);
    expect(new Set(names).size, part.name).toBe(part.plates.length);
  }
});

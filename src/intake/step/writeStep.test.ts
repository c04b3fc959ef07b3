import { readFileSync } from 'node:fs';
import { beforeAll, expect, it } from 'vitest';
import { randomPart, roundTrip } from '../../../bench/roundTrip.js';
import { type Part, profilePart } from '../../sheet/index.js';
import { type Kernel, loadKernel } from './kernel.js';
import { writeStep } from './writeStep.js';

// 1,000 parts: npm run bench -- stepRoundTrip
const FIRST = 1;
const COUNT = 5;

let oc: Kernel;
beforeAll(async () => {
  oc = await loadKernel();
}, 120_000);

const built = (made: ReturnType<typeof profilePart>): Part => {
  if (!made.ok) throw new Error(made.failure.sentence);
  return made.value;
};

it(`brings ${COUNT} random parts back as they were, from seed ${FIRST}, every third part-way`, { timeout: 120_000 }, () => {
  for (let i = 0; i < COUNT; i++) {
    const part = randomPart(FIRST + i);
    expect(roundTrip(oc, part, part.bends.map(() => (i % 3 === 2 ? 2 / 3 : 1))), `seed ${FIRST + i}`).toEqual([]);
  }
});

it('writes the volume of plates and arcs, flat or folded', { timeout: 60_000 }, () => {
  // 40 and 60 outside, t 2, r 3: flats 35 and 55, the arc's middle pi / 2 x 4; width 100
  const angle = built(profilePart({ name: 'angle', thickness: 2, insideRadius: 3, width: 100, flanges: [40, 60], turns: [90] }));
  const mm3 = 2 * 100 * (35 + 55 + (Math.PI / 2) * 4);
  for (const share of [0, 0.4, 1]) {
    const written = writeStep(oc, angle, [share]);
    if ('sentence' in written) throw new Error(written.sentence);
    expect(written.mm3 / mm3).toBeCloseTo(1, 6);
    // a bend is two true cylinders, the flat sheet has none
    expect(written.text.match(/CYLINDRICAL_SURFACE/g)?.length ?? 0).toBe(share === 0 ? 0 : 2);
  }
});

it('once found: an outline with an edge of rounding alone', { timeout: 60_000 }, () => {
  const { part } = JSON.parse(readFileSync(new URL('../../../test/repro/intake/step-out-seed-10.json', import.meta.url), 'utf8')) as { readonly part: Part };
  expect(roundTrip(oc, part)).toEqual([]);
});

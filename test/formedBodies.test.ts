import { expect, it } from 'vitest';
import { metalById } from '../src/metal/index.js';
import { proveTrial } from '../src/proof/index.js';
import { type Formed, type Part, polygon, profilePart } from '../src/sheet/index.js';
import { demoFloor, demoRack } from '../src/shop/index.js';
import { type TrialInput, planTrial } from '../src/trial/index.js';

// an angle, 40 and 60 outside, r and t 1.5: plate 1's flat ends at the bend's tangent line, y = 37, its A side inside the bend
const angle = profilePart({ name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60], turns: [90] });
if (!angle.ok) throw new Error(angle.failure.sentence);
const input = (part: Part): TrialInput => ({ part, machine: demoFloor()[0]!, rack: demoRack(), metal: metalById('dc01')!, quantity: 10 });
/** A post 10 by 10, from 2 to 12 mm off the tangent line. */
const post = (height: number): Formed => ({ plate: 0, kind: 'boss', side: 'A', outline: polygon([[45, 25], [55, 25], [55, 35], [45, 35]]), height });

it('what stands on a plate beside its bend is in the way of the punch, for the planner and for the proof', async () => {
  const free = planTrial(input(angle.value));
  expect(free.steps).toHaveLength(1);
  const withPost = (height: number): typeof free => ({ ...free, sheet: { ...free.sheet, part: { ...free.sheet.part, formed: [post(height)] } } });
  // as low as a tenth of a millimetre it reaches no tool: from the tip the punch rises steeper than the wing
  expect((await proveTrial(withPost(0.1))).findings).toEqual([]);
  const proof = await proveTrial(withPost(100));
  expect(proof.passed).toBe(false);
  expect(proof.findings.join(' ')).toContain('punch');
  const planned = planTrial(input({ ...angle.value, formed: [post(100)] }));
  expect(planned.verdict).not.toBe('makes');
  expect(planned.reasons.map(({ sentence }) => sentence).join(' ')).toContain('punch');
}, 60_000);

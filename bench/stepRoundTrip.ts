// npm run bench -- stepRoundTrip [COUNT] [SEED]: random parts to STEP text and back, finished and part-way.
import { loadKernel } from '../src/intake/step/kernel.js';
import { randomPart, roundTrip } from './roundTrip.js';

const [count, seed] = [Number(process.argv[2] ?? 1000), Number(process.argv[3] ?? 1)];
const oc = await loadKernel();
let failed = 0;
for (let i = 0; i < count; i++) {
  const part = randomPart(seed + i);
  // every third part is written part-way: two thirds of each angle
  const wrong = roundTrip(oc, part, part.bends.map(() => (i % 3 === 2 ? 2 / 3 : 1)));
  if (wrong.length === 0) continue;
  failed++;
  console.log(`seed ${seed + i} (${part.plates.length} plates, t ${part.thickness}): ${wrong.join('; ')}`);
}
console.log(`${count} parts from seed ${seed}: ${count - failed} came back equal, ${failed} did not`);
process.exitCode = failed > 0 ? 1 : 0;

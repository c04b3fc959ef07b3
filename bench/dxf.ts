// npm run bench -- dxf 1000: random parts to DXF and back; the seeds of those that do not come back the same.
import { dxfTrip, tripPart } from './dxfTrips.js';

const count = Number(process.argv[2] ?? 1000);
const ends: Record<string, number> = {};
for (let seed = 1; seed <= count; seed++) {
  const { end, words } = dxfTrip(tripPart(seed), seed);
  ends[end] = (ends[end] ?? 0) + 1;
  if (end === 'differs' || end === 'refused') console.log(`seed ${seed}, ${tripPart(seed).name}: ${end}: ${words.slice(0, 3).join('; ')}`);
}
console.log(`${count} parts to DXF and back: ${Object.entries(ends).map(([end, n]) => `${n} ${end}`).join(', ')}`);
process.exitCode = (ends['differs'] ?? 0) + (ends['refused'] ?? 0) > 0 ? 1 : 0;

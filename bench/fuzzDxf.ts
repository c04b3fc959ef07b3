// npm run bench -- fuzzDxf 5000 [first seed]: damaged and hostile drawings, read as the program reads them, in a worker with its limits.
import { readDxfAside } from '../src/intake/index.js';
import { blank, develop } from '../src/sheet/index.js';
import { damagedDxf } from './damagedDxf.js';
import { fuzzRun } from './fuzzRun.js';

const bad = await fuzzRun({
  kind: 'dxf', count: Number(process.argv[2] ?? 5000), first: Number(process.argv[3] ?? 1),
  bytes: damagedDxf,
  read: async (bytes, seed) => {
    const read = await readDxfAside(bytes, `damaged ${seed}`, { from: 'dxf', thickness: 1.5 });
    if (!read.ok) return { end: read.failure.code, sentences: [read.failure.sentence] };
    // what was read must be a part that can be worked with: a blank, or a sentence why there is none
    const flat = blank(develop(read.value.part, read.value.part.rule!));
    return { end: 'read', sentences: flat.ok ? [] : [flat.failure.sentence] };
  },
});
process.exitCode = bad > 0 ? 1 : 0;

import { resolve } from 'node:path';
import { RuleTester } from 'eslint';
import tseslint from 'typescript-eslint';
import { describe, expect, it } from 'vitest';
import { imports, pure, pureRooms, rooms } from '../../scripts/lint/rooms.js';

RuleTester.describe = describe;
RuleTester.it = it;
RuleTester.itOnly = it;

const tester = new RuleTester({ languageOptions: { parser: tseslint.parser, ecmaVersion: 2022, sourceType: 'module' } });
const file = (path: string): string => resolve('src', path);
const fine = (path: string, code: string) => ({ name: `${path}: ${code}`, filename: file(path), code });
const faulty = (path: string, code: string, ...messageIds: string[]) => ({
  ...fine(path, code),
  errors: messageIds.map((messageId) => ({ messageId })),
});

describe('the rooms', () => {
  it('stand in the order of the design, the first nine of them pure', () => {
    expect(rooms.join(' ')).toBe('geometry metal forming sheet shop trial proof stroke fit intake papers store server cli web');
    expect(pureRooms.join(' ')).toBe('geometry metal forming sheet shop trial proof stroke fit');
  });
});

tester.run('imports', imports, {
  valid: [
    fine('trial/search.ts', "import { unit2 } from '../geometry/index.js';"),
    fine('trial/search.ts', "import { clear } from './clear.js';"),
    fine('trial/search.ts', "import { clear } from './deep/clear.js';"),
    fine('trial/deep/search.ts', "import { clear } from '../clear.js'; import { unit2 } from '../../geometry/index.js';"),
    fine('trial/search.ts', "import earcut from 'earcut';"),
    fine('proof/replay.ts', "import type { Trial } from '../trial/index.js';"),
    fine('proof/replay.ts', "import { type Trial, type Step } from '../trial/index.js';"),
    fine('proof/replay.ts', "import { apply } from '../geometry/index.js';"),
    fine('proof/replay.ts', "let t: import('../trial/index.js').Trial;"),
    fine('cli/main.ts', "import { startServer } from '../server/index.js';"),
    fine('web/page.tsx', "import React from 'react'; import * as three from 'three'; import { Canvas } from '@react-three/fiber';"),
    fine('web/page.tsx', "import { demoFloor } from '../shop/index.js'; import './page.css';"),
    fine('web/page.tsx', "import type { Answer } from '../server/index.js';"),
    fine('trial/search.test.ts', "import { prove } from '../proof/replay.js';"),
  ],
  invalid: [
    faulty('sheet/fold.ts', "import { planTrial } from '../trial/index.js';", 'order'),
    faulty('sheet/fold.ts', "import type { Trial } from '../trial/index.js';", 'order'),
    faulty('sheet/fold.ts', "export * from '../trial/index.js';", 'order'),
    faulty('sheet/fold.ts', "export { planTrial } from '../trial/index.js';", 'order'),
    faulty('sheet/fold.ts', "const t = import('../trial/index.js');", 'order'),
    faulty('sheet/fold.ts', "let t: import('../trial/index.js').Trial;", 'order'),
    faulty('server/start.ts', "import { main } from '../cli/index.js';", 'order'),
    faulty('trial/search.ts', "import { unit2 } from '../geometry/vec.js';", 'door'),
    faulty('trial/search.ts', "import { unit2 } from '../geometry/deep/index.js';", 'door'),
    faulty('trial/search.ts', "import { unit2 } from '../geometry';", 'door'),
    faulty('proof/replay.ts', "import { fold } from '../sheet/index.js';", 'proof'),
    faulty('proof/replay.ts', "import { type Trial, planTrial } from '../trial/index.js';", 'proof'),
    faulty('proof/replay.ts', "import '../shop/index.js';", 'proof'),
    faulty('proof/replay.ts', "export * from '../sheet/index.js';", 'proof'),
    faulty('web/page.tsx', "import { startServer } from '../server/index.js';", 'web'),
    faulty('web/page.tsx', "import { readStep } from '../intake/index.js';", 'web'),
    faulty('web/page.tsx', "import fastify from 'fastify';", 'package'),
    faulty('web/page.tsx', "import { readFileSync } from 'node:fs';", 'package'),
    faulty('kitchen/cook.ts', 'export const x = 1;', 'nowhere'),
  ],
});

tester.run('pure', pure, {
  valid: [
    fine('server/start.ts', "import { readFileSync } from 'node:fs'; const t = Date.now(); console.log(process.pid);"),
    fine('trial/search.ts', 'const plan = (hooks: { now: () => number }) => hooks.now();'),
    fine('trial/search.ts', 'const run = (process: string): string => process; export const d = new Date(0);'),
    fine('trial/search.ts', 'export const m = Math.max(1, 2);'),
    fine('trial/search.test.ts', "import { readFileSync } from 'node:fs'; const t = performance.now();"),
  ],
  invalid: [
    faulty('geometry/vec.ts', "import { readFileSync } from 'node:fs';", 'node'),
    faulty('fit/fit.ts', "export * from 'node:path';", 'node'),
    faulty('fit/fit.ts', "const p = import('node:path');", 'node'),
    faulty('trial/search.ts', 'const t = Date.now();', 'global'),
    faulty('trial/search.ts', 'const t = new Date();', 'global'),
    faulty('trial/search.ts', 'const t = Math.random();', 'global'),
    faulty('trial/search.ts', 'const t = performance.now();', 'global'),
    faulty('trial/search.ts', 'const t = process.env.X;', 'global'),
    faulty('proof/draw.ts', "document.title = window.name;", 'global', 'global'),
    faulty('proof/draw.ts', "console.log('x');", 'global'),
  ],
});

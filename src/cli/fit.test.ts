import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';

// The compiled program as a user runs it.
const program = resolve('dist/cli/main.js');

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'brakewright-fit-'));
  const profile = (name: string, thickness: number, width: number, flanges: number[], turns: number[]): void =>
    writeFileSync(join(folder, `${name}.json`), JSON.stringify({ profile: { name, thickness, insideRadius: thickness, width, flanges, turns } }));
  profile('angle', 1.5, 100, [40, 60], [90]);
  profile('plate', 20, 3000, [200, 300], [90]);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (...args: readonly string[]): Promise<{ readonly code: number; readonly out: string; readonly err: string }> =>
  new Promise((done) => {
    execFile(process.execPath, [program, ...args], { maxBuffer: 1e8, cwd: folder }, (fault, out, err) => {
      done({ code: fault === null ? 0 : typeof fault.code === 'number' ? fault.code : -1, out, err });
    });
  });

const bought = z.strictObject({ id: z.string(), name: z.string(), price: z.number() });
const cheapest = z.strictObject({
  options: z.array(bought), tools: z.array(bought), price: z.number(), proven: z.boolean(),
  // beside what was asked for
  machines: z.array(bought), currency: z.string(), bound: z.number(), cannot: z.array(z.int()), model: z.string(), unpriced: z.array(z.strictObject({ part: z.int(), what: z.string() })).optional(),
  asked: z.array(z.strictObject({ part: z.int(), what: z.string() })),
});
const margin = z.strictObject({
  kind: z.enum(['force', 'length', 'daylight', 'throat', 'gauge travel', 'tolerance']), name: z.string(), value: z.number(), limit: z.number().positive(), unit: z.string(),
  share: z.number().nonnegative(), step: z.int().nonnegative(), source: z.string(),
});
const cell = z.strictObject({
  verdict: z.enum(['makes', 'makes with remedy', 'does not make', 'not decided']),
  margins: z.array(margin),
  reasons: z.array(z.looseObject({ code: z.string(), sentence: z.string().regex(/\.$/), bends: z.array(z.string()) })),
  remedies: z.array(z.looseObject({ sentence: z.string(), confirmed: z.literal(true) })),
  seconds: z.number().positive().nullable(),
  computeSeconds: z.number().nonnegative(),
  // beside what was asked for
  spreads: z.array(z.strictObject({ name: z.string(), value: z.number() })),
  inVain: z.string().optional(), partsAnHour: z.number().positive().nullable(), changeOver: z.number().positive().nullable(),
  proof: z.strictObject({ checked: z.boolean(), passed: z.boolean() }), warnings: z.array(z.string()),
  way: z.strictObject({ steps: z.array(z.strictObject({ bends: z.array(z.string()), toGauge: z.int(), toFront: z.int(), punch: z.string(), die: z.string() })) }).nullable(),
});
const fitAnswer = z.strictObject({
  units: z.string(), computed: z.int(), fromCache: z.int(),
  parts: z.array(z.strictObject({ name: z.string(), thickness: z.number(), bends: z.int() })),
  machines: z.array(z.looseObject({ id: z.string(), name: z.string(), price: z.number(), currency: z.string() })),
  cells: z.array(z.array(cell)),
  cheapest,
  drawingsFree: cheapest.optional(),
  alone: z.array(cheapest),
  options: z.array(z.looseObject({ machine: z.string(), id: z.string(), makes: z.array(z.string()), minutesPerBatch: z.number().nonnegative(), nothing: z.boolean(), sentence: z.string() })),
});

describe('fit --json', () => {
  it('has the keys that were agreed on: parts, machines, cells of verdict, margins, reasons, remedies, seconds, computeSeconds; cheapest of options, tools, price, proven', async () => {
    const { code, out } = await run('fit', 'angle.json', 'plate.json', '--machines', 'general,worn', '--quantity', '10', '--seconds', '10', '--json');
    const fit = fitAnswer.parse(JSON.parse(out));
    expect(fit.parts.map((p) => p.name)).toEqual(['angle', 'plate']);
    expect(fit.machines.map((m) => m.id)).toEqual(['general', 'worn']);
    expect(fit.cells.map((row) => row.length)).toEqual([2, 2]);
    expect(fit.cells[0]!.map((c) => c.verdict)).toEqual(['makes', 'makes']);
    // the tightest first
    for (const c of fit.cells.flat()) expect(c.margins.map((m) => m.share)).toEqual(c.margins.map((m) => m.share).sort((a, b) => b - a));
    // 20 mm over 3 m: V 160 (8 t) asks 1.42 x 350 x 400 / 160 = 1,243 N/mm, 3,700 kN; neither machine has that
    expect(fit.cells[1]!.map((c) => c.verdict)).toEqual(['does not make', 'does not make']);
    expect(fit.cells[1]!.every((c) => c.reasons.length > 0 && c.remedies.length === 0)).toBe(true);
    // the angle alone can be made, on the cheaper machine of 24,000
    expect(fit.cheapest).toMatchObject({ price: 24_000, proven: true, cannot: [1] });
    expect(fit.options.filter((o) => o.machine === 'worn').map((o) => [o.id, o.nothing])).toEqual([['worn/powered X', true]]);
    expect(code).toBe(3);
  }, 400_000);
});

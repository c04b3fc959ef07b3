import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { dayplanCommand } from './dayplan.js';

/** ms: this machine may be busy. */
const PATIENT = 120_000;

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'day-'));
  // what is answered is read from the file
  vi.spyOn(process.stdout, 'write').mockReturnValue(true);
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true });
  process.exitCode = 0;
});

const profile = (name: string, line: string): string => {
  const path = join(folder, `${name}.json`);
  writeFileSync(path, JSON.stringify({ profile: { name, line } }));
  return path;
};

/** The sentence that it is refused with; 'answered' where it is not. */
const refusal = async (...args: readonly string[]): Promise<string> => {
  try {
    await dayplanCommand().exitOverride().configureOutput({ writeErr: () => undefined }).parseAsync([...args, '--json', '-o', join(folder, 'day.json')], { from: 'user' });
  } catch (fault) {
    return (fault as Error).message;
  }
  return 'answered';
};

describe('a day is planned on one machine', () => {
  it.each([['nope', '--machine nope: no such machine on the floor'], ['all', '--machine all: a day is planned on one machine; 5 were named.'], ['general,worn', 'a day is planned on one machine; 2 were named.']])('--machine %s', async (machine, said) => {
    expect(await refusal(profile('angle', '40 ^90 40 t1.5 w100'), '--machine', machine)).toContain(said);
  });
});

describe('what is no part that a brake can bend', () => {
  it('is told beside the day of the others, with exit code 3', async () => {
    const flat = join(folder, 'empty.step');
    writeFileSync(flat, 'no STEP file');
    expect(await refusal(profile('angle', '40 ^90 40 t1.5 w100'), flat, '--machine', 'general')).toBe('answered');
    expect(process.exitCode).toBe(3);
    const { stops, notRead } = JSON.parse(readFileSync(join(folder, 'day.json'), 'utf8')) as { readonly stops: readonly { readonly part: string }[]; readonly notRead: readonly { readonly part: string; readonly sentence: string }[] };
    expect(stops.map(({ part }) => part)).toEqual(['angle']);
    expect(notRead).toEqual([{ part: 'empty.step', sentence: expect.stringMatching(/\.$/) as string }]);
  }, PATIENT);
});

describe('one layout', () => {
  // a lip of 8 mm outside in 3 mm leaves 2 mm flat: no V of the rack holds it
  it('of parts of which none is made says so with each one\'s reason', async () => {
    const said = await refusal(profile('lip', '8 ^90 60 t3 w300'), '--machine', 'general', '--one-layout');
    expect(said).toMatch(/^General.* makes none of the parts asked for as they stand, so there is nothing to put on one layout\. lip: At bend b1 the flange beyond b1 is too short for V 12/);
  }, PATIENT);

  it('speaks of the parts that are made where one is not', async () => {
    expect(await refusal(profile('lip', '8 ^90 60 t3 w300'), profile('angle', '40 ^90 40 t1.5 w100'), '--machine', 'general', '--one-layout')).toBe('answered');
    const { left, layout, model } = JSON.parse(readFileSync(join(folder, 'day.json'), 'utf8')) as { readonly left: readonly { readonly part: string }[]; readonly layout: { readonly length: number }; readonly model: string };
    expect([left.map(({ part }) => part), process.exitCode]).toEqual([['lip'], 3]);
    expect(layout.length).toBeGreaterThan(0);
    expect(model).toMatch(/^The parts stand on one layout, which is built once/);
  }, PATIENT);
});

import { execFile, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { trialSchema } from './trialSchema.js';

// The compiled program as a user runs it, on parts published by others (../shared/parts). The expected figures are those of
// that folder's MANIFEST.tsv and README.md, measured from the files by an independent reading.

const program = resolve('dist/cli/main.js');
const shared = resolve('../shared/parts');
const bracket = join(shared, 'system76__thelio/Major-PSU_Bracket_V1.step');
const cage = join(shared, 'system76__thelio/Major-Cage_1_V1.step');
const tube = join(shared, 'IRNAS__KORUZA/square_tube_100x100x2.STEP');
const weldment = join(shared, 'ONEARMY__precious-plastic-kit/SHRPRO-V1_1410.01-A_Frame.step');
const flat = join(shared, 'system76__thelio/Main-Top_V1.step');

interface Ending {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

const run = (...args: readonly string[]): Promise<Ending> =>
  new Promise((done) => {
    execFile(process.execPath, [program, ...args], { maxBuffer: 1e8, cwd: folder }, (fault, out, err) => {
      done({ code: fault === null ? 0 : typeof fault.code === 'number' ? fault.code : -1, out, err });
    });
  });

/** The output as JSON; with what went wrong in the message when it is none. */
const json = ({ out, err }: Ending): unknown => {
  if (out === '') throw new Error(`no output; standard error: ${err}`);
  return JSON.parse(out);
};

let folder = '';
beforeAll(() => {
  if (!existsSync(program)) throw new Error('dist/ is not built: npm run build');
  folder = mkdtempSync(join(tmpdir(), 'brakewright-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const partAnswer = z.object({
  units: z.string().regex(/^mm\b/),
  parts: z.array(
    z.object({
      index: z.int().nonnegative(),
      name: z.string(),
      thickness: z.number().positive(),
      bends: z.array(
        z.object({
          id: z.string(),
          bendAngle: z.number().positive().max(180),
          insideRadius: z.number().nonnegative(),
          length: z.number().positive(),
          direction: z.enum(['A', 'B']),
          kind: z.enum(['bend', 'hem', 'rolled']),
        }),
      ),
      plates: z.int().positive(),
      strokes: z.int().nonnegative(),
      blank: z.object({ length: z.number().positive(), width: z.number().positive(), area: z.number().positive() }).nullable(),
      volume: z.number().positive().optional(),
      unit: z.enum(['mm', 'inch', 'm', 'cm']),
      assumptions: z.array(z.object({ code: z.string(), sentence: z.string() })),
    }),
  ),
  refused: z.array(z.object({ index: z.int().nonnegative(), code: z.string(), sentence: z.string().min(10) })),
});

describe('a profile as one line', () => {
  it('is described, kept as a part file that other commands take, and faulted with its place', async () => {
    const line = '40 ^90 60 t1.5 w100 r1.5';
    const told = await run('profile', line, '--k', '0.5', '-o', 'angle.json');
    // 40 + 60 - 2 (1.5 + 1.5) + pi/2 (1.5 + 0.75) = 97.534
    expect([told.code, told.out]).toEqual([0, expect.stringContaining('Nominal blank by K-factor 0.5: 100.00 x 97.53 mm')]);
    const { parts } = partAnswer.parse(json(await run('part', 'angle.json', '--json')));
    expect(parts[0]!.bends.map(({ bendAngle, insideRadius, length }) => [bendAngle, insideRadius, length])).toEqual([[90, 1.5, 100]]);
    const fault = await run('profile', '40 ^190 60 t1 w9');
    expect([fault.code, fault.err]).toEqual([2, 'At character 4, "^190": a bend angle lies above 0 (flat) and up to 180 (folded back).\n']);
  });
});

const lying = join(shared, 'ProtofyTeam__OxyGEN/Manometer_Support.dxf');
describe.skipIf(!existsSync(lying))('a flat as DXF', () => {
  it('is a part once its thickness is told; what is told of a bend counts; its unit is asked about', async () => {
    const bare = await run('part', lying);
    expect([bare.code, bare.out]).toEqual([2, 'Body 0 is refused: A flat drawing does not say how thick its sheet is: give the thickness in mm, for example --thickness 1.5.\n']);
    const { parts } = partAnswer.parse(json(await run('part', lying, '--thickness', '1', '--bend', 'b2=45,B,3', '--json')));
    // four bend lines of 16 mm as listed with the file
    expect(parts[0]!.bends.map(({ id, bendAngle, direction, insideRadius }) => [id, bendAngle, direction, insideRadius])).toEqual([
      ['b1', 90, 'A', 1], ['b2', 45, 'B', 3], ['b3', 90, 'A', 1], ['b4', 90, 'A', 1],
    ]);
    for (const bend of parts[0]!.bends) expect(bend.length).toBeCloseTo(16, 2);
    const strange = await run('part', lying, '--thickness', '1', '--layer', 'X=cut');
    expect([strange.code, strange.err]).toEqual([2, '--layer X: the drawing has no such layer; there are 0, Bending.\n']);
  });
});

describe('what can be listed', () => {
  it('machines, tools and metals as JSON, in mm and said so', async () => {
    const machines = z.object({ units: z.string().regex(/^mm\b/), machines: z.array(z.object({ id: z.string(), rating: z.number() })).min(1) });
    const tools = z.object({ units: z.string(), rack: z.object({ punches: z.array(z.object({ id: z.string() })).min(1), dies: z.array(z.object({ id: z.string() })).min(1) }) });
    const metals = z.object({ units: z.string(), metals: z.array(z.object({ id: z.string(), density: z.number() })).min(1) });
    expect(machines.safeParse(json(await run('machines', '--json'))).error).toBeUndefined();
    expect(tools.safeParse(json(await run('tools', '--json'))).error).toBeUndefined();
    expect(metals.safeParse(json(await run('metals', '--json'))).error).toBeUndefined();
  });

  it('an answer goes to a file when asked to, and not to the screen', async () => {
    const file = join(folder, 'metals.json');
    const { out, code } = await run('metals', '--json', '-o', file);
    expect({ out, code }).toEqual({ out: '', code: 0 });
    expect(readFileSync(file, 'utf8')).toBe((await run('metals', '--json')).out);
  });

  it('a floor and a rack as they were printed are read back; a figure that cannot be is refused by its name', async () => {
    const printed = { machines: await run('machines', '--json'), tools: await run('tools', '--json') };
    const [floor, rack] = [join(folder, 'floor.json'), join(folder, 'rack.json')];
    writeFileSync(floor, printed.machines.out);
    writeFileSync(rack, printed.tools.out);
    // the same data; the order of names within a figure may be another
    expect(JSON.parse((await run('machines', '--floor', floor, '--json')).out)).toEqual(JSON.parse(printed.machines.out));
    expect((await run('tools', '--rack', rack, '--json')).out).toBe(printed.tools.out);
    writeFileSync(floor, printed.machines.out.replace('"condition": "new"', '"condition": "shiny"'));
    const { code, err } = await run('machines', '--floor', floor);
    expect(code).toBe(2);
    expect(err).toMatch(/floor\.json: .*condition.*new, reconditioned/);
  });

  it('inches are shown, and JSON does not change with them', async () => {
    const { out } = await run('machines', '--units', 'in');
    expect(out).toMatch(/lengths in in;/);
    expect((await run('machines', '--json', '--units', 'in')).out).toBe((await run('machines', '--json')).out);
  });

  it('help tells of every command, and of the options that all have', async () => {
    const { out, code } = await run('--help');
    expect(code).toBe(0);
    for (const name of ['part', 'blank', 'trial', 'bend', 'proof', 'machines', 'tools', 'metals', 'serve']) {
      expect(out).toContain(name);
      const help = await run(name, '--help');
      expect(help.code).toBe(0);
      for (const option of ['--json', '--output', '--units', '--help']) expect(help.out).toContain(option);
    }
  });
});

it('a profile typed into a file: 40 and 60 mm outside at 90 degrees, its blank by hand', async () => {
  const path = join(folder, 'angle.json');
  const profile = { name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60], turns: [90] };
  writeFileSync(path, JSON.stringify({ profile }));
  const { parts } = partAnswer.parse(json(await run('part', path, '--k', '0.4', '--json')));
  // flats 40 - 3 and 60 - 3, arc pi/2 (1.5 + 0.4 x 1.5) = 3.2987
  expect(parts[0]).toMatchObject({ plates: 2, strokes: 1, bends: [{ bendAngle: 90, insideRadius: 1.5, length: 100 }] });
  expect(parts[0]!.blank!.length).toBeCloseTo(100, 6);
  expect(parts[0]!.blank!.width).toBeCloseTo(37 + 57 + 3.2987, 4);
});

describe.skipIf(!existsSync(shared))('parts published by others', () => {
  it('a bracket: three bends of 90 degrees, inside radius 1.6, of 1.6 mm', async () => {
    const ending = await run('part', bracket, '--json');
    expect(ending.code).toBe(0);
    const { parts, refused } = partAnswer.parse(json(ending));
    expect(refused).toEqual([]);
    expect(parts).toHaveLength(1);
    const [part] = parts;
    expect(part!.thickness).toBeCloseTo(1.6, 3);
    expect(part!.bends).toHaveLength(3);
    expect(part!.plates).toBe(4);
    for (const bend of part!.bends) {
      expect(bend.bendAngle).toBeCloseTo(90, 3);
      expect(bend.insideRadius).toBeCloseTo(1.6, 3);
    }
  });

  it('a cage whose maker drew the flat too, 167.31 x 111 mm at K 0.44: as DXF and as SVG, and shorter by another rule', async () => {
    const dxf = join(folder, 'cage.dxf');
    const ending = await run('blank', cage, '--k', '0.44', '-o', dxf, '--json');
    expect(ending.code).toBe(0);
    const flatCage = z.object({ length: z.number(), width: z.number(), nominal: z.literal(true) }).parse(json(ending));
    expect(flatCage.length).toBeCloseTo(167.31, 2);
    expect(flatCage.width).toBeCloseTo(111, 2);
    expect(readFileSync(dxf, 'utf8').trimEnd()).toMatch(/EOF$/);
    // DIN 6935 at r = s = 1.6 and 90 degrees: k = 0.65, arc pi/2 (1.6 + 0.65 x 1.6/2) = 3.3301; at K 0.44: pi/2 (1.6 + 0.704) = 3.6191
    const svg = join(folder, 'cage.svg');
    const din = z.object({ length: z.number() }).parse(json(await run('blank', cage, '--rule', 'din-6935', '-o', svg, '--json')));
    expect(din.length).toBeCloseTo(167.31 - 3 * (3.6191 - 3.3301), 2);
    expect(readFileSync(svg, 'utf8').trimEnd()).toMatch(/<\/svg>$/);
  });

  it('a flat sheet: read, nothing to bend', async () => {
    const ending = await run('part', flat, '--json');
    expect(ending.code).toBe(0);
    const { parts } = partAnswer.parse(json(ending));
    expect(parts[0]).toMatchObject({ plates: 1, bends: [], strokes: 0 });
  });

  it('what is no brake part is refused, each body by itself, exit 2', async () => {
    const picture = join(folder, 'tube.svg');
    const closed = await run('part', tube, '--json', '--picture', picture);
    expect(closed.code).toBe(2);
    expect(partAnswer.parse(json(closed))).toMatchObject({ parts: [], refused: [{ index: 0 }] });
    expect(readFileSync(picture, 'utf8')).toMatch(/<svg .*face \d+<.*face \d+</);
    const frame = await run('part', weldment, '--json');
    expect(frame.code).toBe(2);
    const { refused } = partAnswer.parse(json(frame));
    expect(refused).toHaveLength(19);
    expect(new Set(refused.map(({ index }) => index)).size).toBe(19);
  }, 120_000);

  it('a trial: its whole record, its set-up sheet, and the proof of the saved record', async () => {
    const pdf = join(folder, 'sheet.pdf');
    const ending = await run('trial', bracket, '--machine', 'general', '-o', pdf, '--json');
    const trial = trialSchema.parse(json(ending));
    expect(trial.verdict).toBe('makes');
    expect(ending.code).toBe(0);
    expect(trial.steps.flatMap(({ bends }) => bends).sort()).toEqual(trial.sheet.part.bends.map(({ id }) => id).sort());
    expect(trial.proof).toMatchObject({ checked: true, passed: true });
    expect(readFileSync(pdf).subarray(0, 5).toString()).toBe('%PDF-');
    expect(readFileSync(pdf).toString('latin1').trimEnd()).toMatch(/%%EOF$/);
    const file = join(folder, 'trial.json');
    writeFileSync(file, ending.out);
    const proof = await run('proof', file, '--json');
    expect(proof.code).toBe(0);
    expect(json(proof)).toMatchObject({ checked: true, passed: true, smallestClearance: trial.proof.smallestClearance });
    // the same plan with a stop 5 mm nearer the bending plane: the sheet does not reach the line, or the finger stands in it
    const spoilt = { ...trial, steps: trial.steps.map((step, i) => (i === 0 ? { ...step, stop: { ...step.stop, x: step.stop.x - 5 } } : step)) };
    writeFileSync(file, JSON.stringify(spoilt));
    const rejected = await run('proof', file, '--json');
    expect(rejected.code).toBe(3);
    expect(json(rejected)).toMatchObject({ checked: true, passed: false });
  }, 180_000);

  it('a reader that has seen enough ends the program without a word', async () => {
    const { out, err } = await new Promise<{ out: string; err: string }>((done) => {
      execFile('bash', ['-c', `"${process.execPath}" "${program}" metals --json | head -c 20`], (_fault, out, err) => done({ out, err }));
    });
    expect(out).toHaveLength(20);
    expect(err).toBe('');
  });
});

describe('serve', () => {
  it('says its address when it listens, answers there, and ends with code 0 when told to stop', async () => {
    const server = spawn(process.execPath, [program, 'serve', '--port', '0', '--data', join(folder, 'data')]);
    const ended = new Promise<number | null>((done) => server.once('close', (code) => done(code)));
    try {
      let said = '';
      const url = await new Promise<string>((done, fail) => {
        server.stdout.on('data', (piece: Buffer) => {
          said += piece.toString();
          const found = /http:\/\/127\.0\.0\.1:\d+/.exec(said);
          if (found && said.endsWith('\n')) done(found[0]);
        });
        server.once('close', () => fail(new Error('it ended before it listened')));
      });
      expect(said.trimEnd().split('\n')).toHaveLength(1);
      expect(await (await fetch(`${url}/api/health`)).json()).toEqual({ ok: true });
      const taken = await run('serve', '--port', new URL(url).port, '--data', join(folder, 'other'));
      expect(taken.code).toBe(2);
      expect(taken.err).toMatch(/^Port \d+ on 127\.0\.0\.1 is taken .*\.\n$/);
    } finally {
      server.kill('SIGTERM');
    }
    expect(await ended).toBe(0);
  });
});

it('the launcher sets up what is missing and says the version of package.json', async () => {
  const { version } = z.object({ version: z.string() }).parse(JSON.parse(readFileSync('package.json', 'utf8')));
  const out = await new Promise<string>((done) => {
    execFile(process.execPath, [resolve('brakewright'), '--version'], { cwd: folder }, (_fault, text) => done(text));
  });
  expect(out).toBe(`${version}\n`);
});

describe('bad input: one sentence on standard error, exit 2, nothing left behind', () => {
  const faulty = (name: string, args: () => readonly string[], says: RegExp): void => {
    it(name, async () => {
      const before = readdirSync(folder);
      const { code, out, err } = await run(...args());
      expect(err).toMatch(says);
      expect(err.trimEnd().split('\n')).toHaveLength(1);
      expect(err).toMatch(/[.)]\n$/);
      expect(err).not.toMatch(/ at .*:\d+:\d+|Error:/);
      expect(out).toBe('');
      expect(code).toBe(2);
      expect(readdirSync(folder)).toEqual(before);
    });
  };
  const made = (name: string, content: string): string => {
    const path = join(folder, name);
    writeFileSync(path, content);
    return path;
  };
  beforeAll(() => {
    made('empty.step', '');
    made('text.step', 'This is a letter, not a part.\n');
    made('part.step', 'ISO-10303-21;\nHEADER;\nENDSEC;\nDATA;\n');
    made('trial.txt', '{"format": "brakewright trial 1"}');
    made('no.json', 'no json');
  });

  faulty('a missing file', () => ['part', 'missing.step'], /missing\.step: there is no such file/);
  faulty('a folder', () => ['part', folder], /it is a folder/);
  faulty('an empty file', () => ['part', 'empty.step'], /empty\.step: the file is empty/);
  faulty('a text file for a trial', () => ['trial', 'text.step', '--machine', 'all'], /text\.step: /);
  faulty('a text file for a blank', () => ['blank', 'text.step', '-o', 'x.dxf'], /text\.step: /);
  faulty('a machine that is not there', () => ['trial', 'text.step', '--machine', 'nowhere'], /--machine nowhere: no such machine/);
  faulty('a metal that is not there', () => ['trial', 'text.step', '--machine', 'all', '--metal', 'cheese'], /--metal cheese: no such metal/);
  faulty('no machine named', () => ['trial', 'text.step'], /--machine/);
  faulty('an option that is not there', () => ['part', 'text.step', '--frobnicate'], /unknown option '--frobnicate'/);
  faulty('a command that is not there', () => ['frobnicate'], /unknown command 'frobnicate'/);
  faulty('a unit that is not there', () => ['machines', '--units', 'ells'], /--units/);
  faulty('no file', () => ['part'], /missing required argument 'file'/);
  faulty('one file too many', () => ['machines', 'text.step'], /too many arguments/);
  faulty('a K-factor that cannot be', () => ['part', 'text.step', '--k', '7'], /--k 7: a K-factor is a number from 0 to 0\.6/);
  faulty('a rule that is not there', () => ['part', 'text.step', '--rule', 'thumb'], /--rule thumb: no such rule/);
  faulty('a rule and a K-factor', () => ['part', 'text.step', '--rule', 'din-6935', '--k', '0.4'], /give one of the two/);
  faulty('a quantity of nothing', () => ['trial', 'text.step', '--machine', 'all', '--quantity', '0'], /--quantity 0/);
  faulty('a trial written as a picture', () => ['trial', 'text.step', '--machine', 'all', '-o', 'x.png'], /x\.png: /);
  faulty('a folder to write to that is not there', () => ['machines', '-o', 'nowhere/x.txt'], /nowhere\/x\.txt: its folder does not exist/);
  faulty('no trial', () => ['proof', 'no.json'], /no\.json: this is no JSON/);
  faulty('a trial cut short', () => ['proof', 'trial.txt'], /trial\.txt: this is no trial of the format/);
  faulty('no profile', () => ['part', 'no.json'], /no\.json: this is no JSON, so no typed-in profile/);
  faulty('a sharp radius of nothing', () => ['part', 'text.step', '--sharp-radius', '0'], /--sharp-radius 0/);
  faulty('a bend without its metal', () => ['bend', '--thickness', '2', '--length', '1000', '--v', '16', '--die-angle', '84', '--shoulder', '2', '--tip', '1', '--angle', '90'], /--metal and --curve: give one/);
  faulty('a port that cannot be', () => ['serve', '--port', '99999'], /--port 99999/);
});

it('a text file is a part file with nothing in it: refused in JSON too, exit 2', async () => {
  const path = join(folder, 'letter.step');
  writeFileSync(path, 'This is a letter, not a part.\n');
  const ending = await run('part', path, '--json');
  expect(ending.code).toBe(2);
  expect(partAnswer.parse(json(ending)).refused).toHaveLength(1);
});

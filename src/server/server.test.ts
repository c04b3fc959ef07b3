import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request as httpRequest } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { askedServer } from '../../test/askedServer.js';
import { demoFloor } from '../shop/index.js';
import { type JobView, startServer, StartRefusal } from './index.js';

// Planning, proof and papers of one part take a few seconds on a computer that does nothing else.
vi.setConfig({ testTimeout: 240_000 });

// the planner and the proof run in their workers (dist)
const server = askedServer('server');
const { ask, post, upload, addAngle, ended } = server;

/** It begins with a capital or with the name of the thing in question (a file, a field). */
const oneSentence = /^([A-Z']|[\w.]+\.(step|stp) ).*[.]$/;

describe('what there is', () => {
  test('health, machines, tools, metals', async () => {
    expect((await ask('/api/health')).body).toEqual({ ok: true });
    expect((await ask('/api/machines')).body).toMatchObject({ machines: JSON.parse(JSON.stringify(demoFloor())), unreadable: [] });
    expect((await ask('/api/tools')).body).toHaveProperty('rack.punches.0.id');
    expect((await ask('/api/metals')).body).toHaveProperty('metals.0.name');
  });

  test('the first start puts the demonstration parts in, marked', async () => {
    const { parts } = (await ask('/api/parts')).body as { parts: { id: string; demo: boolean }[] };
    expect(parts.length).toBeGreaterThan(0);
    expect(parts.every(({ demo, id }) => demo && id.startsWith('demo-'))).toBe(true);
  });
});

describe('parts', () => {
  test('a typed-in profile: kept, named, with its nominal blank', async () => {
    const id = await addAngle();
    const { status, body } = await ask(`/api/parts/${id}?rule=K-factor&k=0.5`);
    expect(status).toBe(200);
    expect(body).toMatchObject({ id, revision: 1, name: 'angle', thickness: 1.5, bends: 1, by: 'Ann', demo: false, source: null });
    // Flat length: 40 + 60 - 2 (1.5 + 1.5) + (pi/2)(1.5 + 0.5 * 1.5) = 94 + 3.534292
    expect((body as { summary: { nominalBlank: { rule: string; length: number; width: number } } }).summary.nominalBlank)
      .toMatchObject({ rule: 'K-factor 0.5', length: 100, ok: true });
    expect((body as { summary: { nominalBlank: { width: number } } }).summary.nominalBlank.width).toBeCloseTo(97.534292, 5);
  });

  test('the nominal blank and the part are drawn', async () => {
    const id = await addAngle();
    for (const [name, type, begins] of [
      ['blank.svg', 'image/svg+xml', /^<svg/], ['picture.svg', 'image/svg+xml', /^<svg/], ['blank.dxf?rule=din-6935', 'application/dxf', /^\s*0\s+SECTION/],
    ] as const) {
      const drawing = await fetch(`${server.url}/api/parts/${id}/${name}`);
      expect([name, drawing.status, drawing.headers.get('content-type')]).toEqual([name, 200, type]);
      expect(drawing.headers.get('content-security-policy')).toContain(type === 'application/dxf' ? "script-src 'self'" : 'sandbox');
      expect(await drawing.text()).toMatch(begins);
    }
    expect((await ask(`/api/parts/${id}/blank.svg?rule=none`)).status).toBe(400);
    expect((await ask(`/api/parts/${id}/blank.svg?k=2`)).status).toBe(400);
  });

  test('a change is a revision; the former one is still there', async () => {
    const id = await addAngle();
    expect((await post(`/api/parts/${id}/revisions`, { name: 'bracket', radii: { b1: 2 } }, { 'x-by': 'Ben' })).body)
      .toMatchObject({ id, revision: 2, name: 'bracket', by: 'Ben', change: 'inside radius of b1 2 mm, renamed' });
    // Outside lengths stay: 100 - 2 (2 + 1.5) + (pi/2)(2 + 0.5 * 1.5) = 93 + 4.319690
    const now = (await ask(`/api/parts/${id}?k=0.5`)).body as { summary: { nominalBlank: { width: number } }; revisions: { name: string }[] };
    expect(now.summary.nominalBlank.width).toBeCloseTo(97.31969, 5);
    expect(now.revisions.map(({ name }) => name)).toEqual(['angle', 'bracket']);
    expect((await ask(`/api/parts/${id}?revision=1`)).body).toMatchObject({ revision: 1, name: 'angle', part: { bends: [{ insideRadius: 1.5 }] } });
    expect((await post(`/api/parts/${id}/revisions`, { radii: { b9: 2 } })).status).toBe(422);
    expect((await post(`/api/parts/${id}/revisions`, {})).status).toBe(400);
    expect((await ask(`/api/parts/${id}?revision=7`)).status).toBe(404);
  });

  test('a purge removes the part and leaves the record', async () => {
    const id = await addAngle('SECRET-HINGE-41');
    expect(folderHolds('SECRET-HINGE-41')).toBe(true);
    const { status, body } = await ask(`/api/parts/${id}`, { method: 'DELETE', headers: { 'x-by': 'Ben' } });
    expect([status, body]).toMatchObject([200, { purges: [{ partId: id, revisions: 1, by: 'Ben' }] }]);
    expect(folderHolds('SECRET-HINGE-41')).toBe(false);
    const after = await ask(`/api/parts/${id}`);
    expect([after.status, after.body]).toMatchObject([410, { purge: { partId: id, by: 'Ben' } }]);
    expect((await ask(`/api/parts/${id}`, { method: 'DELETE' })).status).toBe(410);
    expect((await post('/api/trials', { partId: id, machineId: 'all', metalId: 'any', quantity: 1 })).status).toBe(410);
  });
});

describe('flat drawings', () => {
  /** 100 by 80 with one bend line at 30, no unit in the header. */
  const flat = (() => {
    const line = (x0: number, y0: number, x1: number, y1: number, layer: string): readonly (string | number)[] => [0, 'LINE', 8, layer, 10, x0, 20, y0, 11, x1, 21, y1];
    return [0, 'SECTION', 2, 'ENTITIES', ...line(0, 0, 100, 0, 'C'), ...line(100, 0, 100, 80, 'C'), ...line(100, 80, 0, 80, 'C'), ...line(0, 80, 0, 0, 'C'), ...line(0, 30, 100, 30, 'X'), 0, 'ENDSEC', 0, 'EOF'].join('\n');
  })();
  const send = (path: string, told?: object): ReturnType<typeof ask> => {
    const form = new FormData();
    if (told !== undefined) form.append('told', JSON.stringify(told));
    form.append('file', new Blob([flat]), 'flat.dxf');
    return ask(path, { method: 'POST', body: form });
  };

  test('are looked at, kept with what was told, and read again as revisions', async () => {
    const look = await send('/api/drawings');
    expect(look).toMatchObject({ status: 200, body: { failure: { code: 'thickness not known' }, seen: { layers: [{ key: 'C', role: 'cut' }, { key: 'X', role: 'cut' }], unit: { taken: 'mm', doubted: true } } } });
    expect(await send('/api/parts')).toMatchObject({ status: 422, body: { error: expect.stringContaining('how thick'), layers: [{ key: 'C' }, { key: 'X' }] } });
    expect((await send('/api/parts', { thickness: -1 })).status).toBe(400);
    const told = { thickness: 1.5, roles: { X: 'bend A' }, rule: { name: 'K-factor', k: 0.5 } };
    const { status, body } = await send('/api/parts', told);
    expect(status).toBe(201);
    const { id } = (body as { parts: { id: string }[] }).parts[0]!;
    expect((await ask(`/api/parts/${id}`)).body).toMatchObject({
      source: { fileName: 'flat.dxf' }, summary: { nominalBlank: { ok: true, rule: 'K-factor 0.5', length: 100, area: expect.closeTo(8000, 3) } },
      part: { bends: [{ id: 'b1', bendAngle: 90, direction: 'A' }], reading: { from: 'dxf', ...told } },
    });
    const again = { ...told, bends: { b1: { bendAngle: 60, direction: 'B' } } };
    expect(await post(`/api/parts/${id}/revisions`, { told: again, metal: 'dc01', marks: { keep: 'A' } })).toMatchObject({
      status: 201, body: { revision: 2, change: expect.stringMatching(/^read again: b1: bend angle 60, towards B, metal .*, the A side must not be marked$/) },
    });
    expect((await ask(`/api/parts/${id}`)).body).toMatchObject({ part: { bends: [{ bendAngle: 60, direction: 'B' }], metal: 'dc01', marks: { keep: 'A' } } });
    expect((await ask(`/api/parts/${id}?revision=1`)).body).toMatchObject({ part: { bends: [{ bendAngle: 90, direction: 'A' }] } });
    expect((await post(`/api/parts/${id}/revisions`, { told: { ...told, roles: { X: 'ignore', C: 'ignore' } } })).status).toBe(422);
    expect((await post(`/api/parts/${id}/revisions`, { metal: 'unobtainium' })).status).toBe(422);
  });

  test('a typed line is kept, typed anew as a revision, faulted with its place', async () => {
    const { body } = await post('/api/parts', { profile: { name: 'typed', line: '40 ^90 60 t1.5 w100' } });
    const { id } = (body as { parts: { id: string }[] }).parts[0]!;
    expect(await post(`/api/parts/${id}/revisions`, { line: '40 v90 60 t1.5 w100' })).toMatchObject({ status: 201, body: { change: 'typed anew: 40 v90 60 t1.5 w100' } });
    expect((await ask(`/api/parts/${id}`)).body).toMatchObject({ part: { bends: [{ direction: 'B' }] } });
    expect(await post(`/api/parts/${id}/revisions`, { line: '40 v 60' })).toMatchObject({ status: 422, body: { error: expect.stringMatching(/^At the end: /) } });
  });
});

describe('files', () => {
  const published = new URL('../../../shared/parts/Creality3DPrinting__Ender-3/E_motor_bracket.step', import.meta.url);

  test.skipIf(!existsSync(published))('a published STEP file is read, kept and given back byte by byte', async () => {
    const bytes = new Uint8Array(readFileSync(published));
    const { status, body } = await upload('bracket.step', bytes);
    expect([status, body]).toMatchObject([201, { parts: [{ revision: 1, source: { fileName: 'bracket.step', size: bytes.length } }] }]);
    const { id } = (body as { parts: { id: string }[] }).parts[0]!;
    // Drawn with a sharp corner: the reader assumed a radius, a revision says which one it is.
    const read = (await ask(`/api/parts/${id}`)).body as { assumptions: { code: string; bends: string[] }[]; part: { bends: { insideRadius: number }[] } };
    expect(read.assumptions).toContainEqual(expect.objectContaining({ code: 'sharp bend', bends: ['b1'] }));
    expect((await post(`/api/parts/${id}/revisions`, { sharpRadius: 1.25 })).body).toMatchObject({ revision: 2, change: 'inside radius of b1 1.25 mm' });
    expect((await ask(`/api/parts/${id}`)).body).toMatchObject({
      part: { bends: [{ insideRadius: 1.25 }] },
      assumptions: expect.arrayContaining([expect.objectContaining({ code: 'sharp bend', sentence: 'Drawn sharp; the inside radius was chosen by the user: b1 1.25 mm.' })]),
    });
    const original = await fetch(`${server.url}/api/parts/${id}/original`);
    expect(Buffer.from(await original.arrayBuffer()).equals(Buffer.from(bytes))).toBe(true);
  });

  test.each([
    ['garbage', 'garbage.step', 'this is no STEP file at all', 422],
    ['a STEP header and nothing else', 'cut.stp', 'ISO-10303-21;\nHEADER;\n', 422],
    ['an empty file', 'empty.step', '', 422],
    ['another kind of file', 'drawing.exe', 'MZ', 415],
  ])('%s is answered with one sentence', async (_what, name, text, status) => {
    const answer = await upload(name, text);
    expect(answer.status).toBe(status);
    expect((answer.body as { error: string }).error).toMatch(oneSentence);
  });

  test('a file over the limit is refused, announced or not', async () => {
    expect(await upload('large.step', new Uint8Array(65 * 2 ** 20)).catch(() => 'connection closed')).toMatchObject({ status: 413 });
    // Sent in pieces, without its length beforehand.
    const answer = await chunked('/api/parts', 65 * 2 ** 20);
    expect(answer).toMatchObject({ status: 413, error: 'The file is larger than 64 MiB.' });
  });
});

describe('trials', () => {
  test('a trial of the angle is planned, proved and kept', async () => {
    const id = await addAngle();
    const machine = demoFloor()[0]!;
    const metal = ((await ask('/api/metals')).body as { metals: { id: string; family: string }[] }).metals.find(({ family }) => family === 'mild steel')!;
    const asked = await post('/api/trials', { partId: id, machineId: machine.id, metalId: metal.id, quantity: 10, toleranceClass: 'v' });
    expect([asked.status, asked.body]).toMatchObject([202, { jobs: [{ machineId: machine.id }] }]);
    const { jobId } = (asked.body as { jobs: { jobId: string }[] }).jobs[0]!;

    const told = await events(jobId);
    const job = await ended(jobId);
    expect(told.at(-1)).toEqual(job);
    expect(job).toMatchObject({ state: 'done', verdict: 'makes', share: 1, why: null });

    const { trial, standsStill, ...record } = (await ask(`/api/trials/${job.trialId}`)).body as { trial: Record<string, unknown> & { steps: unknown[] }; standsStill: unknown };
    expect(standsStill).toEqual([]);
    expect(record).toMatchObject({ partId: id, partRevision: 1, machineId: machine.id, metalId: metal.id, quantity: 10, verdict: 'makes',
      summary: { steps: 1, stations: 1, proof: { checked: true, passed: true }, defect: false, reason: null } });
    expect(trial).toMatchObject({ format: 'brakewright trial 1', verdict: 'makes', proof: { checked: true, passed: true } });
    expect(trial.steps).toHaveLength(1);
    expect((trial.dimensions as { askedBy: string }[]).map(({ askedBy }) => askedBy).every((by) => by.startsWith('class v'))).toBe(true);
    expect((await ask(`/api/trials?partId=${id}`)).body).toEqual({ trials: [record] });

    const pdf = await fetch(`${server.url}/api/trials/${job.trialId}/setup-sheet.pdf`);
    expect([pdf.status, pdf.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    expect(Buffer.from(await pdf.arrayBuffer()).subarray(0, 5).toString()).toBe('%PDF-');
    for (const drawing of ['steps/1/picture.svg?when=before', 'steps/1/picture.svg?when=after', 'steps/1/section.svg', 'layout.svg', 'path.svg']) {
      const svg = await fetch(`${server.url}/api/trials/${job.trialId}/${drawing}`);
      expect([drawing, svg.status, svg.headers.get('content-type')]).toEqual([drawing, 200, 'image/svg+xml']);
      expect(await svg.text()).toMatch(/^<svg[^]*<path[^]*<\/svg>\s*$/);
    }
    expect((await ask(`/api/trials/${job.trialId}/steps/2/picture.svg?when=before`)).status).toBe(404);
    expect((await ask(`/api/trials/${job.trialId}/steps/1/picture.svg?when=later`)).status).toBe(400);
    expect((await ask(`/api/trials/${job.trialId}/defect.json`)).status).toBe(404);
  });

  test("the shop's measured deductions override the calculation, unless they are left out; the trial names their revision", async () => {
    const id = await addAngle('measured');
    type Tried = { readonly deductionsRevision: number | null; readonly trial: { readonly steps: readonly { readonly deduction: number; readonly forming: { readonly deduction: { readonly source: string } }; readonly station: string; readonly bendAngle: number }[];
      readonly stations: readonly { readonly id: string; readonly punch: string; readonly die: string }[]; readonly punches: readonly { readonly id: string; readonly tipRadius: number }[]; readonly dies: readonly { readonly id: string; readonly v: number; readonly vConvention: string }[] } };
    const tried = async (more: object): Promise<Tried & { readonly trialId: string }> => {
      const { jobs } = (await post('/api/trials', { partId: id, machineId: 'general', metalId: 'dc01', quantity: 1, seconds: 2, ...more })).body as { jobs: { jobId: string }[] };
      const { trialId } = await ended(jobs[0]!.jobId);
      return { ...((await ask(`/api/trials/${trialId}`)).body as Tried), trialId: trialId! };
    };
    const before = await tried({});
    expect([before.deductionsRevision, before.trial.steps[0]!.forming.deduction.source]).toEqual([null, 'strip']);
    // a strip written down for it: legs of 60 and 60.4 on 117 cut is a deduction of 3.4
    const strip = { kind: 'strip', serial: 's1', batch: 'b1', station: before.trial.stations[0]!.id, bendAngle: 90, cut: 117, legs: [60, 60.4], thickness: 1.5 };
    expect((await post(`/api/trials/${before.trialId}/pieces`, strip)).status).toBe(201);
    expect(await post('/api/deductions', { trialId: before.trialId }, { 'x-by': 'Ann' })).toMatchObject({ status: 201, body: { revision: 1, by: 'Ann', change: `1 row from the test strips of trial ${before.trialId}` } });
    const after = await tried({});
    expect([after.deductionsRevision, after.trial.steps[0]!.forming.deduction.source]).toEqual([1, 'measured']);
    expect(after.trial.steps[0]!.deduction).toBeCloseTo(3.4, 9);
    const without = await tried({ measured: 'left out' });
    expect([without.deductionsRevision, without.trial.steps[0]!.forming.deduction.source, without.trial.steps[0]!.deduction]).toEqual([null, 'strip', before.trial.steps[0]!.deduction]);
  });

  test('all machines: one job each; waiting and running ones can be stopped', async () => {
    const { parts } = (await ask('/api/parts')).body as { parts: { id: string; demo: boolean; bends: number }[] };
    const hardest = parts.filter(({ demo }) => demo).sort((a, b) => b.bends - a.bends)[0]!;
    const metal = ((await ask('/api/metals')).body as { metals: { id: string }[] }).metals[0]!;
    const { jobs } = (await post('/api/trials', { partId: hardest.id, machineId: 'all', metalId: metal.id, quantity: 1 })).body as { jobs: { jobId: string; machineId: string }[] };
    expect(jobs.map(({ machineId }) => machineId)).toEqual(demoFloor().map(({ id }) => id));

    const last = jobs.at(-1)!.jobId;
    const stopped = await post(`/api/jobs/${last}/stop`, {});
    expect([stopped.status, stopped.body]).toMatchObject([200, { state: 'stopped', trialId: null, why: 'Stopped by the user before it began.' }]);
    expect((await post(`/api/jobs/${last}/stop`, {})).status).toBe(409);

    const first = jobs[0]!.jobId;
    const began = performance.now();
    const answer = await post(`/api/jobs/${first}/stop`, {});
    // Running or just ended: after the answer it has ended, within the time of grace (2 s) and what a busy computer adds.
    expect([200, 409]).toContain(answer.status);
    expect(performance.now() - began).toBeLessThan(15_000);
    expect((await ended(first)).state).toMatch(/^(stopped|done)$/);
    for (const { jobId } of jobs) await post(`/api/jobs/${jobId}/stop`, {});
    const views = ((await ask('/api/jobs')).body as { jobs: JobView[] }).jobs.filter(({ id }) => jobs.some(({ jobId }) => jobId === id));
    expect(views.every(({ endedAt }) => endedAt !== null)).toBe(true);
  });

  test('a wrong question is answered with what is wrong', async () => {
    const id = await addAngle();
    const metal = ((await ask('/api/metals')).body as { metals: { id: string }[] }).metals[0]!.id;
    const right = { partId: id, machineId: demoFloor()[0]!.id, metalId: metal, quantity: 1 };
    for (const [wrong, status] of [
      [{ partId: 'p-none' }, 404], [{ machineId: 'none' }, 404], [{ metalId: 'none' }, 404], [{ quantity: 0 }, 400], [{ quantity: 1.5 }, 400],
      [{ seconds: 1e9 }, 400], [{ toleranceClass: 'x' }, 400], [{ more: 1 }, 400],
    ] as const) {
      const answer = await post('/api/trials', { ...right, ...wrong });
      expect([wrong, answer.status]).toEqual([wrong, status]);
      expect((answer.body as { error: string }).error).toMatch(oneSentence);
    }
    expect((await ask('/api/jobs/j-none')).status).toBe(404);
    expect((await ask('/api/jobs/j-none/events')).status).toBe(404);
    expect((await ask('/api/trials/t-none')).status).toBe(404);
  });
});

describe('who may ask', () => {
  test('a foreign host name (DNS rebinding) and a page of another site are turned away', async () => {
    expect((await raw('/api/parts', { host: 'parts.example' })).status).toBe(421);
    expect((await raw('/api/parts', { host: 'localhost:9' })).status).toBe(200);
    expect((await ask('/api/parts', { headers: { origin: 'http://parts.example' } })).status).toBe(403);
    expect((await ask('/api/parts', { method: 'DELETE', headers: { origin: 'null' } })).status).toBe(403);
    expect((await ask('/api/parts', { headers: { origin: server.url } })).status).toBe(200);
  });

  test('every answer carries the policy', async () => {
    for (const path of ['/api/health', '/api/none', '/']) {
      const { headers } = await fetch(server.url + path);
      expect(headers.get('content-security-policy')).toContain("script-src 'self';");
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
    }
  });

  test('a wider host without passphrase and TLS is refused before anything is opened', async () => {
    const refused = startServer({ port: 0, host: '0.0.0.0', dataDir: join(server.dataDir, 'never') });
    await expect(refused).rejects.toThrow(StartRefusal);
    await expect(refused).rejects.toThrow(/needs a passphrase .* TLS/);
    await expect(startServer({ port: 0, host: '0.0.0.0', dataDir: join(server.dataDir, 'never'), passphrase: 'short', tlsKey: 'k', tlsCert: 'c' }))
      .rejects.toThrow(/has 5 characters; 12 are the least/);
    expect(readdirSync(server.dataDir)).not.toContain('never');
  });

  test('a second server on the same store is told so', async () => {
    const second = startServer({ port: 0, dataDir: server.dataDir });
    await expect(second).rejects.toThrow(StartRefusal);
    await expect(second).rejects.toThrow(/in use by another running program/);
  });

  test('a taken port is told so', async () => {
    const other = join(server.dataDir, 'other');
    await expect(startServer({ port: Number(new URL(server.url).port), dataDir: other })).rejects.toThrow(/is taken by another program/);
  });
});

test('the pages: files as they are, any other place is the one page, an unbuilt one says so', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'brakewright-pages-'));
  const pages = join(folder, 'web');
  mkdirSync(join(pages, 'assets'), { recursive: true });
  writeFileSync(join(pages, 'index.html'), '<!doctype html><title>pages</title>');
  writeFileSync(join(pages, 'assets', 'main-1a2b.js'), 'export {};');
  const [built, unbuilt] = [await startServer({ port: 0, dataDir: join(folder, 'a'), pages }), await startServer({ port: 0, dataDir: join(folder, 'b'), pages: join(folder, 'none') })];
  try {
    for (const path of ['/', '/parts/p-7k2m9x4tqa', '/trials?of=all']) {
      const page = await fetch(built.url + path);
      expect([path, page.status, page.headers.get('content-type'), page.headers.get('cache-control'), await page.text()])
        .toEqual([path, 200, 'text/html; charset=utf-8', 'no-cache', '<!doctype html><title>pages</title>']);
    }
    const script = await fetch(`${built.url}/assets/main-1a2b.js`);
    expect([script.status, script.headers.get('cache-control')]).toEqual([200, 'public, max-age=31536000, immutable']);
    expect((await fetch(`${built.url}/assets/gone.js`)).status).toBe(404);
    // fetch would take '..' out of an address by itself.
    for (const path of ['/../a/brakewright.db', '/..%2fa%2fbrakewright.db', '/assets/%2e%2e/%2e%2e/a/brakewright.db']) {
      expect([path, [400, 403, 404].includes((await raw(path, {}, built.url)).status)]).toEqual([path, true]);
    }
    expect(await (await fetch(unbuilt.url)).text()).toBe('The pages are not built: run npm run build.');
  } finally {
    await Promise.all([built.close(), unbuilt.close()]);
    rmSync(folder, { recursive: true, force: true });
  }
});

test('a restart keeps parts and trials and marks what it interrupted', async () => {
  const parts = (await ask('/api/parts')).body;
  const trials = (await ask('/api/trials')).body;
  const { parts: list } = parts as { parts: { id: string; demo: boolean }[] };
  const metal = ((await ask('/api/metals')).body as { metals: { id: string }[] }).metals[0]!;
  const { jobs } = (await post('/api/trials', { partId: list.find(({ demo }) => demo)!.id, machineId: 'all', metalId: metal.id, quantity: 1 })).body as { jobs: { jobId: string }[] };
  await server.restart();
  expect((await ask('/api/parts')).body).toEqual(parts);
  expect((await ask(`/api/jobs/${jobs.at(-1)!.jobId}`)).body).toMatchObject({ state: 'stopped', why: 'stopped by restart', trialId: null });
  const after = ((await ask('/api/trials')).body as { trials: { id: string }[] }).trials;
  expect(after).toEqual(expect.arrayContaining((trials as { trials: { id: string }[] }).trials));
});

/** The stream of a job to its end. */
async function events(jobId: string): Promise<JobView[]> {
  const response = await fetch(`${server.url}/api/jobs/${jobId}/events`);
  expect(response.headers.get('content-type')).toContain('text/event-stream');
  const text = await response.text();
  return text.split('\n\n').filter((block) => block.startsWith('data: ')).map((block) => JSON.parse(block.slice('data: '.length)) as JobView);
}

/** fetch sets Host by itself and tidies the path, so by hand. */
function raw(path: string, headers: Record<string, string>, url = server.url): Promise<{ readonly status: number }> {
  return new Promise((resolve, reject) => {
    httpRequest(url, { path, headers }, (response) => {
      response.resume();
      response.on('end', () => resolve({ status: response.statusCode! }));
    }).on('error', reject).end();
  });
}

/** A multipart upload of so many bytes whose length is not said beforehand. */
function chunked(path: string, size: number): Promise<{ readonly status: number; readonly error: string }> {
  return new Promise((resolve, reject) => {
    const request = httpRequest(server.url + path, { method: 'POST', headers: { 'content-type': 'multipart/form-data; boundary=xx' } }, (response) => {
      let text = '';
      response.on('data', (data: Buffer) => (text += data.toString()));
      response.on('end', () => resolve({ status: response.statusCode!, ...(JSON.parse(text) as { error: string }) }));
    });
    request.on('error', reject);
    request.write('--xx\r\ncontent-disposition: form-data; name="file"; filename="large.step"\r\ncontent-type: application/octet-stream\r\n\r\n');
    for (let sent = 0; sent < size; sent += 2 ** 20) request.write(Buffer.alloc(2 ** 20));
    request.end('\r\n--xx--\r\n');
  });
}

function folderHolds(text: string): boolean {
  return readdirSync(server.dataDir).some((name) => /\.db(-wal)?$/.test(name) && readFileSync(join(server.dataDir, name)).includes(text));
}

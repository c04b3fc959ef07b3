import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test, vi } from 'vitest';
import { askedServer } from '../../test/askedServer.js';
import { loadKernel } from '../intake/step/kernel.js';
import { kernelBodies } from '../intake/step/testKernel.js';
import { stepText } from '../intake/step/writeStep.js';

// Reading and writing STEP take a few seconds on a computer that does nothing else.
vi.setConfig({ testTimeout: 240_000 });

const server = askedServer('intake');
const { ask, post, upload, addAngle } = server;

/** It begins with a capital or with the name of the field in question. */
const oneSentence = /^[A-Z'].*[.]$/;

const TUBE = resolve('../shared/parts/IRNAS__KORUZA/square_tube_100x100x2.STEP');
console.log(`real files: ${existsSync(TUBE) ? 1 : 0} found, ${existsSync(TUBE) ? 0 : 1} skipped`);

test('dimensions are set with a tolerance or a class, and refused where no length lies between', async () => {
  const id = await addAngle();
  type Shown = { summary: { dimensions: { what: string; value: number; classTolerance: number | null; dimension: { id: string; between: unknown; tolerance?: number } }[] } };
  const shown = async (): Promise<Shown['summary']['dimensions']> => ((await ask(`/api/parts/${id}`)).body as Shown).summary.dimensions;
  // the outside lengths as they were typed
  const first = await shown();
  expect(first.map(({ value }) => Number(value.toFixed(6))).sort()).toEqual([40, 60]);
  const [one, two] = first.map(({ dimension }) => dimension.between);
  const overall = [{ kind: 'edge', plate: 0, at: [0, 20] }, { kind: 'edge', plate: 0, at: [100, 20] }];
  const set = await post(`/api/parts/${id}/revisions`, { dimensions: [{ between: one, tolerance: 0.15 }, { between: two, class: 'm' }, { between: overall }] });
  expect([set.status, set.body]).toMatchObject([201, { change: '3 dimensions, 1 with a tolerance, 1 by a class' }]);
  const now = await shown();
  expect(now.map(({ dimension }) => [dimension.id, dimension.tolerance])).toEqual([['d1', 0.15], ['d2', undefined], ['d3', undefined]]);
  expect(now[2]!.value).toBeCloseTo(100, 6);
  // ISO 2768-1 m: 0.3 from 30 to 120
  expect(now[1]!.classTolerance).toBe(0.3);
  const face = (plate: number): object => ({ kind: 'face', plate, side: 'A' });
  const angled = await post(`/api/parts/${id}/revisions`, { dimensions: [{ between: [face(0), face(1)] }] });
  expect([angled.status, angled.body]).toMatchObject([422, { error: expect.stringMatching(/^d1: .*90\.0 degrees/) }]);
  expect((await post(`/api/parts/${id}/revisions`, { dimensions: null })).body).toMatchObject({ change: 'dimensions as by default' });
  expect((await shown()).length).toBe(first.length);
});

test('a part goes out as STEP at any fold, and comes back as it was', async () => {
  const id = await addAngle('to go');
  const answer = await fetch(`${server.url}/api/parts/${id}/part.step?fold=0.5`);
  expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'model/step']);
  expect(answer.headers.get('content-disposition')).toContain('to%20go.step');
  const { parts } = (await upload('half.step', await answer.text())).body as { parts: { id: string }[] };
  const back = (await ask(`/api/parts/${parts[0]!.id}`)).body as { part: { thickness: number; bends: { bendAngle: number }[] } };
  expect(back.part.thickness).toBeCloseTo(1.5, 4);
  expect(back.part.bends.map(({ bendAngle }) => bendAngle)).toEqual([expect.closeTo(45, 4)]);
  expect((await ask(`/api/parts/${id}/part.step?fold=b7=1`)).body).toEqual({ error: "'fold': to go has no bend 'b7'." });
});

test('of a file with several uses of one shape the answer names them', async () => {
  const oc = await loadKernel();
  const make = kernelBodies(oc);
  const [builder, all] = [new oc.TopoDS_Builder(), new oc.TopoDS_Compound()];
  builder.MakeCompound(all);
  // an angle of 40 and 60, the same seen from its other end, and a longer one
  const angle = (y: number, to: -1 | 1, length: number): Parameters<typeof builder.Add>[1] =>
    make.pushed([[0, 0], [60, 0], [60, 2], [2, 2], [2, 40], [0, 40]].map(([a, b]): readonly [number, number] => [y + to * a!, b!]), 0, length);
  for (const body of [angle(0, 1, 100), angle(300, -1, 100), angle(400, 1, 120)]) builder.Add(all, body);
  const { status, body } = await upload('rack.step', stepText(oc, all, 'rack'));
  const { parts, alike } = body as { parts: { id: string }[]; alike: { id: string; of: string }[] };
  expect([status, parts.length]).toEqual([201, 3]);
  expect(alike).toEqual([{ id: parts[1]!.id, of: parts[0]!.id }]);
});

test.skipIf(!existsSync(TUBE))('a closed section is refused with its faces, and a picture of them', async () => {
  const { status, body } = await upload('tube.step', new Uint8Array(readFileSync(TUBE)));
  expect(status).toBe(422);
  const { refused } = body as { refused: { code: string; faces: number[]; picture: string }[] };
  expect(refused).toMatchObject([{ code: 'closed section', faces: [expect.any(Number), expect.any(Number)] }]);
  for (const face of refused[0]!.faces) expect(refused[0]!.picture).toContain(`>face ${face}<`);
});

test('a file without a name, and names that no file can bear, are refused in one sentence', async () => {
  const raw = (head: string): Promise<{ readonly status: number; readonly body: never }> =>
    ask('/api/parts', { method: 'POST', headers: { 'content-type': 'multipart/form-data; boundary=x' }, body: `--x\r\nContent-Disposition: form-data; name="file"${head}\r\nContent-Type: application/octet-stream\r\n\r\nMZ\r\n--x--\r\n` });
  for (const answer of [
    await raw(''), await raw('; filename=""'), await raw('; filename*=UTF-8\'\'a%0Ab.step'),
    ...(await Promise.all(['two\nlines', 'half \ud800'].flatMap((name) => [
      post('/api/parts', { profile: { name, line: '40 ^90 60 t1.5 w100' } }), post('/api/parts/demo-1/revisions', { name }),
      post('/api/parts', { profile: { name, thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60], turns: [90] } }),
    ]))),
  ]) {
    expect(answer.status).toBe(400);
    expect((answer.body as { error: string }).error).toMatch(oneSentence);
    expect((answer.body as { error: string }).error).toMatch(/name|no file/);
  }
  // a name that came in before is still given out
  expect((await fetch(`${server.url}/api/parts/demo-1/blank.dxf`)).status).toBe(200);
});

test('a body over its limit is refused with the limit; a table may be larger', async () => {
  expect(await post('/api/trials', { partId: 'x'.repeat(2 ** 20) })).toMatchObject({ status: 413, body: { error: 'The body is larger than the 1 MiB that are taken here.' } });
  expect(await post('/api/deductions', { csv: 'x\n'.repeat(2 ** 20), mode: 'add' })).toMatchObject({ status: 422 });
});

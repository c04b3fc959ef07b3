import { describe, expect, test, vi } from 'vitest';
import { askedServer } from '../../test/askedServer.js';
import { demoFloor, demoRack } from '../shop/index.js';
import type { TrialRecord } from '../store/index.js';
import type { FitSummary, FitView } from './index.js';

// plans and proves in worker threads (dist)
vi.setConfig({ testTimeout: 240_000 });

const server = askedServer('fits', 'Ann');
const { ask, post } = server;
const addAngle = (a: number, b: number): Promise<string> => server.addAngle(`angle ${a} + ${b}`, [a, b]);
/** The last word of the stream of changes, and how many there were. */
const lastOf = async (id: string): Promise<{ readonly last: FitSummary; readonly words: number }> => {
  const text = await (await fetch(`${server.url}/api/fits/${id}/events`)).text();
  const words = text.split('\n').filter((line) => line.startsWith('data: ')).map((line) => JSON.parse(line.slice(6)) as FitSummary);
  return { last: words.at(-1)!, words: words.length };
};
const fitted = async (question: object): Promise<FitView> => {
  const { status, body } = await post('/api/fits', question);
  expect(status).toBe(202);
  const { id } = body as FitSummary;
  await lastOf(id);
  return (await ask(`/api/fits/${id}`)).body;
};

describe('fits', () => {
  test('parts on machines: told as they come, each cell with its trial, known the second time, gone with the part', async () => {
    const partIds = [await addAngle(40, 60), await addAngle(50, 80)];
    const question = { partIds, machineIds: ['small-fast', 'general'], metalId: 'dc01', quantity: 10, options: false };
    const { body } = await post('/api/fits', question);
    const { id } = body as FitSummary;
    const { last, words } = await lastOf(id);
    expect(last).toMatchObject({ id, state: 'done', done: 4, of: 4, fromCache: 0, by: 'Ann', toleranceClass: 'c' });
    expect(words).toBeGreaterThan(4);
    const board: FitView = (await ask(`/api/fits/${id}`)).body;
    expect(board.parts.map((p) => p.name)).toEqual(['angle 40 + 60', 'angle 50 + 80']);
    expect(board.machines.map((m) => [m.id, m.whose])).toEqual([['small-fast', 'ours'], ['general', 'ours']]);
    expect(board.cells.map((row) => row.map((cell) => cell!.verdict))).toEqual([['makes', 'makes'], ['makes', 'makes']]);
    expect(board.answer).toMatch(/^Each of these 2 machines makes both parts as it stands/);
    expect(board.sums.map(({ makes, why }) => [makes, why])).toEqual([[2, []], [2, []]]);
    // as first kept: no machine and no rack of this store was changed
    expect((await ask(`/api/trials/${board.cells[0]![1]!.trialId}`)).body).toMatchObject({ machineRevision: 1, rackId: 'demo-rack', rackRevision: 1 });
    // each alone makes all, so the cheaper of 68,000 and 118,000 does
    expect(board.cheapest).toMatchObject({ price: 68_000, proven: true, options: [], tools: [], cannot: [] });
    for (const cell of board.cells.flat()) {
      const { body: trial } = await ask(`/api/trials/${cell!.trialId!}`);
      expect(trial).toMatchObject({ verdict: cell!.verdict, whose: 'ours', option: null, asked: { toleranceClass: 'c', scribedLine: 'refused', measured: 'taken' } });
    }
    // the very same part handed in once more has trials of its own
    const twin = await addAngle(40, 60);
    const twice = await fitted({ ...question, partIds: [twin], machineIds: ['general'] });
    expect(twice.fromCache).toBe(0);
    expect((await ask(`/api/trials/${twice.cells[0]![0]!.trialId!}`)).body).toMatchObject({ partId: twin });
    await fetch(`${server.url}/api/parts/${twin}`, { method: 'DELETE' });
    const csv = await fetch(`${server.url}/api/fits/${id}/board.csv`);
    expect(csv.headers.get('content-type')).toBe('text/csv; charset=utf-8');
    const [head, ...rows] = (await csv.text()).trimEnd().split('\n');
    expect(head).toMatch(/^part,"thickness, mm",bends,machine,whose,verdict,/);
    expect(rows.map((row) => row.slice(0, row.indexOf('makes')))).toEqual(board.parts.flatMap(({ name }) => board.machines.map((m) => `${name},1.5,1,"${m.name}",ours,`)));
    const again = await fitted(question);
    expect([again.done, again.fromCache]).toEqual([4, 4]);
    expect(again.cells).toEqual(board.cells);

    await fetch(`${server.url}/api/parts/${partIds[0]!}`, { method: 'DELETE' });
    expect((await ask(`/api/fits/${id}`)).status).toBe(404);
    const left = await fitted({ ...question, partIds: [partIds[1]] });
    expect([left.done, left.fromCache]).toEqual([2, 2]);
    // a restart keeps board and cells; the board goes with its part
    await server.restart();
    expect((await ask(`/api/fits/${left.id}`)).body).toEqual(left);
    expect(((await ask('/api/fits')).body as { fits: FitSummary[] }).fits.map((f) => f.id)).toEqual([left.id]);
    expect((await ask(`/api/fits/${id}`)).status).toBe(404);
    expect(((await ask(`/api/fits/${left.id}/report`)).body as { answer: string }).answer).toBe(left.answer);
    const later = await fitted({ ...question, partIds: [partIds[1]] });
    expect([later.done, later.fromCache]).toEqual([2, 2]);
    expect(later.cells).toEqual(left.cells);
    await fetch(`${server.url}/api/parts/${partIds[1]!}`, { method: 'DELETE' });
    expect([(await ask(`/api/fits/${left.id}`)).status, (await ask(`/api/fits/${later.id}`)).status]).toEqual([404, 404]);
  });

  test('what each option buys: minutes, or nothing for these parts', async () => {
    const partId = await addAngle(46, 72);
    const fit = await fitted({ partIds: [partId], machineIds: ['general', 'worn'], metalId: 'dc01', quantity: 60, remedies: false, options: true });
    const of = (id: string) => fit.options.find((o) => o.id === id)!;
    // one station built in 120 s in place of 240 s, once a batch
    expect(of('general/quick clamps')).toMatchObject({ makes: [], nothing: false, tolerance: null });
    expect(of('general/quick clamps').minutesPerBatch).toBeCloseTo(2, 6);
    // fingers side by side are not moved by hand between strokes of one bend
    expect(of('general/powered Z')).toMatchObject({ makes: [], minutesPerBatch: 0, nothing: true });
    expect(of('general/powered Z').sentence).toContain('nothing for these parts');
    expect(of('general/sheet followers').sentence).toContain('changes no figure');
    // X by hand is set once for one stroke: the option saves no time either
    expect(of('worn/powered X').makes).toEqual([]);
    expect(fit.options).toHaveLength(4 + 1);
    // the cell itself and two options with an effect on general, one on worn
    expect([fit.done, fit.of]).toEqual([5, 5]);
    // each trial says which option its machine was planned with
    const { trials } = (await ask(`/api/trials?partId=${partId}`)).body as { readonly trials: readonly TrialRecord[] };
    expect(trials.map(({ machineId, option }) => `${machineId} ${option ?? 'as it stands'}`).sort())
      .toEqual(['general as it stands', 'general powered Z', 'general quick clamps', 'worn as it stands', 'worn powered X']);
  });

  test('the buyer\'s machine and tools stand as columns of their own', async () => {
    const partId = await addAngle(45, 70);
    const mine = { ...demoFloor().find((m) => m.id === 'worn')!, id: 'present', name: 'Present machine', clampFamilies: ['tang B'] };
    const rack = demoRack();
    const tools = { ...rack, id: 'mine', name: 'My tools', punches: rack.punches.map((p) => ({ ...p, tang: 'tang B' })) };
    const fit = await fitted({ partIds: [partId], machineIds: ['general'], metalId: 'dc01', quantity: 10, remedies: false, options: false, buyer: { machines: [mine], rack: tools } });
    expect(fit.machines.map((m) => [m.id, m.whose])).toEqual([
      ['general', 'ours'], ['general+mine', 'ours, with the buyer\'s tools'], ['own present', 'the buyer\'s'],
    ]);
    // the dies sit on seat A as ours do, the punches hang by another tang
    expect(fit.machines[1]!.tools).toEqual({ held: rack.dies.length, of: rack.punches.length + rack.dies.length, others: ['tang B'] });
    expect(fit.machines[2]!.tools.others).toEqual([]);
    expect(fit.cells[0]!.map((cell) => cell!.verdict)).toEqual(['makes', 'does not make', 'makes']);
    expect(fit.cheapest!.price).toBe(0);
    const { trials } = (await ask(`/api/trials?partId=${partId}`)).body as { readonly trials: readonly TrialRecord[] };
    expect(trials.map(({ machineId, whose }) => `${machineId}: ${whose}`).sort()).toEqual(['general: ours', 'general: ours, with the buyer\'s tools', 'present: the buyer\'s']);
  });

  test('stopped, the cells that were done stay', async () => {
    const partIds = [await addAngle(41, 61), await addAngle(42, 62), await addAngle(43, 63)];
    const { id } = (await post('/api/fits', { partIds, machineIds: 'all', metalId: 'dc01', quantity: 10, options: false })).body as FitSummary;
    expect((await post(`/api/fits/${id}/stop`, {})).status).toBe(200);
    const fit: FitView = (await ask(`/api/fits/${id}`)).body;
    expect(fit.state).toBe('stopped');
    expect(fit.cells.flat().every((cell) => cell !== null && (cell.verdict === 'makes' || cell.reasons[0]!.code === 'limit'))).toBe(true);
    expect((await post(`/api/fits/${id}/stop`, {})).status).toBe(409);

    // after a restart too, what was left open is tried again and what was done is taken over
    await server.restart();
    const done = fit.cells.flat().filter((cell) => cell!.verdict === 'makes').length;
    expect((await post(`/api/fits/${id}/again`, { seconds: 0 })).status).toBe(400);
    expect((await post('/api/fits/f-none/again', { seconds: 60 })).status).toBe(404);
    const { status, body } = await post(`/api/fits/${id}/again`, { seconds: 60 });
    expect(status).toBe(202);
    const { id: next } = body as FitSummary;
    await lastOf(next);
    const again: FitView = (await ask(`/api/fits/${next}`)).body;
    expect(again).toMatchObject({ state: 'done', seconds: 60, doing: null, parts: fit.parts, machines: fit.machines });
    expect(again.fromCache).toBeGreaterThanOrEqual(done);
    expect(again.cells.flat().every((cell) => cell!.verdict === 'makes')).toBe(true);
    for (const [p, row] of fit.cells.entries()) for (const [c, cell] of row.entries()) if (cell!.verdict === 'makes') expect(again.cells[p]![c]).toEqual(cell);
  });

  test('one that was under way when the program ended says so, and goes on', async () => {
    const partIds = [await addAngle(47, 67), await addAngle(48, 68)];
    const { id } = (await post('/api/fits', { partIds, machineIds: 'all', metalId: 'dc01', quantity: 10, options: false })).body as FitSummary;
    await server.restart();
    const fit: FitView = (await ask(`/api/fits/${id}`)).body;
    expect([fit.state, fit.doing, fit.endedAt]).toEqual(['stopped', null, fit.createdAt]);
    expect(fit.why).toContain('The program ended while this was worked on.');
    expect((await lastOf(id)).last.state).toBe('stopped');
    const { body } = await post(`/api/fits/${id}/again`, { seconds: fit.seconds });
    expect((await lastOf((body as FitSummary).id)).last).toMatchObject({ state: 'done', done: 10, of: 10 });
  });

  test('what a machine reaches is worked out when it is asked', async () => {
    expect((await ask('/api/machines/none/envelope')).status).toBe(404);
    expect((await ask('/api/machines/general/envelope?metalId=none')).status).toBe(404);
    expect((await ask('/api/machines/general/envelope?metalId=dc01')).body).toEqual({ state: 'computing', plans: 0 });
    let now: { readonly state: string; readonly plans?: number } = { state: 'computing' };
    for (let k = 0; k < 200 && (now.plans ?? 0) < 2; k++) {
      await new Promise((resolve) => setTimeout(resolve, 100));
      now = (await ask('/api/machines/general/envelope?metalId=dc01')).body;
    }
    expect(now.plans).toBeGreaterThanOrEqual(2);
  });

  test('what is wrong is said in one sentence', async () => {
    const partId = await addAngle(44, 64);
    const good = { partIds: [partId], machineIds: 'all', metalId: 'dc01', quantity: 10 };
    for (const [wrong, status] of [
      [{ ...good, partIds: ['none'] }, 404], [{ ...good, machineIds: ['none'] }, 404], [{ ...good, metalId: 'none' }, 404], [{ ...good, quantity: 0 }, 400],
      [{ ...good, owned: ['genral'] }, 400], [{ ...good, machineIds: ['general', 'general'] }, 400], [{ ...good, machineIds: ['worn'], owned: ['general'] }, 400],
      [{ ...good, buyer: { machines: [{ id: 'x' }] } }, 422], [{ ...good, buyer: { rack: {} } }, 422],
    ] as const) {
      const answer = await post('/api/fits', wrong);
      expect([wrong, answer.status]).toEqual([wrong, status]);
      expect((answer.body as { error: string }).error).toMatch(/^[A-Z'].*\.$/);
    }
    expect((await ask('/api/fits/f-none')).status).toBe(404);
  });
});

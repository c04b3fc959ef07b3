import { describe, expect, test } from 'vitest';
import { askedServer } from '../../test/askedServer.js';
import { demoFloor, demoShopData } from '../shop/index.js';

const server = askedServer('shop', 'Ann');
const ask = (path: string, method = 'GET', body?: unknown): ReturnType<typeof server.ask> =>
  method === 'POST' ? server.post(path, body) : server.ask(path, { method, headers: { 'x-by': 'Ann' } });
const { machines, conditions } = demoShopData();
const small = machines[0] as Record<string, unknown> & { readonly id: string };

describe('machines', () => {
  test('the demo floor is the first revision, marked demo', async () => {
    expect((await ask('/api/machines/small-fast')).body).toMatchObject({ revision: 1, demo: true, by: 'program', change: 'demonstration data', data: JSON.parse(JSON.stringify(small)), machine: { id: 'small-fast' } });
    expect((await ask('/api/machines')).body).toMatchObject({ revisions: { 'small-fast': { machine: 1, condition: null }, worn: { machine: 1, condition: 1 } } });
  });

  test('a change is the next revision in words, the former stays, and a stale one is refused', async () => {
    const kept = await ask('/api/machines', 'POST', { data: { ...small, throat: 260 }, after: 1 });
    expect([kept.status, kept.body]).toMatchObject([201, { revision: 2, by: 'Ann', change: 'throat 200 to 260', takenOff: false }]);
    expect((await ask('/api/machines/small-fast?revision=1')).body).toMatchObject({ machine: { throat: 200 } });
    expect(((await ask('/api/machines')).body as { machines: { id: string; throat: number }[] }).machines.find(({ id }) => id === 'small-fast')!.throat).toBe(260);
    const late = await ask('/api/machines', 'POST', { data: { ...small, throat: 270 }, after: 1 });
    expect([late.status, late.body]).toEqual([409, { error: "The machine 'small-fast' stands at revision 2 (Ann: throat 200 to 260), not at 1, on which this was changed: nothing of it is kept." }]);
    expect((await ask('/api/machines', 'POST', { data: { ...small, throat: 260 }, after: 2 })).status).toBe(400);
  });

  test('a fault names the field and the measure', async () => {
    const { status, body } = await ask('/api/machines', 'POST', { data: { ...small, id: 'another', shutHeight: 400 } });
    expect([status, body]).toMatchObject([422, { error: 'another: shutHeight (400) must be less than openHeight (335).', fault: { field: 'shutHeight' } }]);
  });

  test('one can be taken off and come back; its revisions go on counting', async () => {
    expect((await ask('/api/machines', 'POST', { data: { ...small, id: 'second' } })).status).toBe(201);
    expect((await ask('/api/machines/second', 'DELETE')).body).toMatchObject({ revision: 2, takenOff: true });
    expect((await ask('/api/machines/second')).status).toBe(404);
    expect((await ask('/api/machines/second?revision=1')).status).toBe(200);
    expect((await ask('/api/machines', 'POST', { data: { ...small, id: 'second' } })).body).toMatchObject({ revision: 3 });
  });

  test('the whole floor out and in again changes nothing; what this program prints is taken too', async () => {
    const floor = (await ask('/api/floor.json')).body as { machines: object[] };
    expect((await ask('/api/floor', 'POST', floor)).body).toMatchObject({ kept: [] });
    const printed = { ...JSON.parse(JSON.stringify(demoFloor()[0])), id: 'printed' } as object;
    expect((await ask('/api/floor', 'POST', [printed])).body).toMatchObject({ kept: [{ id: 'printed', revision: 1 }] });
  });
});

describe('machines as a table', () => {
  const table = async (): Promise<string> => (await fetch(`${server.url}/api/floor.csv`)).text();

  test('the floor out and in again changes nothing; a changed cell is the next revision', async () => {
    const csv = await table();
    const ids = ((await ask('/api/floor.json')).body as { machines: { id: string }[] }).machines.map(({ id }) => id);
    expect((await ask('/api/floor', 'POST', { csv })).body).toEqual({ kept: [], same: ids });
    const { data, revision } = (await ask('/api/machines/deep-throat')).body as { data: { throat: number }; revision: number };
    expect(data.throat).toBe(500);
    const changed = csv.replace(/^(machine,,deep-throat,(?:"[^"]*"|[^,])*(?:,(?:"[^"]*"|[^,]*))*?),500,630,/m, '$1,550,630,');
    expect((await ask('/api/floor', 'POST', { csv: changed })).body).toMatchObject({ kept: [{ id: 'deep-throat', revision: revision + 1, change: 'throat 500 to 550' }] });
    expect((await ask('/api/machines', 'POST', { data, after: revision + 1 })).status).toBe(201);
  });

  test('a bad cell is refused by line and column, and nothing of the table is kept', async () => {
    const csv = await table();
    const before = (await ask('/api/machines')).body;
    const { status, body } = await ask('/api/floor', 'POST', { csv: csv.replace(/,as new 0\.01,/, ',as new 9,').replace('Powered crowning', 'Crowning') });
    expect([status, body]).toEqual([422, { error: expect.stringMatching(/^Line \d+, ram_repeats, value must be a number from 0\.001 to 5 mm \(9 was given\)\.$/) }]);
    expect((await ask('/api/machines')).body).toEqual(before);
  });
});

describe('measured deductions', () => {
  const header = 'metal,thickness_mm,v_mm,v_convention,tip_radius_mm,bend_angle_deg,deduction_mm,note';
  const csv = (...rows: readonly string[]): string => [header, ...rows].join('\n');

  test('there are none, then a table; rows of the same tools, angle and note give way; each change is a revision', async () => {
    expect((await ask('/api/deductions')).body).toEqual({ revision: null, rows: [], tools: [], revisions: [] });
    const first = await ask('/api/deductions', 'POST', { csv: csv('dc01,2,16,sharp,1,90,3.55,batch 7', 'dc01,2,16,sharp,1,60,1.7,batch 7'), mode: 'add' });
    expect([first.status, first.body]).toMatchObject([201, { revision: 1, by: 'Ann', change: '2 rows taken in', kind: 'deductions' }]);
    expect((await ask('/api/deductions', 'POST', { csv: csv('dc01,2,16,sharp,1,90,3.61,batch 7', 'dc01,2,16,sharp,1,90,3.5,batch 8'), mode: 'add' })).status).toBe(201);
    const { rows } = (await ask('/api/deductions')).body as { rows: { deduction: number; pieces: number }[] };
    expect(rows.map(({ deduction }) => deduction)).toEqual([1.7, 3.61, 3.5]);
    expect((await ask('/api/deductions?revision=1')).body).toMatchObject({ revision: 1, rows: [{ deduction: 3.55 }, { deduction: 1.7 }], revisions: [{ revision: 1 }, { revision: 2 }] });
    const out = await (await fetch(`${server.url}/api/deductions.csv`)).text();
    expect((await ask('/api/deductions', 'POST', { csv: out, mode: 'replace' })).status).toBe(201);
    expect((await ask('/api/deductions')).body).toMatchObject({ revision: 3, rows });
    // the bend at the counter says it too: mean of two pieces at 90 degrees, by hand 3.555
    const bend = (await ask('/api/bend', 'POST', { metalId: 'dc01', thickness: 2, length: 1000, bendAngle: 90 })).body as { ranked: { v: number; punch: string; die: string }[] };
    const pair = bend.ranked.find(({ v }) => v === 16)!;
    const rack = ((await ask('/api/tools')).body as { rack: { punches: { id: string; tipRadius: number }[]; dies: { id: string; vConvention: string }[] } }).rack;
    const [tip, convention] = [rack.punches.find(({ id }) => id === pair.punch)!.tipRadius, rack.dies.find(({ id }) => id === pair.die)!.vConvention];
    const row = (note: string, deduction: number): string => `dc01,2,16,${convention},${tip},90,${deduction},${note}`;
    expect((await ask('/api/deductions', 'POST', { csv: csv(row('a', 3.61), row('b', 3.5)), mode: 'replace' })).status).toBe(201);
    const own = (await ask('/api/bend', 'POST', { metalId: 'dc01', thickness: 2, length: 1000, bendAngle: 90, punchId: pair.punch, dieId: pair.die })).body as { chosen: { deduction: { deduction: number; source: string } } };
    expect(own.chosen.deduction).toMatchObject({ source: 'measured', deduction: expect.closeTo(3.555, 9) });
  });

  test('a table that cannot be read is refused by its line, a trial without strips too', async () => {
    expect((await ask('/api/deductions', 'POST', { csv: csv('dc01,2,16,wide,1,90,3.55,'), mode: 'add' }))).toMatchObject({ status: 422, body: { line: 2, error: expect.stringContaining('"sharp" or "tangent"') } });
    expect((await ask('/api/deductions', 'POST', { csv: header })).status).toBe(400);
    expect((await ask('/api/deductions', 'POST', { trialId: 't-none' })).status).toBe(404);
    expect((await ask('/api/deductions?revision=99')).status).toBe(404);
  });
});

describe('racks', () => {
  test('a second rack stands beside the first, and the last cannot be taken off', async () => {
    const { data } = (await ask('/api/racks/demo-rack')).body as { data: Record<string, unknown> };
    expect((await ask('/api/racks', 'POST', { data: { ...data, id: 'own', name: 'Own' } })).status).toBe(201);
    expect((await ask('/api/racks')).body).toMatchObject({ racks: [{ id: 'demo-rack', demo: true }, { id: 'own' }] });
    expect((await ask('/api/racks/own', 'DELETE')).status).toBe(200);
    expect((await ask('/api/racks/demo-rack', 'DELETE')).status).toBe(409);
    expect((await ask('/api/tools')).body).toMatchObject({ rack: { id: 'demo-rack' }, revision: 1 });
  });
});

describe('cross-sections from drawings', () => {
  const line = (x0: number, y0: number, x1: number, y1: number): readonly (string | number)[] => [0, 'LINE', 8, 'C', 10, x0, 20, y0, 11, x1, 21, y1];
  const vee = [[0, 0, 40, 0], [40, 0, 40, 60], [40, 60, 26, 60], [26, 60, 20, 50], [20, 50, 14, 60], [14, 60, 0, 60], [0, 60, 0, 0]] as const;
  const dxf = [0, 'SECTION', 2, 'HEADER', 9, '$INSUNITS', 70, 4, 0, 'ENDSEC', 0, 'SECTION', 2, 'ENTITIES', ...vee.flatMap(([a, b, c, d]) => line(a, b, c, d)), 0, 'ENDSEC', 0, 'EOF'].join('\n');
  const send = async (of: string, text = dxf): Promise<{ readonly status: number; readonly body: unknown }> => {
    const form = new FormData();
    form.append('of', of);
    form.append('file', new Blob([text]), 'vee.dxf');
    const answer = await fetch(`${server.url}/api/sections`, { method: 'POST', body: form });
    return { status: answer.status, body: await answer.json() };
  };

  test('a die stands with the middle of its top at the origin', async () => {
    const { status, body } = await send('die');
    expect([status, body]).toMatchObject([200, { size: [40, 60] }]);
    const corners = (body as { corners: number[][] }).corners.map((c) => c.join(' '));
    expect(corners).toHaveLength(7);
    for (const corner of ['-20 -60', '20 0', '6 0', '0 -10', '-6 0']) expect(corners).toContain(corner);
  });

  test('what is no drawing, and what is not said, is refused in a sentence', async () => {
    expect((await send('die', 'nothing')).status).toBe(422);
    expect((await send('hammer')).body).toEqual({ error: "'of' says what it is a cross-section of: punch, die, machine." });
  });
});

describe('the condition record', () => {
  test('bounds what its machine is promised on, and what was not measured is not known', async () => {
    const [record] = conditions;
    const { body } = await ask('/api/machines/worn/condition?length=1500');
    expect(body).toMatchObject({ revision: 1, demo: true, figures: { asOf: 'after overhaul', length: 1500, scatter: 0.09 } });
    const unmeasured = { ...record, overhauled: { ...record!.overhauled, repeatability: { ...record!.overhauled!.repeatability, ram: null } } };
    expect((await ask('/api/machines/worn/condition', 'POST', { data: unmeasured, after: 1 })).body).toMatchObject({ revision: 2, change: 'overhauled, repeatability, ram 0.09 to not known' });
    const { machines: now, revisions } = (await ask('/api/machines')).body as { machines: { id: string; repeatability: object }[]; revisions: object };
    expect(now.find(({ id }) => id === 'worn')!.repeatability).toMatchObject({ ram: { source: 'not known' }, x: { value: 0.25, source: 'measured' } });
    expect(revisions).toMatchObject({ worn: { machine: 1, condition: 2 } });
    expect((await ask('/api/machines/general/condition', 'POST', { data: record })).status).toBe(422);
    expect((await ask('/api/machines/none/condition', 'POST', { data: record })).status).toBe(404);
  });
});

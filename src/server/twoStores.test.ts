import { describe, expect, test } from 'vitest';
import { askedServer } from '../../test/askedServer.js';

const [here, there] = [askedServer('here', 'Ann'), askedServer('there', 'Ben')];

describe('from one store to another', () => {
  test('a rack as JSON, with a drawn die, an offset tool and ears, is the same rack there', async () => {
    const { data } = (await here.ask('/api/racks/demo-rack')).body as { data: { dies: object[] } };
    const drawn = { kind: 'die', id: 'drawn', name: 'Drawn, "V 12"', demo: false, tang: 'seat A', shape: 'V', v: 12, vConvention: 'sharp', includedAngle: 90, shoulderRadius: 0, height: 60, rating: 400, reversible: false, segments: [{ length: 100, count: 2 }], weight: 9, price: 120.5,
      profile: { shape: 'contour', corners: [[-20, -60], [20, -60], [20, 0], [6, 0], [0, -6], [-6, 0], [-20, 0]] } };
    expect((await here.post('/api/racks', { data: { ...data, id: 'mine', name: 'Mine', currency: 'GBP', dies: [...data.dies, drawn] } })).status).toBe(201);
    const out = await (await fetch(`${here.url}/api/racks/mine/rack.json`)).text();
    expect((await there.ask('/api/racks/mine')).status).toBe(404);
    expect((await there.post('/api/racks', { data: JSON.parse(out) as unknown })).body).toMatchObject({ id: 'mine', revision: 1, by: 'Ben' });
    const [one, other] = (await Promise.all([here.ask('/api/racks/mine'), there.ask('/api/racks/mine')])).map(({ body }) => body as { data: unknown; rack: unknown });
    expect(other!.data).toEqual(one!.data);
    expect(other!.rack).toEqual(one!.rack);
    expect(await (await fetch(`${there.url}/api/racks/mine/rack.json`)).text()).toBe(out);
  });

  test('a floor as a table and as JSON is the same floor there', async () => {
    const { data } = (await here.ask('/api/machines/general')).body as { data: object };
    expect((await here.post('/api/machines', { data: { ...data, id: 'own', name: '=Own + "wide", new', demo: false, gauge: { ...(data as { gauge: object }).gauge, ownX: { most: 80 } } } })).status).toBe(201);
    const csv = await (await fetch(`${here.url}/api/floor.csv`)).text();
    const taken = (await there.post('/api/floor', { csv })).body as { kept: { id: string }[]; same: string[] };
    expect(taken.kept.map(({ id }) => id)).toEqual(['own']);
    expect(taken.same).toHaveLength(5);
    const floors = await Promise.all([here, there].map(async ({ ask }) => (await ask('/api/floor.json')).body));
    expect(floors[1]).toEqual(floors[0]);
    expect((await there.post('/api/floor', floors[0])).body).toMatchObject({ kept: [] });
  });
});

describe('two at the same thing', () => {
  test('a part: the second change is refused with what stands, and keeps nothing', async () => {
    const id = await here.addAngle();
    expect((await here.post(`/api/parts/${id}/revisions`, { radii: { b1: 2 }, after: 1 })).status).toBe(201);
    const late = await here.post(`/api/parts/${id}/revisions`, { name: 'other', dimensions: [], after: 1 });
    expect([late.status, late.body]).toEqual([409, { error: 'The part stands at revision 2 (Ann: inside radius of b1 2 mm), not at 1, on which this was set: nothing of it is kept. Look at the part as it stands, then set it again.' }]);
    expect((await here.ask(`/api/parts/${id}`)).body).toMatchObject({ revision: 2, name: 'angle' });
    expect((await here.post(`/api/parts/${id}/revisions`, { name: 'other', after: 2 })).body).toMatchObject({ revision: 3, name: 'other' });
  });

  test('a machine that was taken off, and a new one whose id is taken', async () => {
    const { data } = (await here.ask('/api/machines/worn')).body as { data: object };
    expect((await here.post('/api/machines', { data })).body).toEqual({ error: "There is a machine 'worn' already, at revision 1 (program: demonstration data): choose another id, or change that one." });
    expect((await here.ask('/api/machines/worn', { method: 'DELETE', headers: { 'x-by': 'Ann' } })).status).toBe(200);
    expect((await here.post('/api/machines', { data: { ...data, throat: 260 }, after: 1 })).body).toEqual({ error: "The machine 'worn' was taken off with revision 2 (Ann): kept as a new one (after 0) it comes back." });
    expect((await here.post('/api/machines', { data: { ...data, throat: 260 } })).body).toMatchObject({ revision: 3 });
  });
});

import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { askedServer } from '../../test/askedServer.js';

// a file is read four times
vi.setConfig({ testTimeout: 240_000 });
const BRACKET = resolve('../shared/parts/Creality3DPrinting__Ender-3/E_motor_bracket.step');

describe.skipIf(!existsSync(BRACKET))('the unit of a solid', () => {
  const { ask, post, upload, addAngle } = askedServer('solid-unit');
  test('is doubted where the file declares the wrong one, set by hand, and taken back', async () => {
    // the published bracket, 2.5 mm thick, with metres written for its millimetres
    const metres = Buffer.from(readFileSync(BRACKET)).toString('latin1').replaceAll('SI_UNIT ( .MILLI., .METRE. )', 'SI_UNIT ( $, .METRE. )');
    const taken = await upload('bracket.step', metres);
    expect([taken.status, taken.body]).toMatchObject([201, { parts: [{ revision: 1, thickness: 2500 }] }]);
    const { id } = (taken.body as { parts: { id: string }[] }).parts[0]!;
    const said = async (): Promise<unknown> => {
      const { part } = (await ask(`/api/parts/${id}`)).body as { part: { thickness: number; bends: { bendAngle: number }[]; assumptions: { code: string; sentence: string }[] } };
      return [part.thickness, Math.round(part.bends[0]!.bendAngle), part.assumptions.find(({ code }) => code === 'unit')?.sentence];
    };
    expect(await said()).toEqual([2500, 90, expect.stringMatching(/^The file declares metres: .* which no press brake bends\. Is it another unit\? It would be as millimetres 2\.50 mm thick/)]);
    expect(await post(`/api/parts/${id}/revisions`, { unit: 'mm', metal: 'dc01' })).toMatchObject({ status: 201, body: { revision: 2, change: expect.stringMatching(/^unit millimetres; .*, metal /) } });
    expect(await said()).toEqual([2.5, 90, expect.stringMatching(/^Read as millimetres, set by hand \(the file declares metres\): 2\.50 mm thick/)]);
    expect((await ask(`/api/parts/${id}`)).body).toMatchObject({ name: 'bracket', part: { metal: 'dc01' } });
    expect((await post(`/api/parts/${id}/revisions`, { unit: 'mm' })).status).toBe(400);
    expect((await post(`/api/parts/${id}/revisions`, { unit: null })).status).toBe(201);
    expect(await said()).toMatchObject([2500, 90, expect.stringContaining('which no press brake bends')]);
    expect(await post(`/api/parts/${await addAngle()}/revisions`, { unit: 'mm' })).toMatchObject({ status: 422, body: { error: expect.stringMatching(/^This part has no file that could be read in another unit: .*\.$/) } });
  });
});

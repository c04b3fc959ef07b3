import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { type Machine, demoFloor, demoShopData } from '../shop/index.js';
import { asPromised } from './shopFiles.js';

const folder = mkdtempSync(join(tmpdir(), 'brakewright-shop-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const record = (machineId: string): string => {
  const path = join(folder, `${machineId}.json`);
  writeFileSync(path, JSON.stringify({ ...demoShopData().conditions[0], machineId }));
  return path;
};

const judged = (machines: readonly Machine[] | undefined): readonly string[] => (machines ?? []).filter(({ seats }) => seats?.source === 'measured').map(({ id }) => id);

it('a condition record is of a machine of the floor or of one that the buyer brings, never of neither', async () => {
  const theirs: Machine = { ...demoFloor()[0]!, id: 'theirs' };
  const same: Machine = { ...theirs, id: 'general' };
  const before = judged(demoFloor());
  expect(judged((await asPromised({ condition: record('theirs') }, [theirs])).own)).toEqual(['theirs']);
  expect(judged((await asPromised({ condition: record('general') }, [theirs])).floor)).toEqual([...before, 'general'].sort((a, b) => demoFloor().findIndex(({ id }) => id === a) - demoFloor().findIndex(({ id }) => id === b)));
  // one id twice: the record is of the buyer's
  const both = await asPromised({ condition: record('general') }, [same]);
  expect([judged(both.floor), judged(both.own)]).toEqual([before, ['general']]);
  await expect(asPromised({ condition: record('nobody') }, [theirs])).rejects.toThrow("there is no machine 'nobody' on the floor or among those brought along.");
});

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { fitColumns } from '../fit/index.js';
import { metalById } from '../metal/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { demoParts } from '../sheet/index.js';
import { openStore, type Store } from '../store/index.js';
import { FitDesk, type FitOrder, madeWithKey } from './fitDesk.js';
import type { FitView } from './fitTask.js';

let dir: string;
let store: Store;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'brakewright-fit-desk-'));
  const opened = openStore(dir);
  if (!opened.ok) throw new Error(opened.sentence);
  ({ store } = opened);
});
afterEach(async () => {
  vi.restoreAllMocks();
  await store.close();
  rmSync(dir, { recursive: true, force: true });
});

const orderOf = async (): Promise<FitOrder> => {
  const { id } = await store.addPart(demoParts()[0]!, 'ann');
  const columns = fitColumns(demoFloor().slice(0, 1), demoRack());
  return {
    parts: [(await store.part(id))!], columns, metal: metalById('dc01')!, quantity: 1, seconds: 1, asked: { remedies: false }, options: false, owned: [],
    madeWith: { [madeWithKey(columns[0]!)]: { machineRevision: 1, conditionRevision: null, rackId: 'demo-rack', rackRevision: 1, deductionsRevision: null, metalRevision: null } },
  };
};
const full = (): Promise<never> => Promise.reject(new Error('database or disk is full'));
const endOf = (desk: FitDesk, id: string): Promise<FitView> => new Promise((resolve) => {
  desk.watch(id, (view) => {
    if (view.endedAt !== null) resolve(view);
  });
});

describe('fits on a full disk', () => {
  it('end as failed for whoever watches or waits, and the next one has its turn', async () => {
    vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    const order = await orderOf();
    let kept = 0;
    const desk = new FitDesk({ ...store, keepFit: (fit) => (++kept > 2 ? full() : store.keepFit(fit)), cell: full });
    const first = await desk.ask(order, 'ann');
    const second = await desk.ask(order, 'ann');
    const ends = [endOf(desk, first.id), endOf(desk, second.id)];
    await desk.stop(second.id);
    for (const { state, why } of await Promise.all(ends)) expect([state, why]).toEqual(['failed', 'The fit broke off: a defect of the program or a full disk.']);
    await desk.forgetPart(order.parts[0]!.id);
    await desk.close();
  });
});

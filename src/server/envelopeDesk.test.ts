import { afterEach, expect, it, vi } from 'vitest';
import { metalById } from '../metal/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { EnvelopeDesk } from './envelopeDesk.js';
import { HttpError } from './httpError.js';
import type { RunningTrial } from './trialPool.js';

afterEach(() => vi.restoreAllMocks());

const asked = [demoFloor()[0]!, demoRack(), metalById('dc01')!] as const;
const running = (end: RunningTrial['end']): RunningTrial => ({ end, stop: () => undefined, kill: () => Promise.resolve() });
const deskOf = (run: () => RunningTrial): EnvelopeDesk => new EnvelopeDesk({ run, close: () => Promise.resolve() });
const settled = async (desk: EnvelopeDesk, key: string) => {
  for (;;) {
    const view = desk.look(key, ...asked);
    if (view.state !== 'computing') return view;
    await new Promise((resolve) => setTimeout(resolve, 1));
  }
};

it('a plan whose worker died is not decided', async () => {
  const view = await settled(deskOf(() => running(Promise.resolve({ state: 'failed', why: 'It died.' }))), 'a');
  expect(view).toMatchObject({ state: 'done', envelope: { deepest: { depth: { mm: null, decided: false } } } });
});

it('a failure is told once and not kept', async () => {
  vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  const desk = deskOf(() => { throw new Error('a defect'); });
  expect((await settled(desk, 'a')).state).toBe('failed');
  expect(desk.look('a', ...asked)).toEqual({ state: 'computing', plans: 0 });
});

it('one more than may wait is refused as busy, and can be asked for later', () => {
  const desk = deskOf(() => running(new Promise(() => undefined)));
  for (let k = 0; k <= 20; k++) desk.look(String(k), ...asked);
  const refusal = (): unknown => { try { return desk.look('more', ...asked); } catch (error) { return error; } };
  expect(refusal()).toBeInstanceOf(HttpError);
  expect(refusal()).toMatchObject({ status: 503 });
  expect(desk.look('3', ...asked).state).toBe('computing');
});

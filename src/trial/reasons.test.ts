import { expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { pairOf } from './bodies.js';
import type { Conflict } from './conflict.js';
import { noStopIn, reasonsFrom } from './reasons.js';
import { statesOf } from './states.js';

// Found by the check of refusals on a tray with returns: the flange beside the punch was told, 28 mm deep, where the base over it forbade the stroke.
it('what shorter tools would clear is not told where something stands over the tools', () => {
  const { part } = benchParts().find((b) => b.id === 'P7')!;
  const rack = demoRack();
  const pair = pairOf(demoFloor()[0]!, rack.punches[0]!, rack.dies[0]!, 'as drawn');
  const conflict = (note: string, by: number, beside: boolean): Conflict => ({ code: 'clearance', body: 'punch', phase: 'stroke', by, view: null, note, ...(beside ? { beside } : {}) });
  const told = (...conflicts: Conflict[]): readonly string[] => reasonsFrom(
    part, statesOf(part).grouped, [pair],
    [{ action: { group: 0, gaugeSide: 0, pair: 0, sideUp: 'A', towards: 0, base: 0, leastExtra: 0, plainness: 0 }, mask: 0, conflicts }], (_, c) => c,
  ).map((r) => r.tell().sentence);
  const [beside, over] = [conflict('beside the tools', 28, true), conflict('over the tools', 5, false)];
  expect(told(beside, over)).toEqual([expect.stringContaining('over the tools')]);
  // from both sides at once nothing else may be left to tell
  expect(told(beside)).toEqual([expect.stringContaining('beside the tools')]);
});

it('the want of a stop is found behind nearer reasons, where nothing else refuses the stroke', () => {
  const { part } = benchParts().find((b) => b.id === 'P7')!;
  const rack = demoRack();
  const pair = pairOf(demoFloor()[0]!, rack.punches[0]!, rack.dies[0]!, 'as drawn');
  const blocked = (code: Conflict['code'], group: number) => ({
    action: { group, gaugeSide: 0 as const, pair: 0, sideUp: 'A' as const, towards: 0, base: 0, leastExtra: 0, plainness: 0 }, mask: 0,
    conflicts: [{ code, body: 'finger', phase: 'stop' as const, by: 0, view: null, note: 'the fingers find no free place at its height' }],
  });
  const found = (...codes: readonly Conflict['code'][]) => noStopIn(part, statesOf(part).grouped, [pair], codes.map(blocked));
  expect(found('clearance', 'clearance', 'no stop')).toMatchObject({ code: 'no stop', bends: ['b3'] });
  expect(found('clearance', 'way out')).toBeNull();
});

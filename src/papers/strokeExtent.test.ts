import { expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import type { Trial } from '../trial/index.js';
import { channelTrial } from './fixture.js';
import { layoutPicture } from './layoutPicture.js';
import { type Item, extentOf } from './picture.js';
import { strokeExtent } from './strokeExtent.js';

const trial = channelTrial();
const { part } = benchParts().find(({ id }) => id === 'P12')!;
const row = part.bends.slice(0, 4).map(({ id }) => id);
/** Four tabs of 30 mm along 200 mm leave five gaps of 16: from the first tab to the last it is 168. */
const extent = 200 - 2 * 16;
const tabs = (bends: readonly string[]): Trial =>
  ({ ...trial, sheet: { part, allowances: part.bends.map(() => 3.3) }, steps: [{ ...trial.steps[0]!, bends, place: 0 }] });

it('a stroke of four tabs reaches from the first one to the last, in whatever order they are named', () => {
  for (const named of [tabs(row), tabs([...row].reverse())]) {
    const [low, high] = strokeExtent(named, named.steps[0]!);
    expect(high - low).toBeCloseTo(extent, 6);
    // the first named is an outermost one: its own 30 mm, where the line begins, are at one end
    expect([expect.closeTo(0, 6), expect.closeTo(30 - extent, 6)]).toContainEqual(low);
  }
  expect(strokeExtent(trial, trial.steps[0]!)).toEqual([0, 200]);
});

it('the bar of such a stroke on the layout is as long as the stroke', () => {
  const mm = (250 - 8) / trial.machine.length;
  const bar = layoutPicture(tabs(row), { width: 250 }).items.find((item): item is Extract<Item, { kind: 'group' }> => item.kind === 'group' && item.name === 'step 1')!;
  const [[left], [right]] = extentOf(bar.items.filter(({ kind }) => kind === 'polyline'));
  expect((right - left) / mm).toBeCloseTo(extent, 6);
});

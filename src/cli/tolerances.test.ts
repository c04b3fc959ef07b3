import { expect, it } from 'vitest';
import { profilePart } from '../sheet/index.js';
import { withTolerances, withTolerancesOf } from './tolerances.js';

const made = profilePart({ name: 'channel', thickness: 2, insideRadius: 2, width: 100, flanges: [30, 60, 30], turns: [90, 90] });
if (!made.ok) throw new Error(made.failure.sentence);
const part = made.value;
const asked = (...typed: string[]): (string | number | undefined)[] => withTolerances(part, typed).dimensions!.map((it) => it.tolerance ?? it.class);

it('sets one tolerance or class for all, and some by name', () => {
  expect(withTolerances(part, undefined)).toBe(part);
  expect(asked('0.2')).toEqual([0.2, 0.2, 0.2]);
  expect(asked('m', 'd2=0.1')).toEqual(['m', 0.1, 'm']);
  expect(asked('d3=f')).toEqual([undefined, undefined, 'f']);
});

it('refuses what is no tolerance and no dimension', () => {
  for (const wrong of ['-1', 'x', '0', 'd9=0.1', 'd1=']) expect(() => withTolerances(part, [wrong]), wrong).toThrow('--tolerance');
});

it('of several parts: for all, for one part, and for one dimension of a part by its name', () => {
  const other = { ...part, name: 'rail: left' };
  const of = (...typed: string[]): (string | number | undefined)[][] => withTolerancesOf([part, other], typed).map((it) => (it.dimensions ?? []).map((d) => d.tolerance ?? d.class));
  expect(withTolerancesOf([part, other], undefined)).toEqual([part, other]);
  expect(of('m')).toEqual([['m', 'm', 'm'], ['m', 'm', 'm']]);
  // what is asked of one part goes before what is asked of all, in whichever order they are typed
  expect(of('rail: left: d2=0.1', 'rail: left: f', 'm')).toEqual([['m', 'm', 'm'], ['f', 0.1, 'f']]);
  expect(of('channel: 0.2')).toEqual([[0.2, 0.2, 0.2], []]);
  expect(withTolerancesOf([part], ['d2=0.1'])[0]!.dimensions![1]!.tolerance).toBe(0.1);
  expect(() => of('d2=0.1')).toThrow("--tolerance d2=0.1: of which part? Its name goes before it, as 'channel: d2=0.1'.");
  expect(() => of('box: 0.1')).toThrow("--tolerance box: 0.1: there is no part 'box'; there are channel, rail: left.");
});

import { describe, expect, it } from 'vitest';
import { type Part, profilePart } from '../sheet/index.js';
import type { Step, Trial } from '../trial/index.js';
import { liftOf } from './liftOf.js';
import { cautionWords, leavesOpen, pictureWords, strokeInWords } from './strokeWords.js';

const made = profilePart({ name: 'hemmed', thickness: 1.5, insideRadius: 1.5, width: 200, flanges: [10, 40], turns: [{ turn: 180, insideRadius: 0.1 }] });
if (!made.ok) throw new Error(made.failure.sentence);
const hemmed: Part = { ...made.value, bends: made.value.bends.map((b) => ({ ...b, kind: 'hem' as const })) };
const trialOf = (part: Part = hemmed, allowance = 3): Trial => ({ sheet: { part, allowances: part.bends.map(() => allowance) }, metal: { id: 'dc01', name: 'DC01', density: 7850 } }) as unknown as Trial;
const step = (over: Partial<Step>): Step => ({ kind: 'V bend', bends: ['b1'], stop: { kind: 'edge' }, insideRadius: 0.1, ...over }) as Step;
const NO_STOP = { kind: 'none' } as Step['stop'];

describe('a stroke in words', () => {
  it('is named for what it does', () => {
    const trial = trialOf();
    expect(strokeInWords(trial, step({}))).toBe('pre-bend hem b1');
    expect(strokeInWords(trial, step({ kind: 'hem close' }))).toBe('close hem b1');
    expect(strokeInWords(trial, step({ kind: 'offset bend', bends: ['b1', 'b2'] }))).toBe('offset b1 and b2');
    const plain = trialOf({ ...hemmed, bends: hemmed.bends.map((b) => ({ ...b, kind: 'bend' as const })) });
    expect(strokeInWords(plain, step({}))).toBe('bend b1');
    expect(strokeInWords(plain, step({ pass: 1 }))).toBe('begin bend b1');
    expect(strokeInWords(plain, step({ hit: { of: 'b1', number: 2, count: 5 } }))).toBe('hit 2 of 5 of bend b1');
  });

  it('a close is not at the stop by an edge, and is not bent and released', () => {
    expect(pictureWords(step({ kind: 'hem close' }))).toEqual({ before: 'Before: the fold at the fingers', after: 'After: pressed flat' });
    expect(pictureWords(step({ kind: 'hem close', insideRadius: 1, stop: NO_STOP }))).toEqual({ before: 'Before: the fold set by eye', after: 'After: closed to its gap' });
    expect(pictureWords(step({}))).toEqual({ before: 'Before: at the stop', after: 'After: bent and released' });
    expect(pictureWords(step({ stop: NO_STOP })).before).toBe('Before: at the scribed line');
    expect(pictureWords(step({ stop: NO_STOP, pass: 2 })).before).toBe('Before: the bend begun in the V');
  });

  it('the caution tells what moves: in a close nothing swings up', () => {
    expect(cautionWords(step({}))).toContain('swings up');
    expect(cautionWords(step({ kind: 'hem close' }))).toMatch(/hem: the flange closes down/);
    expect(cautionWords(step({ kind: 'hem close' }))).not.toContain('swings up');
    // the higher flange lies still on the high land, at the gauge where its line is behind the middle
    expect(cautionWords(step({ kind: 'offset bend', lineBack: 1 }))).toContain('the flange in front: it goes down');
    expect(cautionWords(step({ kind: 'offset bend', lineBack: -1 }))).toContain('the flange at the gauge: it goes down');
  });

  it('a hem wider than twice 0.1 mm between is an open one', () => {
    expect([0.05, 0.1, 0.2].map((insideRadius) => leavesOpen(step({ insideRadius })))).toEqual([false, false, true]);
  });
});

describe('what there is to lift', () => {
  it('one person lifts a small sheet: no help is asked', () => {
    const { mass, help } = liftOf(trialOf());
    // outside 10 and 40: under 60 mm of blank by 200 by 1.5 at 7850 kg/m3
    expect(mass!).toBeGreaterThan(0.08);
    expect(mass!).toBeLessThan(0.15);
    expect(help).toBe('not asked');
  });

  it('a long or a heavy one asks help, and one of unknown mass does not say', () => {
    const of = (width: number, thickness: number): Trial => {
      const big = profilePart({ name: 'big', thickness, insideRadius: thickness, width, flanges: [500, 500], turns: [90] });
      if (!big.ok) throw new Error(big.failure.sentence);
      return trialOf(big.value, 4);
    };
    expect(liftOf(of(2100, 0.5)).help).toBe('asked');
    // 1.5 m by 1 m by 3 mm: 35 kg
    expect(liftOf(of(1500, 3)).help).toBe('asked');
    expect(liftOf(of(500, 1)).help).toBe('not asked');
    expect(liftOf({ ...of(500, 1), metal: { id: 'unheard of', name: 'unheard of' } }).help).toBe('not known');
  });
});

import { describe, expect, it } from 'vitest';
import { trialInWords } from '../cli/trialWords.js';
import { checkFirst } from '../fit/day/checkFirst.js';
import { channelTrial } from '../papers/fixture.js';
import type { Item } from '../papers/picture.js';
import { sectionPicture } from '../papers/sectionPicture.js';
import { stopRows } from '../papers/stepTables.js';
import type { Step, Trial } from '../trial/index.js';
import { stopX } from './stopX.js';

const plain = channelTrial();
/** The first step's sheet against the finger's step, 25 mm behind its nose. */
const steps = plain.steps.map((step, k): Step => (k > 0 ? step : { ...step, stop: { ...step.stop, face: 'step', x: 92.2, axisX: 67.2 } }));
const trial: Trial = { ...plain, steps };
const [first, second] = steps as [Step, Step];

const textsOf = (items: readonly Item[]): readonly string[] => items.flatMap((it) => (it.kind === 'group' ? textsOf(it.items) : it.kind === 'text' ? [it.text] : []));

describe('the X of a stop', () => {
  it('is what the axis is set to, and where another face than the nose touches that face\'s distance beside it', () => {
    expect(stopX(first)).toEqual({ set: [{ name: 'X axis, set to', value: 67.2 }], face: [{ name: 'Touching face to bend', value: 92.2 }] });
    expect(stopX(second).face).toEqual([]);
    expect(stopX({ ...first, stop: { ...first.stop, kind: 'none' } })).toEqual({ set: [], face: [] });
    const skewed = stopX({ ...first, stop: { ...first.stop, skew: -10 } });
    expect([...skewed.set, ...skewed.face].map(({ name, value }) => `${name} ${value.toFixed(1)}`)).toEqual([
      'X axis, left finger 67.2', 'X axis, right finger 57.2', 'Face to bend, left finger 92.2', 'Face to bend, right finger 82.2',
    ]);
  });

  it('is the same figure on the set-up sheet, in its section, on the command line and in what is checked before', () => {
    expect(stopRows(trial, first, 'mm').slice(0, 3)).toEqual([['X axis, set to', '67.20 mm'], ['R, from die seat', `${first.stop.r.toFixed(2)} mm`], ['Touching face to bend', '92.20 mm']]);
    expect(textsOf(sectionPicture(trial, 1).items)).toEqual(expect.arrayContaining(['X 67.20', 'face 92.20']));
    expect(textsOf(sectionPicture(trial, 2).items).filter((words) => words.startsWith('face'))).toEqual([]);
    const x = second.stop.x.toFixed(2);
    const [head, , one, two] = trialInWords(trial, 'mm').split('\n').filter((_, i, all) => i >= all.findIndex((l) => l.includes('X axis mm')));
    expect(head).toMatch(/X axis mm +face at mm/);
    expect(one).toMatch(/ 67\.20 +92\.20 /);
    expect(two).toMatch(new RegExp(` ${x} +${x} `));
    expect(checkFirst(trial.machine, [trial]).find((words) => words.startsWith('Back gauge'))).toContain('X 38.6 to 67.2 mm');
  });
});

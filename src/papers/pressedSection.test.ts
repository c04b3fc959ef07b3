import { beforeAll, describe, expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { profilePart } from '../sheet/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { type Trial, planTrial } from '../trial/index.js';
import { type Item, type Picture, type Text, extentOf, patchOf } from './picture.js';
import { sectionPicture } from './sectionPicture.js';
import { expectRows, stopRows, strokeRows } from './stepTables.js';

type Turn = Parameters<typeof profilePart>[0]['turns'][number];
const plan = (flanges: readonly number[], turns: readonly Turn[], thickness: number, insideRadius: number): Trial => {
  const made = profilePart({ name: 'pressed', thickness, insideRadius, width: 120, flanges, turns });
  if (!made.ok) throw new Error(made.failure.sentence);
  const machine = demoFloor().find(({ id }) => id === 'general')!;
  return planTrial({ part: made.value, machine, rack: demoRack(), metal: metalById('dc01')!, quantity: 1 }, { now: () => 0 });
};

const texts = (items: readonly Item[]): Text[] =>
  items.flatMap((item) => (item.kind === 'text' ? [item] : item.kind === 'group' ? texts(item.items) : []));

const boxes = (picture: Picture) => texts(picture.items).map((item) => {
  const patch = patchOf(item);
  const air = item.size * 0.16;
  const [xs, ys] = [patch.map((p) => p[0]), patch.map((p) => p[1])];
  return { words: item.text, x0: Math.min(...xs) + air, x1: Math.max(...xs) - air, y0: Math.min(...ys) + air, y1: Math.max(...ys) - air };
});

/** Places on the set-up sheet, lying and upright, and of the page. */
const SIZES = [[180, 97], [152, 82], [97, 97], [180, 74]] as const;

const fitsEverywhere = (picture: (width: number, height: number) => Picture): void => {
  it.each(SIZES)('on %f by %f mm nothing leaves the paper, no words stand over words', (width, height) => {
    const drawn = picture(width, height);
    const [[x0, y0], [x1, y1]] = extentOf(drawn.items);
    expect([x0 >= 0, y0 >= 0, x1 <= width, y1 <= height], `${x0} ${y0} ${x1} ${y1}`).toEqual([true, true, true, true]);
    const all = boxes(drawn);
    expect(all.flatMap((a, i) => all.slice(i + 1).filter((b) => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1).map((b) => `${a.words} / ${b.words}`))).toEqual([]);
  });
};

describe('a hem being closed, on paper', () => {
  let trial: Trial;
  beforeAll(() => {
    trial = plan([60, 10], [{ turn: 180, insideRadius: 0.1 }], 1.5, 1.5);
  });
  fitsEverywhere((width, height) => sectionPicture(trial, 2, { width, height }));

  it('shows touch, half way and flat: the height of the hem, the ram\'s way, X to the fold', () => {
    const words = texts(sectionPicture(trial, 2).items).map((t) => t.text);
    const { depth, stop } = trial.steps[1]!;
    // twice 1.5 mm of sheet and 0.2 mm between; half the way higher before
    for (const said of ['Touch', 'Half the ram\'s way', 'Pressed flat', '3.20', (3.2 + depth / 2).toFixed(2), (3.2 + depth).toFixed(2), (depth / 2).toFixed(2), depth.toFixed(2), `X ${stop.x.toFixed(2)}`]) expect(words).toContain(said);
    expect(words).toContain('ram 93.20 mm over the die seat');
  });

  it('the tables give no figure of a bend in a V', () => {
    const [, step] = trial.steps;
    const names = [...stopRows(trial, step!, 'mm'), ...strokeRows(step!, 'mm'), ...expectRows(trial, step!, 'mm')].map(([name]) => name);
    for (const name of ['Touching face to bend', 'Depth from touch', 'Ram, tip from die seat', 'Crowning', 'Bend angle', 'Included angle', 'Bend / incl. under load', 'Inside radius']) expect(names).not.toContain(name);
    expect(expectRows(trial, step!, 'mm').slice(0, 2)).toEqual([['Height of the hem, flat', '3.20 mm'], ['Gap inside the hem', '0.20 mm']]);
  });
});

describe('an offset being made, on paper', () => {
  let trial: Trial;
  beforeAll(() => {
    trial = plan([60, 3.5, 60], [90, -90], 1, 0.5);
  });
  fitsEverywhere((width, height) => sectionPicture(trial, 1, { width, height }));

  it('shows touch, half way and pressed: over both flanges, the ram\'s way', () => {
    const words = texts(sectionPicture(trial, 1).items).map((t) => t.text);
    // the step of 2.5 mm from the touch of 1 mm of sheet on a die of 90; 3.5 over both
    for (const said of ['Touch', 'Half the ram\'s way', 'Pressed', '3.50', '2.50', '1.25', 'ram 91.00 mm over the die seat', 'ram 89.75 mm over the die seat', 'ram 88.50 mm over the die seat']) expect(words).toContain(said);
  });

  it('the tables give the step and what is over both flanges', () => {
    expect(expectRows(trial, trial.steps[0]!, 'mm').slice(0, 4)).toEqual([
      ['Over both flanges', '3.50 mm'], ['Offset, face to face', '2.50 mm'], ['Both bends, bend / incl.', '90.0° / 90.0°'], ['Inside radius of both', '0.50 mm'],
    ]);
  });
});

import { describe, expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { blank } from '../sheet/index.js';
import { blankPicture } from './blankPicture.js';
import { channelTrial } from './fixture.js';
import { layoutPicture } from './layoutPicture.js';
import { partPicture } from './partPicture.js';
import { type Item, type Picture, type Text, extentOf, patchOf } from './picture.js';
import { pictureToSvg } from './pictureToSvg.js';
import { sectionPicture } from './sectionPicture.js';
import { stepPicture } from './stepPicture.js';
import { unfoldingPath } from './unfoldingPath.js';

const trial = channelTrial();
const flat = blank(trial.sheet);
if (!flat.ok) throw new Error(flat.failure.sentence);
const tray = benchParts().find(({ id }) => id === 'P8')!.part;
const traySheet = { part: tray, allowances: tray.bends.map(() => 3.3) };

const nested = benchParts().find(({ id }) => id === 'P10')!.part;
const nestedSheet = { part: nested, allowances: nested.bends.map(() => 3.3) };
const nestedFlat = blank(nestedSheet);
if (!nestedFlat.ok) throw new Error(nestedFlat.failure.sentence);
/** No plan, but the shape of one: 16 steps in as many places. */
const sixteen = {
  ...trial,
  sheet: nestedSheet,
  steps: nested.bends.map(({ id }, k) => ({ ...trial.steps[0]!, number: k + 1, bends: [id], place: 7 * k })),
};

const pictures: readonly [string, Picture][] = [
  ['part', partPicture(trial.sheet)],
  ['tray', partPicture(traySheet)],
  ['blank', blankPicture(flat.value)],
  ['blank of nested arms', blankPicture(nestedFlat.value, { width: 60, height: 40 })],
  ['path', unfoldingPath(trial)],
  ['path of 16 steps', unfoldingPath(sixteen)],
  ['layout of 16 steps', layoutPicture(sixteen)],
  ['layout of 16 steps on little paper', layoutPicture(sixteen, { mostHeight: 45 })],
  ['layout', layoutPicture(trial)],
  ['layout in inches', layoutPicture(trial, { units: 'in' })],
  ...[1, 2].flatMap((n): [string, Picture][] => [
    [`step ${n} before`, stepPicture(trial, n, 'before')],
    [`step ${n} after`, stepPicture(trial, n, 'after')],
    [`step ${n} close-up`, stepPicture(trial, n, 'before', { closeup: true })],
    [`step ${n} section`, sectionPicture(trial, n)],
  ]),
];

const texts = (items: readonly Item[]): Text[] =>
  items.flatMap((item) => (item.kind === 'text' ? [item] : item.kind === 'group' ? texts(item.items) : []));

describe('pictures', () => {
  for (const [name, picture] of pictures) {
    it(`${name}: nothing leaves the paper`, () => {
      const [[x0, y0], [x1, y1]] = extentOf(picture.items);
      expect([x0 >= 0, y0 >= 0, x1 <= picture.width, y1 <= picture.height], `${x0} ${y0} ${x1} ${y1}`).toEqual([true, true, true, true]);
    });

    it(`${name}: no words over words`, () => {
      const boxes = texts(picture.items).map((item) => {
        const patch = patchOf(item);
        // the letters themselves, without the air of their patch
        const air = item.size * 0.16;
        const [xs, ys] = [patch.map((p) => p[0]), patch.map((p) => p[1])];
        return { words: item.text, x0: Math.min(...xs) + air, x1: Math.max(...xs) - air, y0: Math.min(...ys) + air, y1: Math.max(...ys) - air };
      });
      const over = boxes.flatMap((a, i) =>
        boxes.slice(i + 1).filter((b) => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1).map((b) => `${a.words} / ${b.words}`),
      );
      expect(over).toEqual([]);
    });

    it(`${name}: well-formed SVG with a title`, () => {
      const svg = pictureToSvg(picture);
      expect(faultOf(svg)).toBe('');
      expect(svg).toContain(`<title id="picture-title">`);
      expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    });
  }

  it('say which side is which by letter and hatching', () => {
    const after = stepPicture(trial, 2, 'before');
    expect(texts(after.items).map((t) => t.text)).toEqual(expect.arrayContaining(['A', 'B']));
    expect(after.items.some((item) => item.kind === 'strokes' && item.pen === 'hatch' && item.lines.length > 20)).toBe(true);
    // the flat blank from above shows no B side, so nothing is hatched
    const before = stepPicture(trial, 1, 'before');
    expect(texts(before.items).map((t) => t.text)).not.toContain('B');
    expect(before.items.some((item) => item.kind === 'strokes' && item.pen === 'hatch')).toBe(false);
  });

  it('the ruler on the bed counts from its middle, in the unit asked for', () => {
    const figures = (units: 'mm' | 'in'): string[] => texts(stepPicture(trial, 2, 'after', { units }).items).map((t) => t.text);
    expect(figures('mm')).toEqual(expect.arrayContaining(['−100', '0', '100']));
    // tools from -100 to 100 mm and 35 mm of bed beside them: 135 mm is 5.3 inches
    expect(figures('in')).toEqual(expect.arrayContaining(['−4', '0', '4']));
  });

  it('the section bears the figures of the step', () => {
    const words = texts(sectionPicture(trial, 1).items).map((t) => t.text);
    // X = 37 + (pi/2)(1.5 + 0.6)/2 = 38.649; die 90 high; R 0.3 above its top; ram = 90 + 1.5 - 4.62
    expect(words).toEqual(expect.arrayContaining(['X 38.65', 'R 90.30', 'depth 4.62', 'ram 86.88', 'outside 40.00 ±0.30']));
  });

  it('the same in inches', () => {
    const words = texts(sectionPicture(trial, 1, { units: 'in' }).items).map((t) => t.text);
    // 38.649/25.4 = 1.5216, 90.3/25.4 = 3.5551, 4.62/25.4 = 0.18189, 86.88/25.4 = 3.42047, 40/25.4 = 1.5748, 0.3/25.4 = 0.0118
    expect(words).toEqual(expect.arrayContaining(['X 1.522', 'R 3.555', 'depth 0.1819', 'ram 3.4205', 'outside 1.575 ±0.012']));
  });

  it('the path has a station for the blank and one for each step', () => {
    const names = unfoldingPath(trial).items.flatMap((item) => (item.kind === 'group' ? [item.name] : []));
    expect(names).toEqual(['blank', 'step 1', 'step 2']);
  });

  it('the path says a bend angle to the tenth where it is not whole', () => {
    const half = { ...trial, steps: trial.steps.map((s, k) => ({ ...s, bendAngle: k === 0 ? 22.5 : 90.02 })) };
    const words = texts(unfoldingPath(half).items).map((t) => t.text);
    expect(words).toEqual(expect.arrayContaining(['b1  22.5° bend', 'b2  90° bend: finished']));
  });

  it('a layout that must be low is low, one bar standing for all of a station', () => {
    const low = layoutPicture(sixteen, { mostHeight: 45 });
    expect(low.height).toBeLessThanOrEqual(45);
    expect(texts(low.items).map((t) => t.text)).toContain(
      'steps 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16: places on their sheets',
    );
  });
});

/** What is wrong with a document as XML, '' when nothing: tags nest, attributes are quoted and unique, no bare & or <. */
const faultOf = (xml: string): string => {
  const open: string[] = [];
  let at = 0;
  while (at < xml.length) {
    const next = xml.indexOf('<', at);
    const words = xml.slice(at, next < 0 ? xml.length : next);
    if (/&(?!(amp|lt|gt|quot);)/.test(words) || words.includes('>')) return `bare sign in "${words}"`;
    if (next < 0) break;
    const end = xml.indexOf('>', next);
    if (end < 0) return 'a tag does not end';
    const tag = xml.slice(next + 1, end);
    at = end + 1;
    if (tag.startsWith('/')) {
      if (open.pop() !== tag.slice(1)) return `</${tag.slice(1)}> closes nothing`;
      continue;
    }
    const parsed = /^([a-z]+)((?:\s+[A-Za-z:-]+="[^"<&]*")*)\s*(\/?)$/.exec(tag.replace(/&(amp|lt|gt|quot);/g, ''));
    if (!parsed) return `not a tag: <${tag}>`;
    const names = [...parsed[2]!.matchAll(/([A-Za-z:-]+)=/g)].map((m) => m[1]);
    if (new Set(names).size !== names.length) return `an attribute twice in <${tag}>`;
    if (parsed[3] === '') open.push(parsed[1]!);
  }
  return open.length > 0 ? `<${open[open.length - 1]!}> stays open` : '';
};

import { describe, expect, it } from 'vitest';
import type { Vec2 } from '../geometry/index.js';
import type { Station, Trial } from '../trial/index.js';
import { channelTrial } from './fixture.js';
import { labelRow } from './labelRow.js';
import { layoutPicture } from './layoutPicture.js';
import { type Item, type Picture, extentOf, patchOf } from './picture.js';

const trial = channelTrial();

/** Stations of one 40 mm segment each with their left ends at these places, every other one 60 mm higher: the leaders end at two heights. */
const standing = (places: readonly number[]): Trial => ({
  ...trial,
  stations: places.map((from, k): Station => {
    const segments = [{ length: 40, from }];
    const raised = k % 2 === 0 ? 0 : 60;
    return { ...trial.stations[0]!, id: `S${k + 1}`, riser: raised, dieTop: trial.stations[0]!.dieTop + raised, punchSegments: segments, dieSegments: segments };
  }),
});

const all = (items: readonly Item[]): Item[] => items.flatMap((item) => (item.kind === 'group' ? all(item.items) : [item]));
/** The leaders of a layout as polylines, and the corners of all letters on it. */
const leadersOf = (picture: Picture): Vec2[][] =>
  picture.items.flatMap((item) => (item.kind === 'group' && item.name === 'leader' ? [item.items.flatMap((it) => (it.kind === 'polyline' && it.points.length > 2 ? it.points : []))] : []));
const lettersOf = (picture: Picture): Vec2[][] => all(picture.items).flatMap((item) => (item.kind === 'text' ? [patchOf(item)] : []));

const side = (a: Vec2, b: Vec2, p: Vec2): number => Math.sign((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]));
const cross = ([a, b]: readonly [Vec2, Vec2], [c, d]: readonly [Vec2, Vec2]): boolean => side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b);
const pieces = (line: readonly Vec2[], closed = false): [Vec2, Vec2][] => line.flatMap((p, i): [Vec2, Vec2][] => (i + 1 < line.length ? [[p, line[i + 1]!]] : closed ? [[p, line[0]!]] : []));
const meet = (a: readonly [Vec2, Vec2][], b: readonly [Vec2, Vec2][]): boolean => a.some((p) => b.some((q) => cross(p, q)));

const rows: Readonly<Record<string, readonly number[]>> = {
  'side by side in the middle': [-100, -50, 0, 50, 100],
  'at the left end': [-1500, -1450, -1400, -1350],
  'at the right end': [1300, 1350, 1400, 1450],
  'given out of order': [200, -300, 150, -350, 1400],
  'fourteen of them': Array.from({ length: 14 }, (_, k) => -700 + 50 * k),
};

describe('names of the stations over the bed', () => {
  for (const [name, places] of Object.entries(rows)) {
    for (const width of [250, 120]) {
      it(`${name}, ${width} mm wide: no leader crosses another or letters`, () => {
        const picture = layoutPicture(standing(places), { width });
        const leaders = leadersOf(picture);
        expect(leaders).toHaveLength(places.length);
        const lines = leaders.map((line) => pieces(line));
        const letters = lettersOf(picture).map((ring) => pieces(ring, true));
        expect(lines.flatMap((a, i) => lines.slice(i + 1).filter((b) => meet(a, b)))).toEqual([]);
        expect(lines.flatMap((a) => letters.filter((b) => meet(a, b)))).toEqual([]);
        // nor do the names cover each other
        const boxes = leaders.map((_, i) => all(picture.items.filter((it) => it.kind === 'group' && it.name === 'leader')).filter((it) => it.kind === 'text')[i]!).map((it) => extentOf([it]));
        boxes.sort((a, b) => a[0][0] - b[0][0]);
        boxes.slice(1).forEach((box, i) => expect(box[0][0]).toBeGreaterThan(boxes[i]![1][0]));
        // each ends over the middle of its station: 20 mm right of its left end on the bed's scale
        const scale = (width - 8) / trial.machine.length;
        expect(leaders.map((line) => line.at(-1)![0]).sort((a, b) => a - b)).toEqual([...places].sort((a, b) => a - b).map((from) => expect.closeTo(width / 2 + (from + 20) * scale, 6)));
      });
    }
  }
});

describe('labels in a row', () => {
  it('stand where they wish, share what they both lack, and keep within the ends', () => {
    expect(labelRow([10, 40], [6, 6], 0, 50, 2)).toEqual([10, 40]);
    // 8 apart, and both 4 from the wish that they share
    expect(labelRow([20, 20], [6, 6], 0, 50, 2)).toEqual([16, 24]);
    expect(labelRow([0, 50], [6, 6], 0, 50, 2)).toEqual([3, 47]);
    expect(labelRow([1, 1], [6, 6], 0, 50, 2)).toEqual([3, 11]);
    expect(labelRow([5, 5], [6, 6], 0, 14, 2)).toEqual([3, 11]);
    expect(labelRow([5, 5], [6, 6], 0, 13, 2)).toBeNull();
  });
});

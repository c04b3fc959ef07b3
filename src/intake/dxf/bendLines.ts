import { type Vec2, add2, cross2, dot2, left2, length2, scale2, sub2, unit2 } from '../../geometry/index.js';
import { type BendWords, bendWords } from './bendWords.js';
import type { Curve, DrawnText } from './dxfCurves.js';

/** A bend line as drawn, with what is written near it. mm */
export interface DrawnBend {
  readonly from: Vec2;
  readonly to: Vec2;
  /** From its layer. */
  readonly side: 'A' | 'B' | undefined;
  readonly words: BendWords | undefined;
  /** The lines it was joined from: a line with gaps is one. */
  readonly spans: readonly (readonly [number, number])[];
  /** It was taken for a bend line by its place, not by its layer. */
  readonly doubtful: boolean;
}

/** mm by which pieces of one bend line may lie beside one another: what a drawing's rounding leaves, far below what a brake can tell. */
const IN_LINE = 0.02;
/** Letter heights (and at least this many mm) within which writing belongs to a line. */
const LETTERS = 3;
const NEAR = 8;
/** How little the way along a line counts beside the way to it. */
const OFF = 0.01;

const distance = (p: Vec2, from: Vec2, to: Vec2): number => {
  const d = sub2(to, from);
  const share = Math.max(0, Math.min(1, dot2(sub2(p, from), d) / dot2(d, d)));
  return length2(sub2(p, add2(from, scale2(d, share))));
};

interface Told {
  readonly words: BendWords;
  readonly text: DrawnText;
}

/** The writing nearest to each line, each piece of writing given to one line alone. */
const assign = (lines: readonly { readonly from: Vec2; readonly to: Vec2 }[], texts: readonly Told[]): (BendWords | undefined)[] => {
  const pairs = texts.flatMap((told, t) =>
    lines.flatMap(({ from, to }, line) => {
      const ends = [told.text.from, told.text.to, scale2(add2(told.text.from, told.text.to), 0.5)];
      const apart = Math.min(...ends.map((p) => distance(p, from, to)));
      const way = unit2(sub2(told.text.to, told.text.from));
      const turned = Math.abs(cross2(way, unit2(sub2(to, from))));
      // where two lines are equally near: the one that the writing runs along, then the one at whose middle it begins
      const middle = scale2(add2(from, to), 0.5);
      const off = 2 * length2(sub2(told.text.from, middle)) + length2(sub2(ends[2]!, middle));
      return apart <= Math.max(NEAR, LETTERS * told.text.height) ? [{ t, line, apart: apart + turned * told.text.height + OFF * off }] : [];
    }),
  );
  pairs.sort((p, q) => p.apart - q.apart);
  const [given, used] = [lines.map((): BendWords | undefined => undefined), new Set<number>()];
  for (const { t, line } of pairs) {
    if (used.has(t)) continue;
    const { words } = texts[t]!;
    const known = given[line];
    // angle and radius may stand in two lines of writing
    const adds = known === undefined || Object.keys(words).every((key) => !(key in known));
    if (!adds) continue;
    used.add(t);
    given[line] = { ...words, ...known };
  }
  return given;
};

/**
 * The straight lines (mm) as bend lines: pieces in one line that bear no writing of their own are joined. `side` and `doubtful` say of
 * each curve what its layer says.
 */
export const bendLinesOf = (
  curves: readonly (Pick<Curve, 'from' | 'to'> & { readonly side: 'A' | 'B' | undefined; readonly doubtful: boolean })[],
  texts: readonly DrawnText[],
): readonly DrawnBend[] => {
  const told = texts.flatMap((text): Told[] => {
    const words = bendWords(text.words);
    return words === null ? [] : [{ words, text }];
  });
  const given = assign(curves, told);
  const bends: { from: Vec2; to: Vec2; side: 'A' | 'B' | undefined; words: BendWords | undefined; spans: (readonly [number, number])[]; doubtful: boolean }[] = [];
  curves.forEach((curve, i) => {
    const way = unit2(sub2(curve.to, curve.from));
    const words = given[i];
    const known = bends.find((bend) => {
      const along = unit2(sub2(bend.to, bend.from));
      const off = (p: Vec2): number => Math.abs(dot2(sub2(p, bend.from), left2(along)));
      const differ = words !== undefined && bend.words !== undefined && JSON.stringify({ ...words, id: '' }) !== JSON.stringify({ ...bend.words, id: '' });
      const twoNames = words?.id !== undefined && bend.words?.id !== undefined;
      return off(curve.from) < IN_LINE && off(curve.to) < IN_LINE && Math.abs(cross2(way, along)) < 1e-3 && !differ && !twoNames && curve.side === bend.side;
    });
    if (known === undefined) {
      const length = length2(sub2(curve.to, curve.from));
      bends.push({ from: curve.from, to: curve.to, side: curve.side, words, spans: [[0, length]], doubtful: curve.doubtful });
      return;
    }
    const along = unit2(sub2(known.to, known.from));
    const ends = [dot2(sub2(curve.from, known.from), along), dot2(sub2(curve.to, known.from), along)] as const;
    known.spans.push([Math.min(...ends), Math.max(...ends)]);
    known.words ??= words;
  });
  return bends;
};

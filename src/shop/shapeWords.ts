import { figureOrWord } from './csvTable.js';
import type { Result } from './result.js';

type Raw = Readonly<Record<string, unknown>>;

/** Parameters that are two figures: from, to. */
const PAIRS = new Set(['back', 'up']);

/** A cross-section in one line: its shape and its parameters by name, or 'contour' and its corners. */
export const shapeInWords = (section: unknown): string => {
  const { shape, ...rest } = section as Raw;
  if (shape === 'contour') return `contour ${(rest['corners'] as readonly (readonly number[])[]).map((c) => c.join(' ')).join('; ')}`;
  return [shape as string, ...Object.entries(rest).map(([name, value]) => `${name} ${[value].flat().join(' ')}`)].join(' ');
};

/** 'min 4 max 400' as data for the parser; undefined where a name stands without its figure. */
export const namedFigures = (words: readonly string[]): Raw | undefined => {
  const out: Record<string, unknown> = {};
  for (let i = 0; i < words.length;) {
    const name = words[i]!;
    const figures = words.slice(i + 1, i + (PAIRS.has(name) ? 3 : 2)).map(figureOrWord);
    if (figures.length < (PAIRS.has(name) ? 2 : 1)) return undefined;
    out[name] = PAIRS.has(name) ? figures : figures[0];
    i += figures.length + 1;
  }
  return out;
};

/** 'block topWidth 26 baseWidth 30 stepAt 30 flat 0.6' or 'contour 0 0; 10 20 0.1; ...' as data for the parser. */
export const shapeFromWords = (text: string): Result<Raw, string> => {
  const [shape = '', ...words] = text.trim().split(/\s+/);
  if (shape === 'contour') {
    const corners = text.trim().slice('contour'.length).split(';').map((c) => c.trim().split(/\s+/).map((word) => Number(word.replace(',', '.'))));
    return corners.some((c) => c.some(Number.isNaN)) ? { ok: false, fault: 'the corners of a contour are numbers: back up [bulge], with ; between corners' } : { ok: true, value: { shape, corners } };
  }
  const figures = namedFigures(words);
  if (shape === '' || figures === undefined) return { ok: false, fault: "a profile is a shape and its parameters by name, as in 'block topWidth 26 baseWidth 30 stepAt 30 flat 0.6', or 'contour' and its corners" };
  return { ok: true, value: { shape, ...figures } };
};

import { MINUS } from '../wording.js';
import { figureTyped, twoReadings } from './figureTyped.js';

/** What a typed figure must be. */
export interface FigureRange {
  /** Its name, as it stands in a sentence: 'thickness'. */
  readonly what: string;
  readonly least: number;
  readonly most: number;
  readonly unit?: 'mm' | 'degrees';
  /** `least` itself is too little. */
  readonly above?: boolean;
  readonly whole?: boolean;
  readonly mayStayOut?: boolean;
}

type FigureRead = { readonly ok: true; readonly value: number | undefined } | { readonly ok: false; readonly sentence: string };

/** Pieces bent with one set-up. */
export const PIECES: FigureRange = { what: 'quantity', least: 1, most: 1_000_000, whole: true };

const shown = (value: number): string => String(value).replace('-', MINUS);

/** The figure of a field, in its unit, undefined where it is empty and may be; or what is wrong with it, in one sentence. */
export const figureWithin = (text: string, { what, least, most, unit, above = false, whole = false, mayStayOut = false }: FigureRange): FigureRead => {
  if (text.trim() === '' && mayStayOut) return { ok: true, value: undefined };
  const typed = figureTyped(text);
  if (typeof typed === 'number' && (above ? typed > least : typed >= least) && typed <= most && !(whole && !Number.isInteger(typed))) return { ok: true, value: typed };
  const name = what.charAt(0).toUpperCase() + what.slice(1);
  const range = above ? `more than ${shown(least)} and at most ${shown(most)}` : `from ${shown(least)} to ${shown(most)}`;
  const must = `${whole ? 'a whole number ' : ''}${range}${unit === undefined ? '' : ` ${unit}`}`;
  if (text.trim() === '') return { ok: false, sentence: `${name} is missing: it must be ${must}.` };
  if (typeof typed === 'string') return { ok: false, sentence: twoReadings(text) ?? `${name} must be ${must}; “${text.trim()}” is no figure.` };
  return { ok: false, sentence: `${name} must be ${must}, not ${shown(typed)}.` };
};

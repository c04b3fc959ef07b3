import type { Side } from '../../sheet/index.js';

/** What a line of writing says of a bend. */
export interface BendWords {
  readonly id?: string;
  /** Degrees turned through. */
  readonly bendAngle?: number;
  /** The writing named the included angle. */
  readonly included?: true;
  readonly direction?: Side;
  /** In the drawing's unit. */
  readonly insideRadius?: number;
}

const NUMBER = '(\\d+(?:[.,]\\d+)?)';
const INCLUDED = new RegExp(`(?:included|incl\\.?)(?: angle)?[^\\d]{0,4}${NUMBER}`, 'i');
const ANGLE = new RegExp(`${NUMBER}\\s*(?:°|deg(?:rees?)?\\b|grad\\b)`, 'i');
const RADIUS = new RegExp(`(?:\\binside radius|\\bradius|\\bir|\\br)\\s*[=:]?\\s*${NUMBER}`, 'i');
const UP = /\b(?:up|auf|hoch|oben)\b|\bA\b|\btowards A\b/;
const DOWN = /\b(?:down|dn|ab|unten)\b|\bB\b|\btowards B\b/;
const ALONE = /^\s*(?:up|auf|hoch|oben|down|dn|ab|unten)\s*$/i;
const ID = /^\s*(b\d{1,4})\b/;

const value = (match: RegExpExecArray | null): number | undefined => (match === null ? undefined : Number(match[1]!.replace(',', '.')));

/**
 * Reads an angle, a direction and an inside radius out of a line of writing; null where it speaks of no bend. A bare angle is taken as
 * the bend angle. The words are those that stand on drawings (common practice, no source) and our own of `blankDxf`.
 *
 * @example bendWords('b2 A bend 90°, inside radius 1.5') // { id: 'b2', bendAngle: 90, direction: 'A', insideRadius: 1.5 }
 */
export const bendWords = (words: string): BendWords | null => {
  const included = value(INCLUDED.exec(words));
  const bendAngle = included === undefined ? value(ANGLE.exec(words)) : 180 - included;
  const insideRadius = value(RADIUS.exec(words));
  // 'UP' and 'up' alike, but a lower-case 'a' or 'b' is no side
  const lower = words.replace(/[A-Z]{2,}/g, (word) => word.toLowerCase());
  const sides = [UP.test(lower) ? ('A' as const) : [], DOWN.test(lower) ? ('B' as const) : []].flat();
  const id = ID.exec(words)?.[1];
  const known = bendAngle !== undefined && bendAngle > 0 && bendAngle <= 180;
  if (!known && insideRadius === undefined && !ALONE.test(words)) return null;
  return {
    ...(id === undefined ? {} : { id }),
    ...(known ? { bendAngle } : {}),
    ...(known && included !== undefined ? { included: true as const } : {}),
    ...(sides.length === 1 ? { direction: sides[0]! } : {}),
    ...(insideRadius === undefined ? {} : { insideRadius }),
  };
};

/** The thickness (mm) and the rule that one of our own notes names. */
export const noteWords = (words: string): { readonly thickness?: number; readonly rule?: string } => {
  const thickness = value(new RegExp(`${NUMBER} mm thick`).exec(words));
  const rule = /Nominal by rule ([^.]+(?:\.\d+)?)\./.exec(words)?.[1];
  return { ...(thickness === undefined ? {} : { thickness }), ...(rule === undefined ? {} : { rule }) };
};

import { CLOSED_HEM_RADIUS } from './closedHemRadius.js';
import type { Part } from './part.js';
import { type FlangeLength, type Measure, type Profile, profilePart } from './profilePart.js';
import type { Turn } from './sketch.js';

/** What a typed line says wrong, and where: characters from `from` to `to` (counted from 0, `to` not included). */
export interface LineFault {
  readonly from: number;
  readonly to: number;
  /** One sentence that names the place. */
  readonly sentence: string;
}

type LineResult<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly fault: LineFault };

/** The notation, word by word: what is written and what it means (docs/profile.md says the same at more length). */
export const PROFILE_WORDS: readonly (readonly [written: string, means: string])[] = [
  ['40', 'a flange, mm, outside length (as on a drawing)'],
  ['40i 40f', 'inside length; flat length between the tangent lines'],
  ['^90 v90', 'a bend up (towards the A side, the one you look at) or down, by its bend angle: 90 square, 180 folded back'],
  ['^90r3', 'a bend with an inside radius of its own'],
  ['^closed', 'a closed hem; vclosed downwards'],
  ['^open2', 'an open hem with 2 mm between its faces; vopen2 downwards'],
  ['t1.5', 'thickness (or: thick 1.5), wanted'],
  ['w200', 'width, the length of all bend lines (or: wide 200), wanted'],
  ['r2', 'inside radius of all bends without one of their own (or: radius 2); the thickness if left out'],
];

export const PROFILE_EXAMPLE = '40 ^90 60 v45 30  t1.5 w200 r2';

/** The notation in one screen. */
export const PROFILE_HELP = [
  'A profile is typed along its length: flange, bend, flange, bend, flange, then what holds for all.',
  '',
  `  ${PROFILE_EXAMPLE}`,
  '',
  ...PROFILE_WORDS.map(([written, means]) => `  ${written.padEnd(10)}${means}`),
].join('\n');

const MOST_FLANGES = 100;
const LONGEST = 20_000;
const LARGEST_RADIUS = 5_000;

const NUMBER = '\\d+(?:[.,]\\d+)?|[.,]\\d+';
const SETTING = new RegExp(`(thick|t|wide|w|radius|r)\\s*(${NUMBER})(?![\\w.,])`, 'y');
const FLANGE = new RegExp(`(${NUMBER})([oif]?)(?![\\w.,])`, 'y');
const BEND = new RegExp(`([v^])\\s*(?:(closed)|(?:(open)\\s*)?(${NUMBER})(?:\\s*r\\s*(${NUMBER}))?)(?![\\w.,])`, 'y');
const WORD = /\S+/y;

const MEASURES: Readonly<Record<string, Measure>> = { '': 'outside', o: 'outside', i: 'inside', f: 'flat' };
const SETTINGS = { t: 'thickness', w: 'width', r: 'insideRadius' } as const;
const NAMES = { thickness: 'thickness (t1.5)', width: 'width (w200)', insideRadius: 'inside radius (r2)' } as const;

const valueOf = (text: string): number => Number(text.replace(',', '.'));

/** A profile from a typed line, with the place of each flange and bend in it. */
export const lineProfile = (line: string, name: string): LineResult<{ readonly profile: Profile; readonly flanges: readonly (readonly [number, number])[] }> => {
  const flanges: FlangeLength[] = [];
  const turns: Turn[] = [];
  const places: (readonly [number, number])[] = [];
  const found: { thickness?: number; width?: number; insideRadius?: number } = {};
  let at = 0;
  const fault = (from: number, to: number, words: string): { readonly ok: false; readonly fault: LineFault } => {
    const what = to > from ? `At character ${from + 1}, "${line.slice(from, Math.min(to, from + 20))}": ` : `At the end: `;
    return { ok: false, fault: { from, to, sentence: what + words } };
  };
  const take = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    const match = pattern.exec(line);
    if (match !== null) at += match[0].length;
    return match;
  };
  for (;;) {
    while (at < line.length && /\s/.test(line[at]!)) at += 1;
    if (at >= line.length) break;
    const start = at;
    const setting = take(SETTING);
    if (setting !== null) {
      const key = SETTINGS[setting[1]![0] as keyof typeof SETTINGS];
      const value = valueOf(setting[2]!);
      if (found[key] !== undefined) return fault(start, at, `the ${NAMES[key]} is given twice.`);
      const most = key === 'insideRadius' ? LARGEST_RADIUS : LONGEST;
      if (value > most || (value <= 0 && key !== 'insideRadius')) return fault(start, at, `the ${NAMES[key]} lies ${key === 'insideRadius' ? 'from 0' : 'above 0'} and up to ${most} mm.`);
      found[key] = value;
      continue;
    }
    const wantsFlange = flanges.length === turns.length;
    if (wantsFlange) {
      const flange = take(FLANGE);
      if (flange === null) {
        take(WORD);
        const bend = /^[v^]/.test(line.slice(start));
        return fault(start, at, bend ? `${flanges.length === 0 ? 'a profile begins with a flange' : 'between two bends there is a flange'}: give its length first.` : 'a flange length in mm is wanted here, like 40, 40i or 40f.');
      }
      const length = valueOf(flange[1]!);
      if (!(length > 0 && length <= LONGEST)) return fault(start, at, `a flange is longer than 0 and at most ${LONGEST} mm.`);
      if (flanges.length === MOST_FLANGES) return fault(start, at, `a profile has at most ${MOST_FLANGES} flanges.`);
      flanges.push(flange[2] === '' ? length : { length, measure: MEASURES[flange[2]!]! });
      places.push([start, at]);
      continue;
    }
    const bend = take(BEND);
    if (bend === null) {
      take(WORD);
      const again = /^[\d.,]/.test(line.slice(start));
      return fault(start, at, again ? 'between two flanges there is a bend: give it first, like ^90 or v90.' : 'a bend is wanted here (^90 up, v90 down, ^closed, ^open2), or t, w, r with a number.');
    }
    const [, way, closed, open, number, radius] = bend;
    const sign = way === '^' ? 1 : -1;
    const own = radius === undefined ? undefined : valueOf(radius);
    if (own !== undefined && own > LARGEST_RADIUS) return fault(start, at, `an inside radius is at most ${LARGEST_RADIUS} mm.`);
    if (closed !== undefined) turns.push({ turn: 180 * sign, insideRadius: CLOSED_HEM_RADIUS });
    else if (open !== undefined) {
      if (own !== undefined) return fault(start, at, 'an open hem has its gap and no radius beside it.');
      if (valueOf(number!) <= 0) return fault(start, at, 'an open hem has a gap above 0 mm between its faces; without one it is ^closed.');
      turns.push({ turn: 180 * sign, insideRadius: valueOf(number!) / 2 });
    } else {
      const angle = valueOf(number!);
      if (!(angle > 0 && angle <= 180)) return fault(start, at, 'a bend angle lies above 0 (flat) and up to 180 (folded back).');
      turns.push(own === undefined ? sign * angle : { turn: sign * angle, insideRadius: own });
    }
  }
  if (flanges.length === 0) return fault(line.length, line.length, 'a profile has at least one flange, like 40.');
  if (flanges.length === turns.length) return fault(line.length, line.length, 'after the last bend there is a flange: give its length.');
  const { thickness, width, insideRadius } = found;
  if (thickness === undefined) return fault(line.length, line.length, `the ${NAMES.thickness} is missing.`);
  if (width === undefined) return fault(line.length, line.length, `the ${NAMES.width} is missing.`);
  return { ok: true, value: { profile: { name, thickness, width, insideRadius: insideRadius ?? thickness, flanges, turns }, flanges: places } };
};

/**
 * A part from a typed line, or what is wrong with it and where.
 *
 * @example partFromLine('40 ^90 60 t1.5 w100', 'angle')
 */
export const partFromLine = (line: string, name: string): LineResult<Part> => {
  const read = lineProfile(line, name);
  if (!read.ok) return read;
  const made = profilePart(read.value.profile);
  if (made.ok) return { ok: true, value: { ...made.value, reading: { from: 'profile', line } } };
  const place = read.value.flanges[made.failure.plates[0] ?? -1] ?? [0, line.length];
  return { ok: false, fault: { from: place[0], to: place[1], sentence: made.failure.sentence } };
};

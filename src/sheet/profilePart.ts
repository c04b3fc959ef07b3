import { setback } from '../forming/index.js';
import type { Part } from './part.js';
import { type Result, done, refused } from './result.js';
import { type Sketch, type Turn, grow, partOf, polygon, radiusOf, turnOf } from './sketch.js';

/** How a flange's length is measured. */
export type Measure = 'outside' | 'inside' | 'flat';

/** A flange length in mm, by the profile's measure or by one of its own. */
export type FlangeLength = number | { readonly length: number; readonly measure: Measure };

/** A profile as it is typed in at a counter. Lengths in mm, angles in degrees turned through. */
export interface Profile {
  readonly name: string;
  readonly thickness: number;
  readonly insideRadius: number;
  /** Length of every bend line. */
  readonly width: number;
  /** Lengths of the flanges in turn, by `measure`. */
  readonly flanges: readonly FlangeLength[];
  /** Bend angles between them, one fewer: + towards the A side, - towards B. */
  readonly turns: readonly Turn[];
  /**
   * 'outside' (the default): up to a bend angle of 90 degrees to the apex of the outer mould lines, beyond that to the
   * tangent across the outside of the bend. 'inside': the same on the inner face, for bend angles up to 90.
   * 'flat': between the tangent lines.
   */
  readonly measure?: Measure;
}

const MEASURED: Readonly<Record<Measure, string>> = {
  outside: 'outside lengths: up to a bend angle of 90 degrees to the apex of the outer mould lines, beyond it to the tangent across the outside of the bend',
  inside: 'inside lengths: up to a bend angle of 90 degrees to the apex of the inner mould lines',
  flat: 'flat lengths between tangent lines',
};

const measureWords = (measures: readonly Measure[]): string => {
  const found = [...new Set(measures)];
  if (found.length === 1) return `Flange lengths are ${MEASURED[found[0]!]}.`;
  return found.map((measure) => `Flanges ${measures.flatMap((it, i) => (it === measure ? [i + 1] : [])).join(', ')}: ${MEASURED[measure]}.`).join(' ');
};

/** The least flat that is left of a flange between its tangent lines, mm: below it there is no plate to speak of. */
const LEAST_FLAT = 0.05;

/**
 * A profile of constant section as a part: plate 0 is the first flange, x runs along the width, y along the profile.
 *
 * @example profilePart({ name: 'angle', thickness: 1.5, insideRadius: 1.5, width: 100, flanges: [40, 60], turns: [90] })
 */
export const profilePart = (profile: Profile): Result<Part> => {
  const { name, thickness, insideRadius, width, turns, measure = 'outside' } = profile;
  const flanges = profile.flanges.map((flange) => (typeof flange === 'number' ? flange : flange.length));
  const measures = profile.flanges.map((flange) => (typeof flange === 'number' ? measure : flange.measure));
  if (flanges.length !== turns.length + 1) {
    return refused('wrong measure', `${flanges.length} flanges need ${flanges.length - 1} bends between them, not ${turns.length}.`);
  }
  const wrong = [thickness, width, ...flanges].find((x) => !(x > 0));
  if (wrong !== undefined) return refused('wrong measure', `A length of ${wrong} mm was given: thickness, width and flanges must be more than 0.`);
  const badTurn = turns.find((t) => !(Math.abs(turnOf(t)) > 0 && Math.abs(turnOf(t)) <= 180 && radiusOf(t, insideRadius) >= 0));
  if (badTurn !== undefined) {
    return refused('wrong measure', `A bend angle of ${turnOf(badTurn)} degrees or its radius of ${radiusOf(badTurn, insideRadius)} mm cannot be: the bend angle lies between 0 and 180, the radius is not negative.`);
  }
  const steep = turns.findIndex((t, i) => (measures[i] === 'inside' || measures[i + 1] === 'inside') && Math.abs(turnOf(t)) > 90);
  if (steep !== -1) {
    return refused('wrong measure', `Bend ${steep + 1} turns through ${Math.abs(turnOf(turns[steep]!))} degrees (bend angle): inside lengths are taken up to 90 only.`);
  }
  const back = (at: number, by: Measure): number => {
    const turn = turns[at];
    if (turn === undefined || by === 'flat') return 0;
    return setback(radiusOf(turn, insideRadius), by === 'outside' ? thickness : 0, Math.abs(turnOf(turn)));
  };
  const flats = flanges.map((length, i) => length - back(i - 1, measures[i]!) - back(i, measures[i]!));
  const short = flats.findIndex((flat) => flat < LEAST_FLAT);
  if (short !== -1) {
    const missing = LEAST_FLAT - flats[short]!;
    return refused(
      'flange too short',
      `Flange ${short + 1} of ${flanges[short]!} mm ${measures[short]!} leaves ${flats[short]!.toFixed(2)} mm flat between its bends' tangent lines.`,
      { plates: [short], by: missing },
    );
  }
  const sketch: Sketch = { plates: [], bends: [] };
  const strip = (flat: number) =>
    polygon([
      [0, 0],
      [width, 0],
      [width, flat],
      [0, flat],
    ]);
  sketch.plates.push({ outline: strip(flats[0]!), holes: [] });
  turns.forEach((turn, i) => {
    grow(sketch, i, { from: [width, flats[i]!], to: [0, flats[i]!] }, turn, insideRadius, strip(flats[i + 1]!));
  });
  return done(partOf(name, thickness, sketch, measureWords(measures)));
};

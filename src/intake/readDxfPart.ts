import { type AllowanceRule, DEFAULT_K } from '../forming/index.js';
import { length2, sub2 } from '../geometry/index.js';
import { type Assumption, type DxfReading, type Part, bendKind, develop, rolledAssumptions, ruleInWords } from '../sheet/index.js';
import { type DrawnBend, bendLinesOf } from './dxf/bendLines.js';
import { noteWords } from './dxf/bendWords.js';
import { type FlatBend, type FlatFailure, type FlatParted, flatToPart } from './dxf/flatToPart.js';
import { type Flat, type FlatFault, type SeenDxf, readFlat } from './dxf/readFlat.js';
import { metalOf } from './dxf/region.js';

export interface DxfPartFailure {
  readonly code: FlatFault['code'] | FlatFailure['code'] | 'thickness not known' | 'wrong measure' | 'time limit' | 'memory limit' | 'cancelled';
  /** Names the thing and the measure. */
  readonly sentence: string;
  readonly bends: readonly string[];
  readonly measure?: number;
}

/** What was seen of the drawing, and the part or why it is none. */
export type DxfPartResult = { readonly seen: SeenDxf } & (
  | { readonly ok: true; readonly value: { readonly part: Part; readonly flat: Flat } }
  | { readonly ok: false; readonly failure: DxfPartFailure }
);

/** Common practice, no source: what most bends on a drawing without words are. */
const DEFAULT_ANGLE = 90;

type Source = 'told' | 'written' | 'layer' | 'taken';
interface Known<T> {
  readonly value: T;
  readonly source: Source;
}
interface Values {
  readonly id: string;
  readonly bendAngle: Known<number>;
  readonly direction: Known<'A' | 'B'>;
  readonly insideRadius: Known<number>;
}

const first = <T>(...choices: readonly (readonly [T | undefined, Source])[]): Known<T> => {
  const found = choices.find(([value]) => value !== undefined)!;
  return { value: found[0]!, source: found[1] };
};

/** Angle, direction and radius of each bend line: told for it, written near it, of its layer, told for all, else taken for granted. */
const valuesOf = (lines: readonly DrawnBend[], thickness: number, told: DxfReading, mmPerUnit: number): Values[] => {
  const names = new Set(lines.flatMap(({ words }) => words?.id ?? []));
  const used = new Set<string>();
  let next = 1;
  return lines.map(({ words, side }): Values => {
    let id = words?.id;
    if (id === undefined || used.has(id)) {
      while (names.has(`b${next}`) || used.has(`b${next}`)) next += 1;
      id = `b${next}`;
    }
    used.add(id);
    const own = told.bends !== undefined && Object.hasOwn(told.bends, id) ? told.bends[id] : undefined;
    const radius = words?.insideRadius === undefined ? undefined : words.insideRadius * mmPerUnit;
    return {
      id,
      bendAngle: first([own?.bendAngle, 'told'], [words?.bendAngle, 'written'], [told.bend?.bendAngle, 'told'], [DEFAULT_ANGLE, 'taken']),
      direction: first([own?.direction, 'told'], [side, 'layer'], [words?.direction, 'written'], [told.bend?.direction, 'told'], ['A', 'taken']),
      insideRadius: first([own?.insideRadius, 'told'], [radius, 'written'], [told.bend?.insideRadius, 'told'], [thickness, 'taken']),
    };
  });
};

const named = (ids: readonly string[]): string => `${ids.length === 1 ? 'Bend' : 'Bends'} ${ids.join(', ')}`;

const valueWords = (values: readonly Values[]): Assumption[] => {
  const list: Assumption[] = [];
  const say = (code: Assumption['code'], of: readonly Values[], words: string): void => {
    if (of.length > 0) list.push({ code, sentence: `${named(of.map(({ id }) => id))}: ${words}`, plates: [], bends: of.map(({ id }) => id) });
  };
  const by = <K extends 'bendAngle' | 'direction' | 'insideRadius'>(key: K, source: Source): Values[] => values.filter((it) => it[key].source === source);
  say('bend angle', by('bendAngle', 'taken'), `no angle is written near; a bend angle of ${DEFAULT_ANGLE} degrees is taken.`);
  say('bend direction', by('direction', 'taken'), 'no direction is drawn or written; towards A is taken, the side that one looks at.');
  const taken = by('insideRadius', 'taken');
  say('bend radius', taken, `no inside radius is written near; ${taken[0]?.insideRadius.value} mm is taken, the thickness.`);
  for (const [key, code, what] of [['bendAngle', 'bend angle', 'bend angle'], ['direction', 'bend direction', 'direction'], ['insideRadius', 'bend radius', 'inside radius']] as const) {
    say(code, by(key, 'written'), `${what} as written near the line.`);
    if (key === 'direction') say(code, by(key, 'layer'), 'direction by the layer.');
    say(code, by(key, 'told'), `${what} as told.`);
  }
  return list;
};

const flatWords = (flat: Flat, lines: readonly DrawnBend[], values: readonly Values[], widths: readonly number[], rule: AllowanceRule): Assumption[] => {
  const included = values.filter((_, i) => lines[i]!.words?.included === true).map(({ id }) => id);
  const curved = flat.bendCurves.filter(({ bulge }) => bulge !== 0).length;
  const list = [...new Set(widths.map((width) => width.toFixed(3)))];
  return [
    ...(included.length === 0 ? [] : [{ code: 'bend angle' as const, sentence: `${named(included)}: an included angle is written; 180 less it is the bend angle.`, plates: [], bends: included }]),
    ...(curved === 0 ? [] : [{ code: 'feature left out' as const, sentence: `${curved} curved lines on layers of bend lines are no straight bends and were left out.`, plates: [], bends: [] }]),
    ...(widths.length === 0 ? [] : [{ code: 'rule' as const, sentence: `The flat is taken as developed by rule ${ruleInWords(rule)}: its bends take up ${list.slice(0, 6).join(', ')}${list.length > 6 ? ', ...' : ''} mm of it.`, plates: [], bends: values.map(({ id }) => id) }]),
  ];
};

/** The thickness and the rule that a note of the drawing names, where they are our own words. */
const written = (flat: Flat): { readonly thickness?: number; readonly rule?: AllowanceRule } => {
  const notes = flat.texts.map(({ words }) => noteWords(words));
  const thickness = notes.find((note) => note.thickness !== undefined)?.thickness;
  const words = notes.find((note) => note.rule !== undefined)?.rule;
  const k = words === undefined ? null : /^K-factor (\d(?:\.\d+)?)$/.exec(words);
  const rule = k !== null ? ({ name: 'K-factor', k: Number(k[1]) } as const) : words === 'DIN 6935' || words === 'aviation handbook' || words === 'naval handbook' || words === 'textbook K' ? ({ name: words } as const) : undefined;
  return { ...(thickness === undefined ? {} : { thickness }), ...(rule === undefined ? {} : { rule }) };
};

const MM = { mm: 1, inch: 25.4, cm: 10, m: 1000 } as const;

/**
 * Reads a flat with its bend lines from a DXF file as a part: the outline is cut along the strip that each bend takes up (as wide as
 * its flat length by the rule, its middle on the bend line), and what remains between the strips are the plates, each in the drawing's
 * own frame with its A side up. Angle, direction and radius are told, or written near the lines, or taken for granted and said so.
 *
 * @example readDxfPart(await readFile('flat.dxf'), 'flat', { from: 'dxf', thickness: 1.5, bend: { bendAngle: 90, insideRadius: 2 } })
 */
export const readDxfPart = (bytes: Uint8Array | string, name: string, told: DxfReading = { from: 'dxf' }): DxfPartResult => {
  const read = readFlat(bytes, told);
  if (!read.ok) return { ok: false, seen: read.seen, failure: { ...read.failure, bends: [] } };
  const { seen, value: flat } = read;
  const failed = (code: DxfPartFailure['code'], sentence: string, bends: readonly string[] = [], measure?: number): DxfPartResult => ({
    ok: false, seen, failure: { code, sentence, bends, ...(measure === undefined ? {} : { measure }) },
  });
  const note = written(flat);
  const thickness = told.thickness ?? note.thickness;
  if (thickness === undefined) return failed('thickness not known', 'A flat drawing does not say how thick its sheet is: give the thickness in mm.');
  if (!(thickness > 0 && thickness <= 50)) return failed('wrong measure', `A thickness of ${thickness} mm was given: more than 0 and at most 50 is wanted.`, [], thickness);
  const rule = told.rule ?? note.rule ?? { name: 'K-factor', k: DEFAULT_K };
  const straight = flat.bendCurves.filter(({ bulge, from, to }) => bulge === 0 && length2(sub2(to, from)) > thickness / 2);
  const lines = bendLinesOf(straight, flat.texts);
  const values = valuesOf(lines, thickness, told, MM[flat.unit.taken]);
  const wrong = values.find(({ bendAngle, insideRadius }) => !(bendAngle.value > 0 && bendAngle.value <= 180 && insideRadius.value >= 0 && insideRadius.value <= 5000));
  if (wrong !== undefined) return failed('wrong measure', `Bend ${wrong.id}: a bend angle of ${wrong.bendAngle.value} degrees with an inside radius of ${wrong.insideRadius.value} mm cannot be.`, [wrong.id]);
  const asBend = ({ id, bendAngle, direction, insideRadius }: Values): Omit<FlatBend, 'drawn' | 'width'> => ({
    id, bendAngle: bendAngle.value, direction: direction.value, insideRadius: insideRadius.value, kind: bendKind(bendAngle.value, insideRadius.value, thickness),
  });
  const sides = [{ plate: 0, line: { from: [0, 0], to: [1, 0] } }, { plate: 1, line: { from: [0, 0], to: [1, 0] } }] as const;
  const stub: Part = { name, thickness, plates: [], bends: values.map((value) => ({ ...asBend(value), sides, zone: [] })), assumptions: [], unit: flat.unit.taken };
  const widths = develop(stub, rule).allowances;
  const narrow = widths.findIndex((width) => !(width > 0.01));
  if (narrow !== -1) return failed('wrong measure', `Bend ${values[narrow]!.id} takes up ${widths[narrow]!.toFixed(3)} mm of the flat by rule ${ruleInWords(rule)}: that is no bend.`, [values[narrow]!.id], widths[narrow]);
  const bends = values.map((value, i): FlatBend => ({ ...asBend(value), drawn: lines[i]!, width: widths[i]! }));
  const metal = metalOf([flat.outline, ...flat.holes]);
  let parted = flatToPart(metal, bends);
  const leftOut: string[] = [];
  // a line that was only guessed to be a bend line is let go when it cannot be one
  while ('code' in parted && parted.bends.some((id) => bends.find((bend) => bend.id === id)?.drawn.doubtful === true)) {
    const refused: FlatFailure = parted;
    leftOut.push(refused.bends.find((id) => bends.find((bend) => bend.id === id)?.drawn.doubtful === true)!);
    bends.splice(bends.findIndex(({ id }) => id === leftOut[leftOut.length - 1]), 1);
    parted = flatToPart(metal, bends);
  }
  if ('code' in parted) return failed(parted.code, parted.sentence, parted.bends, parted.by);
  return { ok: true, seen, value: { flat, part: partOf(name, thickness, parted, { flat, lines, values, widths, rule, told, leftOut }) } };
};

interface Grounds {
  readonly flat: Flat;
  readonly lines: readonly DrawnBend[];
  readonly values: readonly Values[];
  readonly widths: readonly number[];
  readonly rule: AllowanceRule;
  readonly told: DxfReading;
  readonly leftOut: readonly string[];
}

const partOf = (name: string, thickness: number, parted: FlatParted, { flat, lines, values, widths, rule, told, leftOut }: Grounds): Part => {
  const assume = (code: Assumption['code'], sentence: string, bends: readonly string[] = []): Assumption => ({ code, sentence, plates: [], bends });
  return {
    name,
    thickness,
    plates: parted.plates,
    bends: parted.bends,
    unit: flat.unit.taken,
    rule,
    reading: told,
    assumptions: [
      ...flat.assumptions,
      assume('thickness', told.thickness === undefined ? `${thickness} mm thick, as a note of the drawing says.` : `${thickness} mm thick, as told.`),
      ...flatWords(flat, lines, values, widths, rule),
      ...valueWords(values),
      ...rolledAssumptions(parted.bends, thickness),
      ...parted.slit.map((id) => assume('other', `Metal runs on beside bend ${id} without a relief: it is taken as slit there; in the tool it will tear or pull.`, [id])),
      ...parted.corners.map(({ ids, by }) => assume('other', `The strips of bends ${ids.join(' and ')} meet over a corner (${by.toFixed(3)} mm2 in common): it is left to ${ids[0]}; the relief there is tight.`, ids)),
      ...[...parted.unused.map((id) => `${id} crosses no metal`), ...leftOut.map((id) => `${id} cannot be a bend`)].map((words) => assume('feature left out', `Bend line ${words} and was left out.`)),
    ],
  };
};

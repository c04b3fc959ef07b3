import { csvOf, csvRows } from './csv.js';
import type { Result } from './result.js';
import { segmentsFromWords, segmentsInWords } from './segmentWords.js';
import type { Segment } from './tool.js';

/** Columns of a table of tools. Lengths mm, angles degrees included, rating N/mm, weight kg/m, price in the rack's currency. */
const COLUMNS = [
  'kind', 'id', 'name', 'demo', 'held_by', 'shape', 'height', 'included_angle', 'tip_radius', 'v', 'v_convention', 'shoulder_radius',
  'rating', 'weight', 'price', 'reversible', 'segments', 'profile', 'offset', 'length', 'width',
] as const;
type Column = (typeof COLUMNS)[number];

/** A rack as it is handed in, before the parser: tools by parameters or drawn. */
export interface RackData {
  readonly punches: readonly object[];
  readonly dies: readonly object[];
  readonly risers: readonly object[];
}

type Raw = Readonly<Record<string, unknown>>;

const profileInWords = (profile: unknown): string => {
  const { shape, ...rest } = profile as Raw;
  if (shape === 'contour') return `contour ${(rest['corners'] as readonly (readonly number[])[]).map((c) => c.join(' ')).join('; ')}`;
  return [shape as string, ...Object.entries(rest).map(([name, value]) => `${name} ${String(value)}`)].join(' ');
};

/** What is no figure goes on as it was written, for the parser to refuse by its field. */
const figureOrWord = (word: string): number | string => {
  const value = Number(word.replace(',', '.'));
  return Number.isNaN(value) ? word : value;
};

/** 'block topWidth 26 baseWidth 30 stepAt 30 flat 0.6' or 'contour 0 0; 10 20 0.1; ...' as data for the parser. */
const profileFromWords = (text: string): Result<object, string> => {
  const [shape = '', ...words] = text.trim().split(/\s+/);
  if (shape === 'contour') {
    const corners = text.trim().slice('contour'.length).split(';').map((c) => c.trim().split(/\s+/).map((word) => Number(word.replace(',', '.'))));
    return corners.some((c) => c.some(Number.isNaN)) ? { ok: false, fault: 'the corners of a contour are numbers: back up [bulge], with ; between corners' } : { ok: true, value: { shape, corners } };
  }
  if (shape === '' || words.length % 2 !== 0) return { ok: false, fault: "a profile is a shape and its parameters by name, as in 'block topWidth 26 baseWidth 30 stepAt 30 flat 0.6', or 'contour' and its corners" };
  return { ok: true, value: { shape, ...Object.fromEntries(words.flatMap((name, i) => (i % 2 === 0 ? [[name, figureOrWord(words[i + 1]!)]] : []))) } };
};

/** The tools of a rack as a CSV table with a header line: punches, dies, then risers. */
export const toolsToCsv = (rack: RackData): string => {
  const cells = (values: Partial<Record<Column, unknown>>): string[] => COLUMNS.map((c) => (values[c] === undefined ? '' : String(values[c])));
  const tool = (t: object): string[] => {
    const raw = t as Raw;
    return cells({
      kind: raw['kind'], id: raw['id'], name: raw['name'], demo: raw['demo'], held_by: raw['tang'], shape: raw['shape'], height: raw['height'], included_angle: raw['includedAngle'],
      tip_radius: raw['tipRadius'], v: raw['v'], v_convention: raw['vConvention'], shoulder_radius: raw['shoulderRadius'], rating: raw['rating'], weight: raw['weight'], price: raw['price'],
      reversible: raw['reversible'], segments: segmentsInWords(raw['segments'] as readonly Segment[]), profile: profileInWords(raw['profile']),
      offset: raw['offset'] === undefined ? undefined : profileInWords({ shape: 'step', ...(raw['offset'] as Raw) }),
    });
  };
  const riser = (t: object): string[] => {
    const raw = t as Raw;
    return cells({ kind: 'riser', id: raw['id'], height: raw['height'], held_by: raw['seat'], length: raw['length'], width: raw['width'] });
  };
  return csvOf([[...COLUMNS], ...[...rack.punches, ...rack.dies].map(tool), ...rack.risers.map(riser)]);
};

/**
 * Reads such a table: columns in any order by their names, those of no use to a kind may stay empty. The first line that cannot be read is
 * named; ranges and cross-sections are then the rack's parser to check.
 */
export const toolsFromCsv = (text: string): Result<RackData, string> => {
  const { semicolons, rows } = csvRows(text);
  const header = rows[0]?.cells.map((c) => c.trim().toLowerCase()) ?? [];
  const needed: readonly Column[] = ['kind', 'id', 'height', 'held_by'];
  const missing = needed.filter((c) => !header.includes(c));
  if (missing.length > 0) return { ok: false, fault: `The header lacks the column ${missing.join(', ')}.` };
  const unknown = header.find((h) => h !== '' && !(COLUMNS as readonly string[]).includes(h));
  if (unknown !== undefined) return { ok: false, fault: `The header has a column '${unknown}' that is not known; known are ${COLUMNS.join(', ')}.` };
  const named = header.filter((h) => h !== '');
  const twice = named.find((h, i) => named.indexOf(h) !== i);
  if (twice !== undefined) return { ok: false, fault: `The header has the column '${twice}' twice.` };
  const lines = new Map<string, number>();
  const out = { punches: [] as object[], dies: [] as object[], risers: [] as object[] };
  for (const { line, cells } of rows.slice(1)) {
    const cell = (c: Column): string => (cells[header.indexOf(c)] ?? '').trim();
    // what is no figure goes on as it was written, for the parser to refuse by its field
    const number = (c: Column): unknown => {
      const written = cell(c);
      const value = Number(semicolons ? written.replace(',', '.') : written);
      return written === '' ? undefined : Number.isNaN(value) ? written : value;
    };
    const truth = (c: Column, usual: boolean): unknown => (cell(c) === '' ? usual : cell(c) === 'true' ? true : cell(c) === 'false' ? false : cell(c));
    const stated = (values: Raw): object => Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
    const over = cells.findIndex((c, i) => c.trim() !== '' && (header[i] ?? '') === '');
    if (over >= 0) return { ok: false, fault: `Line ${line} has '${cells[over]!.trim().slice(0, 40)}' where the header names no column: is a comma in a cell that stands without quotes?` };
    const before = lines.get(cell('id'));
    if (before !== undefined && cell('id') !== '') return { ok: false, fault: `Line ${line}, id: '${cell('id')}' stands in line ${before} already; each tool needs its own.` };
    lines.set(cell('id'), line);
    const kind = cell('kind');
    if (kind === 'riser') {
      out.risers.push(stated({ id: cell('id'), height: number('height'), seat: cell('held_by'), length: number('length'), width: number('width') }));
      continue;
    }
    if (kind !== 'punch' && kind !== 'die') return { ok: false, fault: `Line ${line}, kind: punch, die or riser is wanted, not '${kind}'.` };
    const segments = segmentsFromWords(cell('segments'));
    if (!segments.ok) return { ok: false, fault: `Line ${line}, segments: ${segments.fault}.` };
    const profile = profileFromWords(cell('profile'));
    if (!profile.ok) return { ok: false, fault: `Line ${line}, profile: ${profile.fault}.` };
    const offset = cell('offset') === '' ? null : profileFromWords(cell('offset'));
    if (offset && !offset.ok) return { ok: false, fault: `Line ${line}, offset: ${offset.fault}.` };
    const step = offset?.ok ? Object.fromEntries(Object.entries(offset.value).filter(([name]) => name !== 'shape')) : undefined;
    const common = {
      kind, id: cell('id'), name: cell('name') === '' ? cell('id') : cell('name'), demo: truth('demo', false), tang: cell('held_by'), shape: cell('shape'), height: number('height'),
      includedAngle: number('included_angle'), rating: number('rating'), weight: number('weight'), price: number('price'), reversible: truth('reversible', true), segments: segments.value, profile: profile.value, offset: step,
    };
    if (kind === 'punch') out.punches.push(stated({ ...common, tipRadius: number('tip_radius') }));
    else out.dies.push(stated({ ...common, v: number('v'), vConvention: cell('v_convention'), shoulderRadius: number('shoulder_radius') }));
  }
  return { ok: true, value: out };
};

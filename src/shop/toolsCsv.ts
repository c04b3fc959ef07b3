import { csvOf } from './csv.js';
import { cellFaults, readTable, type TableRow, toldOf } from './csvTable.js';
import { textCell } from './csvText.js';
import { parseRack } from './parseRack.js';
import type { Result } from './result.js';
import { segmentsFromWords, segmentsInWords } from './segmentWords.js';
import { shapeFromWords, shapeInWords } from './shapeWords.js';
import type { PricesBeyond, Segment } from './tool.js';

/** Columns of a table of tools. Lengths mm, angles degrees included, rating N/mm, weight kg/m, price in the currency. */
const COLUMNS = [
  'kind', 'id', 'name', 'demo', 'held_by', 'shape', 'height', 'included_angle', 'tip_radius', 'v', 'v_convention', 'shoulder_radius',
  'rating', 'weight', 'price', 'currency', 'reversible', 'segments', 'profile', 'offset', 'length', 'width',
] as const;
type Column = (typeof COLUMNS)[number];

/** A rack as it is handed in, before the parser: tools by parameters or drawn. */
export interface RackData {
  readonly punches: readonly object[];
  readonly dies: readonly object[];
  readonly risers: readonly object[];
  /** Absent where a table names none. */
  readonly currency?: string;
  readonly pricesBeyond?: PricesBeyond;
}

type Raw = Readonly<Record<string, unknown>>;

/** Where a field of a tool stands when its column bears another name. */
const COLUMN_OF: Readonly<Record<string, Column>> = { tang: 'held_by', seat: 'held_by', includedAngle: 'included_angle', tipRadius: 'tip_radius', vConvention: 'v_convention', shoulderRadius: 'shoulder_radius' };

/** The tools of a rack as a CSV table with a header line: punches, dies, risers, then what tools beyond it cost. */
export const toolsToCsv = (rack: RackData): string => {
  const cells = (values: Partial<Record<Column, unknown>>): string[] => COLUMNS.map((c) => {
    const value = values[c];
    return value === undefined ? '' : typeof value === 'string' ? textCell(value) : String(value);
  });
  const tool = (t: object): string[] => {
    const raw = t as Raw;
    return cells({
      kind: raw['kind'], id: raw['id'], name: raw['name'], demo: raw['demo'], held_by: raw['tang'], shape: raw['shape'], height: raw['height'], included_angle: raw['includedAngle'],
      tip_radius: raw['tipRadius'], v: raw['v'], v_convention: raw['vConvention'], shoulder_radius: raw['shoulderRadius'], rating: raw['rating'], weight: raw['weight'], price: raw['price'], currency: raw['price'] === undefined ? undefined : rack.currency,
      reversible: raw['reversible'], segments: segmentsInWords(raw['segments'] as readonly Segment[]), profile: shapeInWords(raw['profile']),
      offset: raw['offset'] === undefined ? undefined : shapeInWords({ shape: 'step', ...(raw['offset'] as Raw) }),
    });
  };
  const riser = (t: object): string[] => {
    const raw = t as Raw;
    return cells({ kind: 'riser', id: raw['id'], height: raw['height'], held_by: raw['seat'], length: raw['length'], width: raw['width'] });
  };
  const beyond = Object.entries(rack.pricesBeyond ?? {}).map(([id, price]) => cells({ kind: 'beyond', id, price, currency: rack.currency }));
  return csvOf([[...COLUMNS], ...[...rack.punches, ...rack.dies].map(tool), ...rack.risers.map(riser), ...beyond]);
};

/** Kinds of tools beyond the rack that may have a price. */
const BEYOND = ['gooseneck', 'die', 'adapter'] as const satisfies readonly (keyof PricesBeyond)[];

const LISTS = { punch: 'punches', die: 'dies', riser: 'risers' } as const;
type Kind = keyof typeof LISTS;
const isKind = (kind: string): kind is Kind => kind in LISTS;

/** A row as the data of a tool, before the parser, or the sentence about the cell that cannot be read. */
const toolOfRow = (kind: Kind, { line, cell, figure, truth }: TableRow<Column>): Result<object, string> => {
  const stated = (values: Raw): { readonly ok: true; readonly value: object } => ({ ok: true, value: Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) });
  if (kind === 'riser') return stated({ id: cell('id'), height: figure('height'), seat: cell('held_by'), length: figure('length'), width: figure('width') });
  const segments = segmentsFromWords(cell('segments'));
  if (!segments.ok) return { ok: false, fault: `Line ${line}, segments: ${segments.fault}.` };
  const profile = shapeFromWords(cell('profile'));
  if (!profile.ok) return { ok: false, fault: `Line ${line}, profile: ${profile.fault}.` };
  const offset = cell('offset') === '' ? null : shapeFromWords(cell('offset'));
  if (offset && !offset.ok) return { ok: false, fault: `Line ${line}, offset: ${offset.fault}.` };
  const step = offset?.ok ? Object.fromEntries(Object.entries(offset.value).filter(([name]) => name !== 'shape')) : undefined;
  return stated({
    kind, id: cell('id'), name: cell('name') === '' ? cell('id') : cell('name'), demo: truth('demo', false), tang: cell('held_by'), shape: cell('shape'), height: figure('height'),
    includedAngle: figure('included_angle'), rating: figure('rating'), weight: figure('weight'), price: figure('price'), reversible: truth('reversible', true), segments: segments.value, profile: profile.value, offset: step,
    ...(kind === 'punch' ? { tipRadius: figure('tip_radius') } : { v: figure('v'), vConvention: cell('v_convention'), shoulderRadius: figure('shoulder_radius') }),
  });
};

/** What the rack's parser finds wrong with a rack of this alone, by line and column. */
const faultsOf = (alone: object, line: number): readonly string[] => {
  const read = parseRack({ id: 'table', name: 'Table', demo: false, currency: 'any', punches: [], dies: [], risers: [], ...alone });
  return read.ok ? [] : cellFaults(read.fault, (field) => {
    if (field.startsWith('pricesBeyond.')) return { line, column: 'price', within: '' };
    const [name = '', ...within] = field.split('.');
    return { line, column: COLUMN_OF[name] ?? name, within: within.join('.') };
  });
};

/**
 * Reads such a table: columns in any order by their names, those of no use to a kind may stay empty. Each cell that cannot be read or is out of
 * its range is told by its line and column, with what was given and what is allowed.
 */
export const toolsFromCsv = (text: string): Result<RackData, string> => {
  const table = readTable(text, COLUMNS, ['kind', 'id', 'height', 'held_by']);
  if (!table.ok) return table;
  const lines = new Map<string, number>();
  const faults: string[] = [];
  const out = { punches: [] as object[], dies: [] as object[], risers: [] as object[] };
  const beyond: Record<string, unknown> = {};
  let currency: { readonly line: number; readonly named: string } | undefined;
  for (const row of table.value) {
    const { line, cell } = row;
    const [id, kind, named] = [cell('id'), cell('kind'), cell('currency')];
    if (named !== '' && currency !== undefined && currency.named !== named) faults.push(`Line ${line}, currency: '${named}' where line ${currency.line} has '${currency.named}'; a rack has one currency.`);
    else if (named !== '') currency ??= { line, named };
    const before = lines.get(`${kind === 'beyond'} ${id}`);
    if (before !== undefined && id !== '') faults.push(`Line ${line}, id: '${id}' stands in line ${before} already; each tool needs its own.`);
    else lines.set(`${kind === 'beyond'} ${id}`, line);
    if (kind === 'beyond') {
      if (!(BEYOND as readonly string[]).includes(id)) faults.push(`Line ${line}, id: ${BEYOND.slice(0, -1).join(', ')} or ${BEYOND.at(-1)} is wanted for the price of a tool beyond the rack, not '${id}'.`);
      else {
        beyond[id] = row.figure('price');
        faults.push(...faultsOf({ pricesBeyond: { [id]: beyond[id] } }, line));
      }
      continue;
    }
    if (!isKind(kind)) {
      faults.push(`Line ${line}, kind: punch, die, riser or beyond is wanted, not '${kind}'.`);
      continue;
    }
    const tool = toolOfRow(kind, row);
    if (!tool.ok) {
      faults.push(tool.fault);
      continue;
    }
    faults.push(...faultsOf({ [LISTS[kind]]: [tool.value] }, line));
    out[LISTS[kind]].push(tool.value);
  }
  return faults.length > 0 ? { ok: false, fault: toldOf(faults) } : {
    ok: true, value: { ...out, ...(currency && { currency: currency.named }), ...(Object.keys(beyond).length > 0 && { pricesBeyond: beyond }) },
  };
};

import { type MeasuredDeduction, spreadOf } from './deductionTable.js';

const COLUMNS = [
  'metal', 'thickness_mm', 'v_mm', 'v_convention', 'tip_radius_mm', 'bend_angle_deg', 'deduction_mm', 'inside_radius_mm',
  'pieces', 'spread_mm', 'note',
] as const;

type Column = (typeof COLUMNS)[number];

const OPTIONAL: readonly Column[] = ['inside_radius_mm', 'pieces', 'spread_mm', 'note'];

export type DeductionCsv =
  | { readonly ok: true; readonly rows: readonly MeasuredDeduction[] }
  /** `line` counts from 1 for the header. */
  | { readonly ok: false; readonly line: number; readonly sentence: string };

/** The table as CSV with a header line; figures as they are kept, the spread of a single piece left empty. */
export const deductionsToCsv = (rows: readonly MeasuredDeduction[]): string =>
  [
    COLUMNS.join(','),
    ...rows.map((r) =>
      [
        r.metal, r.thickness, r.v, r.vConvention, r.tipRadius, r.bendAngle, r.deduction, r.insideRadius ?? '', r.pieces, spreadOf(r) ?? '', r.note,
      ].map((cell) => quoted(String(cell))).join(','),
    ),
  ].join('\n') + '\n';

const quoted = (cell: string): string => (/[",;\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

/**
 * Reads the table back. Columns in any order by their names; separated by commas, or by semicolons with decimal commas
 * as spreadsheets of some countries write them. The first line that cannot be read is named.
 */
export const deductionsFromCsv = (text: string): DeductionCsv => {
  const lines = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  const semicolons = (lines[0] ?? '').includes(';');
  const separator = semicolons ? ';' : ',';
  const header = cellsOf(lines[0] ?? '', separator).map((c) => c.trim().toLowerCase());
  const missing = COLUMNS.filter((c) => !OPTIONAL.includes(c) && !header.includes(c));
  if (missing.length > 0) return { ok: false, line: 1, sentence: `The header lacks the column ${missing.join(', ')}.` };
  const rows: MeasuredDeduction[] = [];
  for (let i = 1; i < lines.length; i++) {
    if (lines[i]!.trim() === '') continue;
    const cells = cellsOf(lines[i]!, separator);
    const cell = (column: Column): string => (cells[header.indexOf(column)] ?? '').trim();
    const figure = (column: Column): number => {
      const typed = semicolons ? cell(column).replace(',', '.') : cell(column);
      return typed === '' ? Number.NaN : Number(typed);
    };
    const bad = (column: Column, wanted: string): DeductionCsv => ({
      ok: false, line: i + 1, sentence: `Line ${i + 1}, ${column}: ${wanted} is wanted, not "${cell(column)}".`,
    });
    if (cell('metal') === '') return bad('metal', 'the id of a metal');
    for (const column of ['thickness_mm', 'v_mm', 'tip_radius_mm'] as const) {
      if (!(figure(column) > 0)) return bad(column, 'a length over 0');
    }
    if (!(figure('bend_angle_deg') > 0 && figure('bend_angle_deg') < 180)) return bad('bend_angle_deg', 'an angle between 0 and 180');
    if (!Number.isFinite(figure('deduction_mm'))) return bad('deduction_mm', 'a length');
    const vConvention = cell('v_convention');
    if (vConvention !== 'sharp' && vConvention !== 'tangent') return bad('v_convention', '"sharp" or "tangent"');
    const pieces = cell('pieces') === '' ? 1 : figure('pieces');
    if (!(Number.isInteger(pieces) && pieces > 0)) return bad('pieces', 'a whole number');
    const spread = cell('spread_mm') === '' ? 0 : figure('spread_mm');
    if (!(spread >= 0)) return bad('spread_mm', 'a length of 0 or more');
    const radius = cell('inside_radius_mm') === '' ? null : figure('inside_radius_mm');
    if (radius !== null && !(radius >= 0)) return bad('inside_radius_mm', 'a length of 0 or more');
    rows.push({
      metal: cell('metal'), thickness: figure('thickness_mm'), v: figure('v_mm'), vConvention, tipRadius: figure('tip_radius_mm'),
      bendAngle: figure('bend_angle_deg'), deduction: figure('deduction_mm'), ...(radius === null ? {} : { insideRadius: radius }),
      pieces, spread, note: cell('note'),
    });
  }
  return { ok: true, rows };
};

const cellsOf = (line: string, separator: string): string[] => {
  const cells: string[] = [];
  let cell = '';
  let inside = false;
  for (let i = 0; i < line.length; i++) {
    const c = line[i]!;
    if (inside && c === '"' && line[i + 1] === '"') {
      cell += '"';
      i++;
    } else if (c === '"') inside = !inside;
    else if (c === separator && !inside) {
      cells.push(cell);
      cell = '';
    } else cell += c;
  }
  return [...cells, cell];
};

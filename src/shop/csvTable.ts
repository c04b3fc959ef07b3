import { csvRows } from './csv.js';
import { textOfCell } from './csvText.js';
import type { DataFault } from './dataFault.js';
import type { Result } from './result.js';

/** One row of a table, its cells by the names of their columns. */
export interface TableRow<C extends string> {
  /** Of the file, counted from 1. */
  readonly line: number;
  /** Without blanks around it; empty where the table has no such column. */
  readonly cell: (column: C) => string;
  /** Undefined where it is empty; what is no figure as it was written, for the parser to refuse by its field. */
  readonly figure: (column: C) => number | string | undefined;
  /** `usual` where it is empty; what is neither yes nor no as it was written. */
  readonly truth: (column: C, usual: boolean) => boolean | string;
}

/** More bad cells than these are counted, not told. */
const MOST_TOLD = 5;

/** What is no figure goes on as it was written, for the parser to refuse by its field. */
export const figureOrWord = (word: string): number | string => {
  const value = Number(word.replace(',', '.'));
  return Number.isNaN(value) ? word : value;
};

/** The sentences about a table's cells as one text: the first few, and how many more there are. */
export const toldOf = (faults: readonly string[]): string =>
  [...faults.slice(0, MOST_TOLD), ...(faults.length > MOST_TOLD ? [`And ${faults.length - MOST_TOLD} more.`] : [])].join(' ');

/** The rows of a table whose first line names the columns, in any order; a header that lacks one, has one unknown or twice is refused, and so is a cell past it. */
export const readTable = <C extends string>(text: string, columns: readonly C[], needed: readonly C[]): Result<readonly TableRow<C>[], string> => {
  const garbled = text.split('\n').findIndex((line) => line.includes('\uFFFD'));
  if (garbled >= 0) return { ok: false, fault: `Line ${garbled + 1} holds a letter that is no UTF-8: save the table as CSV in UTF-8.` };
  const { semicolons, rows } = csvRows(text);
  const header = rows[0]?.cells.map((c) => c.trim().toLowerCase()) ?? [];
  const missing = needed.filter((c) => !header.includes(c));
  const more = missing.length - MOST_TOLD;
  if (missing.length > 0) return { ok: false, fault: `The header lacks the column ${missing.slice(0, MOST_TOLD).join(', ')}${more > 0 ? ` and ${more} more` : ''}.` };
  const unknown = header.find((h) => h !== '' && !(columns as readonly string[]).includes(h));
  if (unknown !== undefined) return { ok: false, fault: `The header has a column '${unknown}' that is not known; known are ${columns.join(', ')}.` };
  const named = header.filter((h) => h !== '');
  const twice = named.find((h, i) => named.indexOf(h) !== i);
  if (twice !== undefined) return { ok: false, fault: `The header has the column '${twice}' twice.` };
  for (const { line, cells } of rows.slice(1)) {
    const over = cells.findIndex((c, i) => c.trim() !== '' && (header[i] ?? '') === '');
    if (over >= 0) return { ok: false, fault: `Line ${line} has '${cells[over]!.trim().slice(0, 40)}' where the header names no column: is a ${semicolons ? 'semicolon' : 'comma'} in a cell that stands without quotes?` };
  }
  return {
    ok: true,
    value: rows.slice(1).map(({ line, cells }): TableRow<C> => {
      const cell = (column: C): string => textOfCell((cells[header.indexOf(column)] ?? '').trim());
      return {
        line, cell,
        figure: (column) => {
          const written = cell(column);
          const value = Number(semicolons ? written.replace(',', '.') : written);
          return written === '' ? undefined : Number.isNaN(value) ? written : value;
        },
        // a spreadsheet program writes TRUE where it was handed true
        truth: (column, usual) => (cell(column) === '' ? usual : /^(true|yes)$/i.test(cell(column)) ? true : /^(false|no)$/i.test(cell(column)) ? false : cell(column)),
      };
    }),
  };
};

const spoken = (name: string): string => name.replaceAll(/(?<=[a-z])[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/**
 * What a parser found wrong with the data of a row, in the words of the table: one sentence a cell, by line and column. `columnOf` is where
 * a field of the data stands, and what of its path lies inside the cell.
 */
export const cellFaults = (fault: DataFault, columnOf: (field: string) => { readonly line: number; readonly column: string; readonly within: string }): readonly string[] =>
  [fault, ...(fault.others ?? [])].map(({ entry, field, sentence }) => {
    const { line, column, within } = columnOf(field);
    const inside = within === '' ? [] : within.split('.').map((key) => (/^\d+$/.test(key) ? `number ${Number(key) + 1}` : spoken(key)));
    const [, said, given = ''] = /^(.*?)( \([^()]*(?:was given|is missing)\)\.|)$/s.exec(sentence.slice(entry.length + 2 + field.length))!;
    const inColumns = said!.replaceAll(/\b[a-z]+(?:[A-Z][a-z]+|\.[a-z]\w*)+\b/g, (name) => {
      const other = columnOf(name).column;
      return other === name ? spoken(name) : other;
    });
    return `Line ${line}, ${[column, ...inside].join(', ')}${inColumns}${given}`;
  });

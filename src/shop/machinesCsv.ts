import { csvOf } from './csv.js';
import { cellFaults, readTable, type TableRow, toldOf } from './csvTable.js';
import { textCell } from './csvText.js';
import { cellOf, readCell } from './machineCells.js';
import { type MachineColumn, type MachineColumnName, machineColumns } from './machineColumns.js';
import { parseFloor } from './parseFloor.js';
import type { Result } from './result.js';

type Column = 'kind' | 'of' | MachineColumnName;
const COLUMNS: readonly Column[] = ['kind', 'of', ...machineColumns.map(([name]) => name)];
/** The columns that a table of machines cannot do without: `demo` is then no, an option needs an `of`. */
const NEEDED: readonly Column[] = ['kind', ...machineColumns.filter(([name, { mayStayOut }]) => name !== 'demo' && !mayStayOut).map(([name]) => name)];

type Row = TableRow<Column>;
type Tree = Record<string, unknown>;

const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null;
const valueAt = (data: unknown, path: string): unknown => path.split('.').reduce<unknown>((value, key) => (isTree(value) ? value[key] : undefined), data);

/** Puts a value at its path, with what it lies in; without a value only what it lies in. */
const put = (data: Tree, path: string, value: unknown): void => {
  const keys = path.split('.');
  let tree: Tree = data;
  for (const [i, key] of keys.entries()) {
    if (i === keys.length - 1) {
      if (value !== undefined) tree[key] = value;
    } else tree = (tree[key] ??= /^\d/.test(keys[i + 1]!) ? [] : {}) as Tree;
  }
};

/**
 * Machines as a CSV table with a header line: a row for each machine, and after it a row for each of its options, in the columns that the
 * option changes. `machines` are data that the floor's parser takes; nothing of them is left out.
 */
export const machinesToCsv = (machines: readonly unknown[]): string => {
  const row = (first: readonly [string, string], data: unknown, at: 'path' | 'inOption'): string[] => [...first, ...machineColumns.map(([, column]) => {
    const path = column[at];
    const value = path === undefined ? undefined : valueAt(data, path);
    if (value === undefined) return '';
    if (column.as === 'figure' || column.as === 'yes or no') return String(value);
    return textCell(column.as === 'text' ? String(value) : cellOf(column.as, value));
  })];
  return csvOf([[...COLUMNS], ...machines.flatMap((data) => [
    row(['machine', ''], data, 'path'),
    ...(valueAt(data, 'options') as readonly unknown[]).map((option) => row(['option', textCell(String(valueAt(data, 'id')))], option, 'inOption')),
  ])]);
};

/** The columns in which an option changes a machine. */
const CHANGEABLE = machineColumns.filter(([, { inOption }]) => inOption?.startsWith('effect.')).map(([name]) => name);

/** What a cell says before the parser; undefined where it is empty. */
const valueIn = (row: Row, name: MachineColumnName, as: MachineColumn['as']): Result<unknown, string> => {
  if (as === 'yes or no') return { ok: true, value: row.truth(name, false) };
  if (as === 'figure') return { ok: true, value: row.figure(name) };
  const written = row.cell(name);
  return written === '' || as === 'text' ? { ok: true, value: written === '' ? undefined : written } : readCell(as, written);
};

/** A row as data before the parser; sentences about cells that cannot be read go to `faults`. */
const dataOf = (row: Row, at: 'path' | 'inOption', faults: string[]): Tree => {
  const out: Tree = {};
  for (const [name, { [at]: path, as, mayStayOut }] of machineColumns) {
    const written = row.cell(name);
    if (path === undefined && written !== '') faults.push(`Line ${row.line}, ${name}: '${written.slice(0, 40)}' is not for an option; it may change ${CHANGEABLE.join(', ')}.`);
    if (path === undefined || (written === '' && (mayStayOut || path.startsWith('effect.')))) continue;
    const read = valueIn(row, name, as);
    if (read.ok) put(out, path, read.value);
    else faults.push(`Line ${row.line}, ${name}: ${read.fault}.`);
  }
  return out['name'] === undefined && out['id'] !== undefined ? { ...out, name: out['id'] } : out;
};

/** The column in which a field of the data stands, and what of the path lies inside its cell. */
const columnIn = (field: string, at: 'path' | 'inOption'): { readonly column: string; readonly within: string } => {
  const found = machineColumns.map(([name, column]) => [name, column[at]] as const).filter(([, path]) => path !== undefined && (field === path || field.startsWith(`${path}.`)))
    .sort(([, a], [, b]) => b!.length - a!.length)[0];
  const around = found ?? machineColumns.map(([name, column]) => [name, column[at]] as const).find(([, path]) => path?.startsWith(`${field}.`));
  return around === undefined ? { column: field, within: '' } : { column: around[0], within: field.slice(around[1]!.length + 1) };
};

/** What the floor's parser finds wrong with a machine, by line and column: its own, and its options'. */
const machineFaults = (data: Tree, row: Row, options: readonly Row[]): readonly string[] => {
  const read = parseFloor([data]);
  return read.ok ? [] : cellFaults(read.fault, (field) => {
    const [, number, within] = /^options\.(\d+)(?:\.(.*))?$/.exec(field) ?? [];
    const option = number === undefined ? undefined : options[Number(number)];
    if (option === undefined) return { line: row.line, ...columnIn(field, 'path') };
    return { line: option.line, ...(within === undefined || within === 'effect' ? { column: 'the option', within: '' } : columnIn(within, 'inOption')) };
  });
};

/**
 * Reads such a table: columns in any order by their names. The machines as data that the floor's parser took; else each cell that cannot be
 * read or is out of its range, by line and column, with what was given and what is allowed.
 */
export const machinesFromCsv = (text: string): Result<readonly object[], string> => {
  const table = readTable(text, COLUMNS, NEEDED);
  if (!table.ok) return table;
  const faults: string[] = [];
  const machines = new Map<string, { readonly row: Row; readonly options: Row[] }>();
  const heads = table.value.filter(({ cell }) => cell('kind') !== 'option');
  for (const row of heads) {
    const { line, cell } = row;
    const [id, before] = [cell('id'), machines.get(cell('id'))];
    if (cell('kind') !== 'machine') faults.push(`Line ${line}, kind: machine or option is wanted, not '${cell('kind')}'.`);
    else if (cell('of') !== '') faults.push(`Line ${line}, of: '${cell('of')}' is not for a machine; it says which machine an option belongs to.`);
    else if (before !== undefined) faults.push(`Line ${line}, id: '${id}' stands in line ${before.row.line} already; each machine needs its own.`);
    else machines.set(id, { row, options: [] });
  }
  const lost = new Set<string>();
  for (const row of table.value.filter(({ cell }) => cell('kind') === 'option')) {
    const { line, cell } = row;
    const machine = machines.get(cell('of'));
    const before = machine?.options.find((other) => other.cell('id') === cell('id'));
    if (machine === undefined) {
      // where the machine's own row is at fault, that is told already; a missing machine is told once, not for each of its options
      if (!heads.some((head) => head.cell('id') === cell('of')) && !lost.has(cell('of'))) faults.push(`Line ${line}, of: there is no machine '${cell('of')}' in this table for the option '${cell('id')}'.`);
      lost.add(cell('of'));
    } else if (before !== undefined) faults.push(`Line ${line}, id: '${cell('id')}' stands in line ${before.line} already; each option of a machine needs its own.`);
    else machine.options.push(row);
  }
  const read = [...machines.values()].map(({ row, options }) => {
    const cells: string[] = [];
    const data = { ...dataOf(row, 'path', cells), options: options.map((option) => dataOf(option, 'inOption', cells)) };
    // a cell that cannot be read would be told once more as missing
    faults.push(...(cells.length > 0 ? cells : machineFaults(data, row, options)));
    return data;
  });
  if (faults.length === 0 && read.length === 0) return { ok: false, fault: 'The table holds no machine.' };
  return faults.length > 0 ? { ok: false, fault: toldOf(faults) } : { ok: true, value: read };
};

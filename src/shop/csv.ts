/** A cell as it stands in a CSV file: in quotes where it must. */
const quoted = (cell: string): string => (/[",;\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

export const csvOf = (rows: readonly (readonly string[])[]): string => rows.map((row) => row.map(quoted).join(',')).join('\n') + '\n';

/**
 * The cells of a CSV text, row by row, quotes and lines inside quotes as RFC 4180 has them. Separated by semicolons where the first
 * line holds one outside quotes, as spreadsheets of countries with a decimal comma write it. Empty rows are left out; `line` counts from 1.
 */
export const csvRows = (text: string): { readonly semicolons: boolean; readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[] } => {
  const clean = text.replace(/^\uFEFF/, '');
  const first = clean.split(/\r?\n/, 1)[0]!.replaceAll(/"[^"]*"/g, '');
  const separator = first.includes(';') ? ';' : ',';
  const rows: { line: number; cells: string[] }[] = [];
  let [cells, cell, inside, line, begun]: [string[], string, boolean, number, number] = [[], '', false, 1, 1];
  const endRow = (): void => {
    cells.push(cell);
    if (cells.some((c) => c.trim() !== '')) rows.push({ line: begun, cells });
    [cells, cell, begun] = [[], '', line + 1];
  };
  for (let i = 0; i < clean.length; i++) {
    const c = clean[i]!;
    if (inside) {
      if (c === '\n') line++;
      if (c !== '"') cell += c;
      else if (clean[i + 1] === '"') { cell += '"'; i++; } else inside = false;
    } else if (c === '"' && cell === '') inside = true;
    else if (c === separator) { cells.push(cell); cell = ''; } else if (c === '\n') { endRow(); line++; } else if (c !== '\r') cell += c;
  }
  endRow();
  return { semicolons: separator === ';', rows };
};

/** A column: its heading, and whether its cells are numbers, set to the right. */
export interface Column {
  readonly heading: string;
  readonly right?: boolean;
}

/** Rows set in columns, the heading underlined; the last column runs on as long as it likes. */
export const table = (columns: readonly Column[], rows: readonly (readonly string[])[]): string => {
  const widths = columns.map(({ heading }, c) => Math.max(heading.length, ...rows.map((row) => (row[c] ?? '').length)));
  const line = (cells: readonly string[]): string =>
    columns
      .map(({ right }, c) => (right === true ? (cells[c] ?? '').padStart(widths[c]!) : (cells[c] ?? '').padEnd(widths[c]!)))
      .join('  ')
      .trimEnd();
  const rule = widths.map((width, c) => '-'.repeat(c === columns.length - 1 ? columns[c]!.heading.length : width)).join('  ').trimEnd();
  return [line(columns.map(({ heading }) => heading)), rule, ...rows.map(line)].join('\n');
};

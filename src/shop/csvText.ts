/** Spreadsheet programs run a cell that begins with one of these as a formula, and a name may come out of anybody's file. */
const FORMULA = /^[\s']*[=+\-@\t\r\n]/;

/** Words as a cell that no spreadsheet runs: an apostrophe before it makes it text. @example textCell('=1+1') // "'=1+1" */
export const textCell = (words: string): string => (FORMULA.test(words) ? `'${words}` : words);

/** The words of such a cell: what writing put on is taken off, an apostrophe of their own stays. @example textOfCell("'=1+1") // '=1+1' */
export const textOfCell = (cell: string): string => (cell.startsWith("'") && FORMULA.test(cell.slice(1)) ? cell.slice(1) : cell);

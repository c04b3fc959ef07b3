/** An argument of a record: a string, a reference (#12 as 12), a list; anything else as null. */
export type StepValue = string | number | null | readonly StepValue[];

export interface StepRecord {
  readonly id: number;
  readonly type: string;
  readonly args: readonly StepValue[];
}

/** Lists in lists deeper than this are none of the records that are asked for. */
const DEEPEST = 8;
const HEAD = /#(\d{1,9})\s*=\s*([A-Z_0-9]+)\s*\(/gi;
/** What stands between quotes, brackets and references; a string is looked for by its closing quote, however long it is. */
const TOKEN = /#(\d{1,9})|[(),;']|[^'#(),;]+|#/gy;

/** The place of the quote that closes a string which begins at `from`; -1 where none does. A quote in a string is written twice. */
const closing = (text: string, from: number): number => {
  let at = text.indexOf("'", from);
  while (at >= 0 && text[at + 1] === "'") at = text.indexOf("'", at + 2);
  return at;
};

/** The arguments from just after the opening bracket, and where reading goes on; undefined where the record breaks off. */
const readArgs = (text: string, from: number): { readonly args: readonly StepValue[]; readonly end: number } | undefined => {
  const open: StepValue[][] = [[]];
  TOKEN.lastIndex = from;
  for (let token = TOKEN.exec(text); token; token = TOKEN.exec(text)) {
    const [all, reference] = token;
    const here = open[open.length - 1]!;
    if (reference !== undefined) here.push(Number(reference));
    else if (all === "'") {
      const end = closing(text, TOKEN.lastIndex);
      if (end < 0) return undefined;
      here.push(text.slice(TOKEN.lastIndex, end).replaceAll("''", "'"));
      TOKEN.lastIndex = end + 1;
    } else if (all === '(') {
      if (open.length > DEEPEST) return undefined;
      const inner: StepValue[] = [];
      here.push(inner);
      open.push(inner);
    } else if (all === ')') {
      open.pop();
      if (open.length === 0) return { args: here, end: TOKEN.lastIndex };
    } else if (all === ';') return undefined;
    else if (all !== ',' && all.trim() !== '') here.push(null);
  }
  return undefined;
};

/**
 * The records of these types in the order of the file, by one run over its text: enough for names and structure, where the kernel
 * hands out shapes alone. Records of several types at once (`#1=(A()B())`) are passed over, and so are damaged ones.
 */
export const stepRecords = (text: string, types: ReadonlySet<string>): StepRecord[] => {
  const found: StepRecord[] = [];
  HEAD.lastIndex = 0;
  for (let head = HEAD.exec(text); head; head = HEAD.exec(text)) {
    const type = head[2]!.toUpperCase();
    if (!types.has(type)) continue;
    const read = readArgs(text, HEAD.lastIndex);
    if (read === undefined) continue;
    found.push({ id: Number(head[1]), type, args: read.args });
    HEAD.lastIndex = read.end;
  }
  return found;
};

import { figureOrWord } from './csvTable.js';
import type { Result } from './result.js';
import { sameData } from './sameData.js';
import { namedFigures, shapeFromWords, shapeInWords } from './shapeWords.js';

type Raw = Readonly<Record<string, unknown>>;
type Read = Result<unknown, string>;

/** How a value that is more than a figure stands in one cell. The fault is the end of a sentence. */
interface Notation {
  readonly write: (value: unknown) => string;
  readonly read: (words: string) => Read;
}

/** Between the entries of a list in one cell. */
const AND = ' + ';
const entriesOf = (words: string): readonly string[] => words.split(/\s\+\s/).map((word) => word.trim());

const DRIVES = ['powered', 'by hand', 'fixed'];

const axis: Notation = {
  write: (value) => {
    const { drive, ...figures } = value as Raw;
    return [drive as string, ...Object.entries(figures).map(([name, figure]) => `${name} ${String(figure)}`)].join(' ');
  },
  read: (words) => {
    const drive = DRIVES.find((d) => words === d || words.startsWith(`${d} `));
    const figures = drive === undefined ? undefined : namedFigures(words.slice(drive.length).trim().split(/\s+/).filter((word) => word !== ''));
    return figures ? { ok: true, value: { drive, ...figures } }
      : { ok: false, fault: `'${words}' is no axis: write 'powered min 4 max 400 speed 600', 'by hand min 20 max 230 seconds 12' or 'fixed at 85'` };
  },
};

const known: Notation = {
  write: (value) => {
    const { source, value: figure } = value as Raw;
    return figure === undefined ? String(source) : `${String(source)} ${String(figure)}`;
  },
  read: (words) => {
    const [, source, figure] = /^(as new|measured|not known)(?:\s+(\S+))?$/.exec(words) ?? [];
    return source === undefined ? { ok: false, fault: `'${words}' is no such figure: write 'as new 0.01', 'measured 0.01' or 'not known'` }
      : { ok: true, value: { source, ...(figure === undefined ? {} : { value: figureOrWord(figure) }) } };
  },
};

const sections: Notation = {
  write: (value) => (value as readonly unknown[]).map(shapeInWords).join(AND),
  read: (words) => {
    const read = entriesOf(words).map(shapeFromWords);
    const wrong = read.find((one) => !one.ok);
    return wrong && !wrong.ok ? wrong : { ok: true, value: read.map((one) => (one.ok ? one.value : undefined)) };
  },
};

const section: Notation = { write: shapeInWords, read: shapeFromWords };

const faces: Notation = {
  write: (value) => (value as readonly Raw[]).map(({ name, behind, from, to }) => [name, 'behind', behind, 'from', from, 'to', to].join(' ')).join(AND),
  read: (words) => {
    const read = entriesOf(words).map((one) => [one, /^(.+?)\s+behind\s+(\S+)\s+from\s+(\S+)\s+to\s+(\S+)$/.exec(one)] as const);
    const wrong = read.find(([, found]) => found === null);
    return wrong ? { ok: false, fault: `'${wrong[0]}' is no stop face: write 'nose behind 0 from 0 to 8', with + between faces` }
      : { ok: true, value: read.map(([, found]) => ({ name: found![1], behind: figureOrWord(found![2]!), from: figureOrWord(found![3]!), to: figureOrWord(found![4]!) })) };
  },
};

const wear: Notation = {
  write: (value) => {
    const { source, tilt, places } = value as Raw;
    return source === 'measured' ? `measured, tilt ${String(tilt)}: ${(places as readonly Raw[]).map(({ along, gap }) => `${String(along)} ${String(gap)}`).join('; ')}` : String(source);
  },
  read: (words) => {
    if (words === 'not known') return { ok: true, value: { source: words } };
    const [, tilt, list = ''] = /^measured, tilt ([^:]+):(.*)$/s.exec(words) ?? [];
    const places = list.split(';').map((place) => place.trim().split(/\s+/));
    return tilt === undefined || places.some((place) => place.length !== 2)
      ? { ok: false, fault: `'${words.slice(0, 40)}' is no wear map: write 'measured, tilt each step: -1000 0.02; 0 -0.03; 1000 0' (along and gap, mm) or 'not known'` }
      : { ok: true, value: { source: 'measured', places: places.map(([along, gap]) => ({ along: figureOrWord(along!), gap: figureOrWord(gap!) })), tilt: tilt.trim() } };
  },
};

const list: Notation = { write: (value) => (value as readonly string[]).join(AND), read: (words) => ({ ok: true, value: entriesOf(words) }) };

const NOTATIONS = { axis, known, section, sections, faces, wear, list } as const;
export type CellKind = keyof typeof NOTATIONS;

const isJson = (cell: string): boolean => /^[[{]/.test(cell);

/** A value in the words of its kind; as JSON where words would not give all of it back (a name with a + of its own). */
export const cellOf = (kind: CellKind, value: unknown): string => {
  const words = NOTATIONS[kind].write(value);
  const back = isJson(words) || words !== words.trim() ? undefined : NOTATIONS[kind].read(words);
  return back?.ok && sameData(back.value, value) ? words : JSON.stringify(value);
};

/** What such a cell says, for the parser to check; the fault is the end of a sentence. */
export const readCell = (kind: CellKind, cell: string): Read => {
  if (!isJson(cell)) return NOTATIONS[kind].read(cell);
  try {
    return { ok: true, value: JSON.parse(cell) as unknown };
  } catch {
    return { ok: false, fault: `'${cell.slice(0, 40)}' begins like JSON and is none` };
  }
};

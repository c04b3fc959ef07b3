import { readDxfPart } from '../src/intake/index.js';
import { blankDxf } from '../src/papers/index.js';
import { blank, develop } from '../src/sheet/index.js';
import { tripPart } from './dxfTrips.js';
import { mulberry32 } from './mulberry32.js';

/** Numbers that a reader meets once in its life. */
const EXTREMES = ['0', '-1', '1e308', '-1e308', '1e-320', 'NaN', 'inf', '999999999', '-2147483648', '1e17', '', 'x', '3.0000000001'];
const HEAD = ['0', 'SECTION', '2', 'HEADER', '9', '$INSUNITS', '70', '4', '0', 'ENDSEC'];

const insert = (block: string, rows: number): string[] => ['0', 'INSERT', '8', '0', '2', block, '10', '0', '20', '0', '70', String(rows), '71', String(rows), '44', '1', '45', '1'];
const blocks = (...bodies: readonly (readonly string[])[]): string[] => ['0', 'SECTION', '2', 'BLOCKS', ...bodies.flatMap((body, i) => ['0', 'BLOCK', '2', `B${i}`, '10', '0', '20', '0', ...body, '0', 'ENDBLK']), '0', 'ENDSEC'];
const entities = (...body: readonly string[]): string[] => ['0', 'SECTION', '2', 'ENTITIES', ...body, '0', 'ENDSEC', '0', 'EOF'];
const circle = (r: string): string[] => ['0', 'CIRCLE', '8', '0', '10', '0', '20', '0', '40', r];

/** Files made to hang or burst a reader: nests, rows, counts, ellipses and splines beyond all measure. */
const traps = (random: () => number): readonly string[][] => {
  const many = String(Math.floor(10 ** (3 + 9 * random())));
  const wide = Math.ceil(4 + 30 * random());
  const points = (n: number): string[] => Array.from({ length: n }, (_, i) => ['10', String(i % 7), '20', String(i % 5)]).flat();
  const knots = (n: number): string[] => Array.from({ length: n }, (_, i) => ['40', String(i)]).flat();
  return [
    // a block that holds itself; blocks that hold the next one many times; empty blocks in countless rows
    [...HEAD, ...blocks([...circle('5'), ...insert('B0', wide)]), ...entities(...insert('B0', wide))],
    [...HEAD, ...blocks(...Array.from({ length: 11 }, (_, i) => [...Array.from({ length: wide }, () => insert(`B${i + 1}`, 1)).flat()]), circle('5')), ...entities(...insert('B0', 1))],
    [...HEAD, ...blocks(['0', 'POINT', '8', '0', '10', '0', '20', '0']), ...entities(...insert('B0', Number(many)), ...circle('50'))],
    [...HEAD, ...entities('0', 'LWPOLYLINE', '8', '0', '90', many, '70', '1', ...points(40), '42', many)],
    [...HEAD, ...entities('0', 'ELLIPSE', '8', '0', '10', '0', '20', '0', '11', `${many}${many}`, '21', '0', '40', '1e-9', '41', '0', '42', '6.283185307179586')],
    [...HEAD, ...entities('0', 'SPLINE', '8', '0', '70', '8', '71', many, '72', many, '73', many, ...knots(300), ...points(100))],
    [...HEAD, ...entities('0', 'SPLINE', '8', '0', '70', '8', '71', '3', '72', '404', '73', '400', ...knots(404), ...Array.from({ length: 400 }, (_, i) => ['10', i % 2 === 0 ? '1e15' : '-1e15', '20', String(random() * 1e15)]).flat())],
    // lines upon lines in one place, and a comb of cut lines across many bend lines
    [...HEAD, ...entities(...Array.from({ length: 3000 }, () => ['0', 'LINE', '8', '0', '10', String(random() * 1e-3), '20', '0', '11', String(random() * 100), '21', '0']).flat())],
    [...HEAD, ...entities(...circle('200'), ...Array.from({ length: 150 }, (_, i) => ['0', 'LINE', '8', 'BEND', '10', '-300', '20', String(i - 75), '11', '300', '21', String(i - 75 + random())]).flat())],
    [...HEAD, ...entities(...Array.from({ length: 2000 }, (_, i) => ['0', 'CIRCLE', '8', '0', '10', String((i % 50) * 3), '20', String(Math.floor(i / 50) * 3), '40', '1']).flat(), ...circle('1000'), '0', 'LINE', '8', 'BEND', '10', '-1000', '20', '0', '11', '1000', '21', '0')],
  ];
};

/** A damaged or hostile drawing by its seed; the sound ones are blanks of random parts. */
export const damagedDxf = (seed: number): Uint8Array => {
  const random = mulberry32(seed);
  const pick = (n: number): number => Math.floor(random() * n);
  const made = traps(random);
  if (seed % 5 === 0) return new TextEncoder().encode(made[(seed / 5) % made.length]!.join('\n'));
  const flat = blank(develop(tripPart(1 + (seed % 97)), { name: 'K-factor', k: 0.44 }));
  if (!flat.ok) return new Uint8Array([seed % 256]);
  const text = blankDxf(flat.value, { rule: 'K-factor 0.44' });
  if (seed % 5 === 1) {
    const bytes = new TextEncoder().encode(text);
    for (let k = 1 + pick(40); k > 0; k--) bytes[pick(bytes.length)] = pick(256);
    return bytes;
  }
  if (seed % 5 === 2) return new TextEncoder().encode(text.slice(pick(text.length), undefined).slice(0, 1 + pick(text.length)));
  if (seed % 5 === 3) return new TextEncoder().encode(text.slice(0, pick(text.length)));
  // group values of the drawing itself pushed to extremes
  const lines = text.split('\n');
  const from = Math.max(0, lines.indexOf('ENTITIES'));
  for (let k = 1 + pick(12); k > 0; k--) lines[from + pick(lines.length - from)] = EXTREMES[pick(EXTREMES.length)]!;
  return new TextEncoder().encode(lines.join('\n'));
};

export interface Damage {
  readonly seed: number;
  /** 'read', or the code of the refusal. */
  readonly end: string;
  readonly sentence: string;
  readonly seconds: number;
}

/** One damaged drawing read in this very thread: it must end in a part or a sentence. `now` in ms. */
export const readDamagedDxf = (seed: number, now: () => number): Damage => {
  const bytes = damagedDxf(seed);
  const started = now();
  const read = readDxfPart(bytes, `damaged ${seed}`, { from: 'dxf', thickness: 1.5 });
  const seconds = (now() - started) / 1000;
  if (!read.ok) return { seed, end: read.failure.code, sentence: read.failure.sentence, seconds };
  // what was read must be a part that can be worked with
  const flat = blank(develop(read.value.part, read.value.part.rule!));
  return { seed, end: 'read', sentence: flat.ok ? '' : flat.failure.sentence, seconds };
};

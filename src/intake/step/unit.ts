import { MM_IN, type Part } from '../../sheet/index.js';

/** The length unit that a file's coordinates are written in, and how it was known. */
export interface FileUnit {
  readonly unit: Part['unit'];
  /** mm in a unit, as the kernel takes it. */
  readonly mm: number;
  /** The file's own word where it names no unit that a part can have: lengths come out by `mm` all the same, and `unit` is mm. */
  readonly doubtful?: string;
}

const METRES: Readonly<Record<string, Part['unit']>> = { MILLI: 'mm', CENTI: 'cm', '': 'm' };
/** mm in a metre with an SI prefix. */
const PREFIXED: Readonly<Record<string, number>> = { KILO: 1e6, HECTO: 1e5, DECA: 1e4, '': 1e3, DECI: 100, CENTI: 10, MILLI: 1, MICRO: 1e-3, NANO: 1e-6 };
/** Shares that differ by less are the same unit: some write an inch with six digits. */
const SAME_UNIT = 1e-5;

const SI = /SI_UNIT\s*\(\s*(?:\.(\w+)\.|\$)\s*,\s*\.METRE\.\s*\)/i;
const NUMBER = String.raw`([-+]?\d+\.?\d*(?:E[-+]?\d+)?)`;
const MEASURE = new RegExp(String.raw`LENGTH_MEASURE_WITH_UNIT\s*\(\s*(?:LENGTH_MEASURE\s*\(\s*)?${NUMBER}\s*\)?\s*,\s*#(\d+)`, 'i');

/** The records of a STEP file that hold a word, by number: `#12 = (LENGTH_UNIT() ...);`, one string each. */
const recordsWith = (text: string, word: string): Map<string, string> => {
  const found = new Map<string, string>();
  for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + 1)) {
    const end = text.indexOf(';', at);
    const record = /#(\d+)\s*=\s*([^;]*)$/.exec(text.slice(text.lastIndexOf(';', at) + 1, end < 0 ? undefined : end));
    if (record) found.set(record[1]!, record[2]!);
  }
  return found;
};

/** mm that a unit by conversion has, by the measure that it is made from; undefined where that is not to be made out. */
const converted = (record: string, units: ReadonlyMap<string, string>, text: string): number | undefined => {
  const measure = MEASURE.exec(recordsWith(text, 'LENGTH_MEASURE_WITH_UNIT').get(/CONVERSION_BASED_UNIT\s*\([^#]*#(\d+)/i.exec(record)?.[1] ?? '') ?? '');
  const base = SI.exec(units.get(measure?.[2] ?? '') ?? '');
  const [each, metre] = [Number(measure?.[1]), base ? PREFIXED[(base[1] ?? '').toUpperCase()] : undefined];
  return metre !== undefined && each > 0 ? each * metre : undefined;
};

const UNKNOWN: FileUnit = { unit: 'mm', mm: 1, doubtful: 'no unit' };

/**
 * Reads the length unit from the text: the unit that the geometry's context assigns, not the millimetre base that an
 * inch file also lists for its conversion.
 */
export const fileUnit = (text: string): FileUnit => {
  const units = recordsWith(text, 'LENGTH_UNIT');
  const contexts = recordsWith(text, 'GLOBAL_UNIT_ASSIGNED_CONTEXT');
  for (const context of contexts.values()) {
    const list = /GLOBAL_UNIT_ASSIGNED_CONTEXT\s*\(\s*\(([^)]*)\)/.exec(context)?.[1] ?? '';
    for (const [, id] of list.matchAll(/#(\d+)/g)) {
      const record = units.get(id!);
      if (record === undefined) continue;
      const named = /CONVERSION_BASED_UNIT\s*\(\s*'([^']{0,40})/i.exec(record)?.[1];
      if (named !== undefined) {
        const mm = converted(record, units, text) ?? (/inch/i.test(named) ? MM_IN.inch : 1);
        return Math.abs(mm / MM_IN.inch - 1) < SAME_UNIT ? { unit: 'inch', mm: MM_IN.inch } : { unit: 'mm', mm, doubtful: `${named} of ${Number(mm.toPrecision(6))} mm` };
      }
      const prefix = (SI.exec(record)?.[1] ?? '').toUpperCase();
      const known = SI.test(record) ? METRES[prefix] : undefined;
      if (known) return { unit: known, mm: MM_IN[known] };
      return { unit: 'mm', mm: PREFIXED[prefix] ?? 1, doubtful: SI.test(record) ? `${prefix.toLowerCase()}metre` : 'an unknown unit' };
    }
  }
  return UNKNOWN;
};

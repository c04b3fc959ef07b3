import type { Part } from '../../sheet/index.js';

/** The length unit that a file's coordinates are written in, and how it was known. */
export interface FileUnit {
  readonly unit: Part['unit'];
  /** Nothing in the file named a unit that a part can have: the lengths came out as the kernel took them. */
  readonly doubtful?: string;
}

const METRES: Readonly<Record<string, Part['unit']>> = { MILLI: 'mm', CENTI: 'cm', '': 'm' };

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
      const named = /CONVERSION_BASED_UNIT\s*\(\s*'([^']*)'/i.exec(record)?.[1];
      if (named !== undefined) return /inch/i.test(named) ? { unit: 'inch' } : { unit: 'mm', doubtful: named };
      const prefix = /SI_UNIT\s*\(\s*(?:\.(\w+)\.|\$)\s*,\s*\.METRE\.\s*\)/i.exec(record);
      const known = prefix ? METRES[(prefix[1] ?? '').toUpperCase()] : undefined;
      return known ? { unit: known } : { unit: 'mm', doubtful: prefix?.[1] ?? 'an unknown unit' };
    }
  }
  return { unit: 'mm', doubtful: 'no unit' };
};

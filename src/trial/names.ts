import type { Part } from '../sheet/index.js';

/**
 * What people call the plates: plate 0 is the base, every other one the flange beyond the bend that joins it to the
 * base's side. The bends' ids stand on every picture.
 */
export const plateNames = (part: Part): readonly string[] => {
  const names: string[] = part.plates.map((_, i) => `plate ${i + 1}`);
  names[0] = part.bends.length > 0 ? 'the base' : 'the sheet';
  const seen = new Set([0]);
  const queue = [0];
  for (let plate = queue.shift(); plate !== undefined; plate = queue.shift()) {
    for (const bend of part.bends) {
      const end = bend.sides.findIndex((s) => s.plate === plate);
      if (end < 0) continue;
      const other = bend.sides[1 - end]!.plate;
      if (seen.has(other)) continue;
      seen.add(other);
      names[other] = `the flange beyond ${bend.id}`;
      queue.push(other);
    }
  }
  return names;
};

/** "b1", "b1 and b2", "b1, b2 and b3". */
export const listed = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]!}`;

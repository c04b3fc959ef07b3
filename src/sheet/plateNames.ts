import { signedArea } from '../geometry/index.js';
import type { Part } from './part.js';
import { neighboursOf } from './tree.js';

/**
 * The plate that people call the base: where most of the sheet and most of the bends come together, by area times number of bends; of equals the first.
 * A channel's web is it even between longer legs, a panel is it beside a narrow flange with many tabs. Common practice, no source.
 */
const baseOf = (part: Part): number => {
  const weights = neighboursOf(part).map(({ length }, plate) => Math.abs(signedArea(part.plates[plate]!.outline)) * length);
  return weights.indexOf(Math.max(...weights));
};

/** What people call the plates: the base, and every other one the flange beyond the bend that joins it to the base's side. The bends' ids stand on every picture. */
export const plateNames = (part: Part): readonly string[] => {
  if (part.bends.length === 0) return part.plates.map(() => 'the sheet');
  const neighbours = neighboursOf(part);
  const names: (string | undefined)[] = part.plates.map(() => undefined);
  const queue = [baseOf(part)];
  names[queue[0]!] = 'the base';
  for (let plate = queue.shift(); plate !== undefined; plate = queue.shift()) {
    for (const { bend, plate: other } of neighbours[plate]!) {
      if (names[other] !== undefined) continue;
      names[other] = `the flange beyond ${part.bends[bend]!.id}`;
      queue.push(other);
    }
  }
  return names.map((name, i) => name ?? `plate ${i + 1}`);
};

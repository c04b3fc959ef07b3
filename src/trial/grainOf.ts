import type { Grain } from '../metal/index.js';
import { type Developed, blank } from '../sheet/index.js';

/** A bend line that lies this near to the rolling direction bends as one along it, degrees. Common practice, no source. */
const ALONG = 45;

/** How a bend's line lies to the rolling direction that the part's marks tell; undefined where they tell none. */
export const grainOf = (sheet: Developed): ((bend: number) => Grain | undefined) => {
  const rolling = sheet.part.marks?.rolling;
  const flat = rolling === undefined ? undefined : blank(sheet);
  if (rolling === undefined || flat?.ok !== true) return () => undefined;
  const lines = new Map(flat.value.bendLines.map((line) => [line.id, line]));
  return (bend) => {
    const line = lines.get(sheet.part.bends[bend]!.id);
    if (line === undefined) return undefined;
    const turned = (Math.atan2(line.to[1] - line.from[1], line.to[0] - line.from[0]) * 180) / Math.PI - rolling;
    const off = Math.abs((((turned % 180) + 270) % 180) - 90);
    return off <= ALONG ? 'along' : 'across';
  };
};

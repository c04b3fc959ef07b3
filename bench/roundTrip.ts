import { type Part, type Result, profilePart, tabPlate, trayPart } from '../src/sheet/index.js';
import { circle, signedArea } from '../src/geometry/index.js';
import { blank, develop } from '../src/sheet/index.js';
import { intakeOf } from '../src/intake/step/intakeOf.js';
import type { Kernel } from '../src/intake/step/kernel.js';
import { loadStep } from '../src/intake/step/load.js';
import { writeStep } from '../src/intake/step/writeStep.js';
import { mulberry32 } from './mulberry32.js';

const holed = (part: Part, random: () => number): Part => ({
  ...part,
  plates: part.plates.map((plate) => {
    const xs = plate.outline.map((v) => v.x);
    const ys = plate.outline.map((v) => v.y);
    const [w, h] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
    const r = Math.min(w, h) * (0.1 + 0.1 * random());
    return random() < 0.5 ? plate : { ...plate, holes: [circle(Math.min(...xs) + w / 2, Math.min(...ys) + h / 2, r, true)] };
  }),
});

/** A random part that can be built as one solid: strips of up to five flanges, trays, plates with tabs. */
export const randomPart = (seed: number): Part => {
  const random = mulberry32(seed);
  const between = (a: number, b: number): number => Number((a + (b - a) * random()).toFixed(2));
  for (;;) {
    const thickness = between(0.5, 4);
    const insideRadius = between(0.2, 2) * thickness;
    const name = `r${seed}`;
    const kind = random();
    const turn = (): number => (random() < 0.5 ? 1 : -1) * between(20, 120);
    const long = (): number => between(8 * thickness + 3 * insideRadius, 60 + 8 * thickness + 3 * insideRadius);
    let made: Result<Part>;
    if (kind < 0.6) {
      const count = 2 + Math.floor(random() * 3);
      // alternating turns, so that no flange runs into another
      const side = random() < 0.5 ? 1 : -1;
      const turns = Array.from({ length: count - 1 }, (_, i) => side * (i % 2 === 0 ? 1 : -1) * between(20, 110));
      made = profilePart({ name, thickness, insideRadius, width: between(20, 200), flanges: turns.concat(0).map(long), turns });
    } else if (kind < 0.8) {
      const arm = [{ length: long(), turn: between(30, 90) * (random() < 0.5 ? 1 : -1) }];
      made = trayPart({ name, thickness, insideRadius, base: [between(150, 300), between(120, 200)], arms: [arm, random() < 0.5 ? [] : arm, arm, []] });
    } else {
      const row = { count: 1 + Math.floor(random() * 3), width: between(8, 20), length: long(), turn: turn() };
      made = tabPlate({ name, thickness, insideRadius, base: [between(120, 200), between(120, 200)], rows: [row, undefined, row, undefined] });
    }
    if (made.ok) return holed(made.value, random);
  }
};

const bends = (part: Part): string => part.bends.map((b) => `${b.bendAngle.toFixed(3)}/${b.insideRadius.toFixed(3)}`).sort().join(' ');

/**
 * Part to STEP text to Part: what differs, in words. Thickness, bend angles and radii within 1e-4; the kernel's volume
 * of the written solid against thickness times the nominal blank's area at K = 0.5 within 1e-3.
 */
export const roundTrip = (oc: Kernel, part: Part, shares: readonly number[] = part.bends.map(() => 1)): readonly string[] => {
  const wrong: string[] = [];
  const written = writeStep(oc, part, shares);
  if ('sentence' in written) return [written.sentence];
  const flat = blank(develop(part, { name: 'K-factor', k: 0.5 }));
  if (!flat.ok) return [flat.failure.sentence];
  const area = [flat.value.outline, ...flat.value.holes].reduce((sum, c) => sum + signedArea(c), 0);
  const share = written.mm3 / (area * part.thickness) - 1;
  if (!(Math.abs(share) < 1e-3)) wrong.push(`volume differs by ${share.toExponential(2)}`);
  const { parts, refused } = intakeOf(loadStep(oc, new TextEncoder().encode(written.text)), { fileName: 'r.step', text: written.text });
  const read = parts[0]?.part;
  if (parts.length !== 1 || !read) return [...wrong, `${parts.length} parts; ${refused[0]?.sentence ?? ''}`];
  if (Math.abs(read.thickness - part.thickness) > 1e-4) wrong.push(`thickness ${read.thickness}, not ${part.thickness}`);
  if (read.plates.length !== part.plates.length) wrong.push(`${read.plates.length} plates, not ${part.plates.length}`);
  const key = (b: Part['bends'][number]): number => 1000 * b.bendAngle + b.insideRadius;
  const wanted = part.bends.map((b, i) => ({ angle: b.bendAngle * shares[i]!, radius: b.insideRadius, whole: shares[i] === 1 })).sort((a, b) => a.angle - b.angle || a.radius - b.radius);
  const got = [...read.bends].sort((a, b) => key(a) - key(b));
  wanted.forEach(({ angle, radius, whole }, i) => {
    const other = got[i];
    if (!other || Math.abs(other.bendAngle - angle) > 1e-4 || (whole && Math.abs(other.insideRadius - radius) > 1e-4)) wrong.push(`bend ${i + 1}: ${angle.toFixed(4)} r ${radius.toFixed(4)} came back as ${other ? bends({ ...read, bends: [other] }) : 'nothing'}`);
  });
  return wrong;
};

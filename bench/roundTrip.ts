import { Clipper } from 'clipper2-ts';
import { type Part, type Result, type Sketch, grow, partOf, polygon, profilePart, tabPlate, trayPart } from '../src/sheet/index.js';
import { type Contour, circle, flatten, signedArea, vertex } from '../src/geometry/index.js';
import { blank, develop } from '../src/sheet/index.js';
import type { Kernel } from '../src/intake/step/kernel.js';
import { readSolids } from '../src/intake/step/readSolids.js';
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

interface Sheet {
  readonly name: string;
  readonly thickness: number;
  readonly insideRadius: number;
}

/** A strip between two slanted cuts that run straight over plates and bends: each bend's metal ends slanted on its arc. */
const tapered = ({ name, thickness, insideRadius }: Sheet, width: number, flats: readonly number[], turns: readonly number[], [left, right]: readonly [number, number]): Part => {
  const sketch: Sketch = { plates: [], bends: [] };
  const ends = (y: number): readonly [number, number] => [left * y, width - right * y];
  let y = 0;
  flats.forEach((flat, k) => {
    if (k > 0) {
      const turn = turns[k - 1]!;
      // K = 0.5: the middle of the sheet keeps its length
      const strip = ((Math.abs(turn) * Math.PI) / 180) * (insideRadius + thickness / 2);
      const [[a, b], [c, d]] = [ends(y), ends(y + strip)];
      y += strip;
      const outline = polygon([[c, 0], [d, 0], [ends(y + flat)[1], flat], [ends(y + flat)[0], flat]]);
      grow(sketch, k - 1, { from: [b, flats[k - 1]!], to: [a, flats[k - 1]!] }, turn, insideRadius, outline, a);
      const last = sketch.bends.length - 1;
      sketch.bends[last] = { ...sketch.bends[last]!, zone: [polygon([[0, 0], [b - a, 0], [d - a, 1], [c - a, 1]])] };
    } else {
      sketch.plates.push({ outline: polygon([[ends(0)[0], 0], [ends(0)[1], 0], [ends(flat)[1], flat], [ends(flat)[0], flat]]), holes: [] });
    }
    y += flat;
  });
  return partOf(name, thickness, sketch, 'Plates are drawn flat, between tangent lines.');
};

/** A plate with a tab between two reliefs of its edge, square or with a round bottom. */
const relieved = ({ name, thickness, insideRadius }: Sheet, [w, d]: readonly [number, number], tab: readonly [number, number], flat: number, turn: number, relief: { readonly width: number; readonly depth: number; readonly round: boolean }): Part => {
  const [x0, x1] = tab;
  const foot = d - relief.depth;
  const bottom = relief.round ? -1 : 0;
  const outline = [
    vertex(0, 0), vertex(w, 0), vertex(w, d), vertex(x1 + relief.width, d), vertex(x1 + relief.width, foot, bottom), vertex(x1, foot), vertex(x1, d),
    vertex(x0, d), vertex(x0, foot, bottom), vertex(x0 - relief.width, foot), vertex(x0 - relief.width, d), vertex(0, d),
  ];
  const sketch: Sketch = { plates: [{ outline, holes: [] }], bends: [] };
  grow(sketch, 0, { from: [x1, d], to: [x0, d] }, turn, insideRadius, polygon([[0, 0], [x1 - x0, 0], [x1 - x0, flat], [0, flat]]));
  return partOf(name, thickness, sketch, 'Plates are drawn flat, between tangent lines.');
};

/** A random part that can be built as one solid: strips of up to five flanges, straight or tapered, trays, mitred trays with returns, plates with tabs, tabs between reliefs. */
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
    if (kind < 0.1) {
      const flats = [long(), long(), long()].slice(0, 2 + Math.floor(random() * 2));
      const side = random() < 0.5 ? 1 : -1;
      const length = flats.reduce((sum, flat) => sum + flat, 0) + 2 * Math.PI * (insideRadius + thickness);
      const slope = (): number => between(-0.2, 0.2);
      made = { ok: true, value: tapered({ name, thickness, insideRadius }, between(80, 200) + 0.4 * length, flats, flats.slice(1).map((_, i) => side * (i === 0 ? 1 : -1) * between(20, 110)), [slope(), slope()]) };
    } else if (kind < 0.2) {
      const relief = { width: between(1, 3) * thickness, depth: between(1, 3) * thickness, round: random() < 0.5 };
      const start = between(30, 60);
      made = { ok: true, value: relieved({ name, thickness, insideRadius }, [between(150, 250), between(80, 150)], [start, start + between(20, 60)], long(), turn(), relief) };
    } else if (kind < 0.3) {
      // returns on three or four sides: flanges and returns end in mitres
      const [up, back] = [long(), between(4 * thickness + 2 * insideRadius, 20 + 4 * thickness + 2 * insideRadius)];
      const side = random() < 0.5 ? 1 : -1;
      const arm = [{ length: up + 3 * insideRadius, turn: 90 * side }, { length: back, turn: side * between(60, 90) }];
      made = trayPart({ name, thickness, insideRadius, base: [between(200, 300), between(200, 300)], arms: [arm, arm, arm, random() < 0.5 ? [] : arm] });
    } else if (kind < 0.6) {
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

/** Share of an area that chords of 1e-4 mm on the smallest holes leave. */
const SAME_AREA = 2e-5;
const clipperArea = (contours: readonly Contour[]): number =>
  contours.reduce((sum, contour) => sum + Clipper.areaD(flatten(contour, 1e-4).map(([x, y]) => ({ x, y }))), 0);

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
  const contours = [flat.value.outline, ...flat.value.holes];
  const area = contours.reduce((sum, c) => sum + signedArea(c), 0);
  // the same by another engine, over chords that leave the arcs by 1e-4 mm at most; and plates and strips summed before they are joined
  const own = clipperArea(contours);
  const pieces = part.plates.reduce((sum, { outline, holes }) => sum + clipperArea([outline, ...holes]), 0) +
    part.bends.reduce((sum, { zone, bendAngle, insideRadius }) => sum + clipperArea(zone) * ((bendAngle * Math.PI) / 180) * (insideRadius + part.thickness / 2), 0);
  if (!(Math.abs(own / area - 1) < SAME_AREA && Math.abs(pieces / area - 1) < SAME_AREA)) wrong.push(`the blank has ${area} mm2, by another engine ${own}, its pieces ${pieces}`);
  const share = written.mm3 / (area * part.thickness) - 1;
  if (!(Math.abs(share) < 1e-3)) wrong.push(`volume differs by ${share.toExponential(2)}`);
  const { parts, refused } = readSolids(oc, new TextEncoder().encode(written.text), { fileName: 'r.step', text: written.text });
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

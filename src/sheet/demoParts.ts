import { type Contour, type Vec2, circle, reversed, vertex } from '../geometry/index.js';
import { fillet } from './fillet.js';
import type { Part } from './part.js';
import { profilePart } from './profilePart.js';
import type { Result } from './result.js';
import { trayPart } from './trayPart.js';

const built = (result: Result<Part>): Part => {
  if (!result.ok) throw new Error(result.failure.sentence);
  return result.value;
};

const invented = (part: Part): Part => ({
  ...part,
  assumptions: [...part.assumptions, { code: 'other', sentence: 'A demo part of our own invention, dimensions included.', plates: [], bends: [] }],
});

const withPlate = (part: Part, plate: number, change: { readonly outline?: Contour; readonly holes?: readonly Contour[] }): Part => ({
  ...part,
  plates: part.plates.map((it, i) => (i === plate ? { ...it, ...change } : it)),
});

const hole = ([x, y]: Vec2, diameter: number): Contour => circle(x, y, diameter / 2, true);

/** A hole with two round ends, its middle at (x, y), `length` over all along x. */
const slot = ([x, y]: Vec2, length: number, width: number): Contour => {
  const [a, r] = [(length - width) / 2, width / 2];
  return reversed([vertex(x - a, y - r), vertex(x + a, y - r, 1), vertex(x + a, y + r), vertex(x - a, y + r, 1)]);
};

/** The part with two corners of a plate rounded; the greater index first, so that the other keeps its own. */
const round = (part: Part, plate: number, corners: readonly [number, number], radius: number): Part => {
  const [high, low] = corners;
  return withPlate(part, plate, { outline: fillet(fillet(part.plates[plate]!.outline, high, radius), low, radius) });
};

const shelfBracket = (): Part => {
  const angle = built(profilePart({ name: 'Demo shelf bracket', thickness: 3, insideRadius: 3, width: 40, flanges: [120, 80], turns: [90] }));
  const drilled = withPlate(withPlate(angle, 0, { holes: [hole([20, 15], 6.5), slot([20, 60], 14, 6.5)] }), 1, { holes: [hole([20, 20], 5.5), hole([20, 60], 5.5)] });
  // free ends: corners 0, 1 of the first flange, 2, 3 of the last
  return round(round(drilled, 0, [1, 0], 8), 1, [3, 2], 8);
};

const tray = (): Part => {
  const arm = [{ length: 35, turn: 90 }];
  return built(trayPart({ name: 'Demo lidless tray', thickness: 1.5, insideRadius: 1.5, base: [240, 160], arms: [arm, arm, arm, arm] }));
};

const hatRail = (): Part => {
  const rail = built(profilePart({ name: 'Demo hat rail', thickness: 1.5, insideRadius: 1.5, width: 400, flanges: [22, 25, 40, 25, 22], turns: [-90, 90, 90, -90] }));
  const row = [50, 150, 250, 350].map((x) => slot([x, 10], 12, 5.5));
  return withPlate(withPlate(rail, 0, { holes: row }), 4, { holes: row });
};

const dripEdge = (): Part =>
  built(
    profilePart({
      name: 'Demo drip edge',
      thickness: 0.8,
      insideRadius: 0.8,
      width: 500,
      flanges: [12, 90, 45, 18],
      turns: [{ turn: -180, insideRadius: 0.1 }, 80, -45],
    }),
  );

const cover = (): Part => {
  const long = [{ length: 30, turn: 90 }, { length: 18, turn: -90 }];
  const short = [{ length: 28, turn: 90 }];
  const box = built(trayPart({ name: 'Demo cover with fixing tabs', thickness: 1.2, insideRadius: 1.2, base: [220, 130], arms: [long, short, long, short] }));
  const holes = [40, 110, 180].map((x) => hole([x, 8], 4.5));
  // plates 2 and 5 are the tabs: arms grow one after the other, two plates each on the long sides, one on the short
  const vents = [55, 65, 75].map((y) => slot([110, y], 60, 3));
  return withPlate(withPlate(withPlate(box, 2, { holes }), 5, { holes }), 0, { holes: vents });
};

/** Everyday parts of our own, invented for demonstrations and marked so in name and assumptions. */
export const demoParts = (): readonly Part[] => [shelfBracket(), tray(), hatRail(), dripEdge(), cover()].map(invented);

import { defineMetals } from './define.js';
import type { Metal, MinRadius } from './metal.js';
import { TEXTBOOK_RADII } from './textbookRadii.js';

const din: MinRadius = { kind: 'steel table', mark: 'standard', source: 'DIN 6935:1975-10, table of smallest inside radii' };
/** Across as in the book's table, along half as much again. */
const softRadius = (group: keyof typeof TEXTBOOK_RADII): { readonly across: number; readonly along: number } => ({
  across: TEXTBOOK_RADII[group][0], along: 1.5 * TEXTBOOK_RADII[group][0],
});
const softSteel: MinRadius = {
  kind: 'factor', ...softRadius('low-carbon, low-alloy and HSLA steel'), mark: 'textbook',
  source: 'Kalpakjian and Schmid, Manufacturing Engineering and Technology, SI 6th ed. 2009, table 16.3 (low-carbon steel, soft, 0.5 t); along the grain half as much again, common practice, no source',
};
const austenitic: MinRadius = {
  kind: 'factor', ...softRadius('austenitic stainless'), mark: 'textbook',
  source: 'Kalpakjian and Schmid, SI 6th ed. 2009, table 16.3 (austenitic stainless, soft, 0.5 t); along the grain half as much again, common practice, no source',
};

const en10025 = 'EN 10025-2, table 7';
const en10130 = 'EN 10130:1999';
const coldRolled = { thicknessStandard: 'EN 10131', thickness: [0.5, 3] } as const;
const hotRolled = { thicknessStandard: 'EN 10051', thickness: [1.5, 15] } as const;
const steel = { modulus: 210000, poisson: 0.3, density: 7850, gauge: 'manufacturers standard' } as const;

const mild: readonly Metal[] = defineMetals({ family: 'mild steel', ...steel }, [
  {
    id: 'dc01', name: 'DC01 cold-rolled steel',
    yield: [140, 280, 210, 'max', 'standard', `${en10130} (the lower end 140 from memory)`],
    tensile: [270, 410, 335, 'both', 'standard', en10130],
    uniform: 0.19, minRadius: softSteel, ...coldRolled,
  },
  {
    id: 'dc03', name: 'DC03 cold-rolled steel',
    yield: [140, 240, 185, 'max', 'standard', `${en10130} (the lower end 140 from memory)`],
    tensile: [270, 370, 320, 'both', 'standard', en10130],
    uniform: 0.2, minRadius: softSteel, ...coldRolled,
  },
  {
    id: 'dc04', name: 'DC04 cold-rolled steel',
    yield: [140, 210, 170, 'max', 'standard', `${en10130} (the lower end 140 from memory)`],
    tensile: [270, 350, 310, 'both', 'standard', en10130],
    uniform: 0.21, minRadius: softSteel, ...coldRolled,
  },
  {
    id: 's235jr', name: 'S235JR structural steel',
    yield: [235, 355, 285, 'min', 'standard', `${en10025} (up to 16 mm)`],
    tensile: [360, 510, 420, 'both', 'standard', en10025],
    uniform: 0.17, minRadius: din, ...hotRolled,
  },
  {
    id: 's355jr', name: 'S355JR structural steel',
    yield: [355, 475, 400, 'min', 'standard', `${en10025} (up to 16 mm)`],
    tensile: [470, 680, 540, 'both', 'standard', `${en10025} (510 to 680 under 3 mm, 470 to 630 from 3 mm)`],
    uniform: 0.14, minRadius: din, ...hotRolled,
  },
  {
    id: 'a36', name: 'A36 structural steel',
    yield: [250, 370, 290, 'min', 'standard', 'ASTM A36 (36 ksi)'],
    tensile: [400, 550, 450, 'both', 'standard', 'ASTM A36 (58 to 80 ksi)'],
    uniform: 0.17, minRadius: din, ...hotRolled,
  },
  {
    id: 'a1008-cs-b', name: 'A1008 CS type B cold-rolled steel',
    yield: [140, 275, 205, 'none', 'memory', 'ASTM A1008 typical, not mandatory'],
    tensile: [280, 400, 330, 'none', 'memory', 'not specified by ASTM A1008'],
    uniform: 0.19, minRadius: softSteel, ...coldRolled,
  },
]);

const strong: readonly Metal[] = defineMetals({ family: 'high-strength steel', ...steel }, [
  {
    id: 's500mc', name: 'S500MC hot-rolled high-strength steel',
    yield: [500, 620, 545, 'min', 'memory', 'EN 10149-2'],
    tensile: [550, 700, 610, 'both', 'memory', 'EN 10149-2'],
    uniform: 0.1,
    minRadius: { kind: 'rows', rows: [[3, 1], [6, 1.5], [15, 2]], alongFactor: 1.3, mark: 'memory', source: 'EN 10149-2; along the grain common practice' },
    ...hotRolled,
  },
  {
    id: 's700mc', name: 'S700MC hot-rolled high-strength steel',
    yield: [700, 850, 750, 'min', 'memory', 'EN 10149-2 (up to 8 mm)'],
    tensile: [750, 950, 820, 'both', 'memory', 'EN 10149-2'],
    uniform: 0.075,
    minRadius: { kind: 'rows', rows: [[3, 1.5], [6, 2], [15, 2.5]], alongFactor: 1.3, mark: 'memory', source: 'EN 10149-2; along the grain common practice' },
    ...hotRolled,
  },
]);

const galvanised: readonly Metal[] = defineMetals({ family: 'galvanised steel', ...steel, gauge: 'galvanised' }, [
  {
    id: 'dx51d-z', name: 'DX51D+Z galvanised steel',
    yield: [220, 380, 290, 'none', 'memory', 'EN 10346 sets no yield for DX51D'],
    tensile: [270, 500, 375, 'both', 'memory', 'EN 10346'],
    uniform: 0.16,
    minRadius: { kind: 'factor', across: 1, along: 1.5, mark: 'common practice', source: 'so that the zinc does not flake; common practice, no source' },
    ...coldRolled,
  },
  {
    id: 'a653-cs-b', name: 'A653 CS type B galvanised steel',
    yield: [205, 380, 280, 'none', 'memory', 'ASTM A653 typical, not mandatory'],
    tensile: [300, 450, 365, 'none', 'memory', 'not specified by ASTM A653'],
    uniform: 0.16,
    minRadius: { kind: 'factor', across: 1, along: 1.5, mark: 'common practice', source: 'so that the zinc does not flake; common practice, no source' },
    ...coldRolled,
  },
]);

const stainless: readonly Metal[] = defineMetals(
  { family: 'stainless steel', modulus: 200000, poisson: 0.3, density: 7900, gauge: 'us standard' },
  [
    {
      id: '1.4301', name: '1.4301 (304) stainless steel', temper: '2B',
      yield: [230, 350, 280, 'min', 'memory', 'EN 10088-2, cold-rolled'],
      tensile: [540, 750, 630, 'both', 'memory', 'EN 10088-2, cold-rolled'],
      uniform: 0.37, minRadius: austenitic, thicknessStandard: 'EN 10259', thickness: [0.5, 8],
    },
    {
      id: '1.4404', name: '1.4404 (316L) stainless steel', temper: '2B',
      yield: [240, 350, 285, 'min', 'memory', 'EN 10088-2, cold-rolled'],
      tensile: [530, 680, 600, 'both', 'memory', 'EN 10088-2, cold-rolled'],
      uniform: 0.35, minRadius: austenitic, thicknessStandard: 'EN 10259', thickness: [0.5, 8],
    },
    {
      id: '1.4016', name: '1.4016 (430) stainless steel', temper: '2B',
      yield: [260, 380, 310, 'min', 'memory', 'EN 10088-2, cold-rolled'],
      tensile: [430, 600, 480, 'both', 'memory', 'EN 10088-2, cold-rolled'],
      uniform: 0.16,
      minRadius: { kind: 'factor', across: 1, along: 1.5, mark: 'common practice', source: 'ferritic stainless; common practice, no source' },
      thicknessStandard: 'EN 10259', thickness: [0.5, 4],
    },
  ],
);

const wear: readonly Metal[] = defineMetals({ family: 'wear plate', ...steel }, [
  {
    id: 'wear-400', name: 'wear plate, quenched and tempered, 400 HB (generic)',
    yield: [900, 1150, 1000, 'none', 'memory', 'typical of the hardness; no public standard sets it'],
    tensile: [1100, 1400, 1250, 'none', 'memory', 'typical of the hardness; no public standard sets it'],
    uniform: 0.09,
    minRadius: { kind: 'rows', rows: [[8, 2.5], [20, 3]], alongFactor: 1.33, mark: 'memory', source: 'generic 400 HB plate: 2.5 to 4 t' },
    thicknessStandard: 'EN 10029', thickness: [3, 20],
  },
]);

export const steels: readonly Metal[] = [...mild, ...strong, ...galvanised, ...stainless, ...wear];

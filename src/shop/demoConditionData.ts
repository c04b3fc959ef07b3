// The condition record of the demo floor's used machine. Invented like the machine itself: every reading is typical of the trade
// (common practice, no source). It passes through the same parser as a record from outside.

const wear = (bed: readonly number[], ram: readonly number[]) => bed.map((b, i) => ({ along: -1250 + 250 * i, bed: b, ram: ram[i]! }));

/** Hollow in the middle, where small work was bent for years; the ram hangs a little to the left. */
const BED = [0, 0, -0.01, -0.03, -0.05, -0.06, -0.05, -0.02, -0.01, 0, 0];
const RAM = [0.02, 0.02, 0.02, 0.01, 0.01, 0.01, 0.01, 0.02, 0.03, 0.03, 0.04];

const strip = (load: 'light' | 'heavy', thickness: number, v: number, length: number, [left, middle, right]: readonly [number, number, number]) =>
  ({ load, metal: 'DC01 cold-rolled steel (demo)', thickness, v, length, includedAngles: { left, middle, right } });

const INSTRUMENTS = [
  { what: 'Dial gauge 0.01 mm on a stand', calibrated: '2025-11-12' },
  { what: 'Level line and feeler', calibrated: '2025-11-12' },
  { what: 'Digital protractor', calibrated: '2025-12-01' },
];

export const DEMO_CONDITION_DATA = {
  machineId: 'worn',
  demo: true,
  plate: { serial: 'demo', year: 2004, force: 800_000, mass: 6100 },
  manuals: 'in part',
  supply: '400 V, 3 phases, 25 A',
  asFound: {
    date: '2026-02-03',
    by: 'demo',
    instruments: INSTRUMENTS,
    throat: 'nothing found',
    throatWords: 'Both throats cleaned and looked at with dye penetrant.',
    ramDrift: { mm: 1.4, seconds: 60 },
    forceReached: 690_000,
    guideClearance: 0.35,
    wear: wear(BED, RAM.map((r) => r * 2)),
    squareness: 0.6,
    play: 0.3,
    repeatability: { ram: 0.16, x: 0.5, r: null, z: null },
    crowningWorks: null,
    tiltWorks: null,
    guarding: 'missing',
    stoppingTime: null,
    testedBy: '',
    testBends: [strip('light', 1.5, 12, 200, [90.4, 91.3, 90.1]), strip('heavy', 4, 32, 1500, [90.2, 92.4, 90])],
    remarks: 'Taken in from a workshop that bent short angles in the middle of the bed.',
  },
  overhaul: 'Cylinder seals renewed, guides adjusted, gauge carriage bushed, light curtain fitted. The bed seat was left as it was.',
  overhauled: {
    date: '2026-03-17',
    by: 'demo',
    instruments: INSTRUMENTS,
    throat: 'nothing found',
    throatWords: 'As found.',
    ramDrift: { mm: 0.2, seconds: 60 },
    forceReached: 800_000,
    guideClearance: 0.12,
    wear: wear(BED, RAM),
    squareness: 0.3,
    play: 0.12,
    repeatability: { ram: 0.09, x: 0.25, r: null, z: 0.5 },
    crowningWorks: null,
    tiltWorks: null,
    guarding: 'present',
    stoppingTime: 95,
    testedBy: 'competent person (demo)',
    testBends: [strip('light', 1.5, 12, 200, [90.1, 90.6, 89.9]), strip('heavy', 4, 32, 1500, [90.1, 91.2, 89.9])],
    remarks: 'R was not measured again: its hand wheel has no scale.',
  },
};

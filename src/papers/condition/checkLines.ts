import type { ConditionState, Reading } from '../../shop/index.js';

/** One line of the check sheet: what is looked at, how, and what was found; null stays open to be filled in by hand. */
export interface CheckLine {
  readonly what: string;
  readonly how: string;
  readonly unit: string;
  readonly found: (state: ConditionState) => string | null;
  /** What stands in an open place, to be crossed out or filled up by hand. */
  readonly choose?: string;
}

export interface CheckGroup {
  readonly heading: string;
  readonly lines: readonly CheckLine[];
}

const figure = (reading: Reading, decimals: number): string | null => (reading === null ? null : reading.toFixed(decimals));
const yesNo = (value: boolean | null): string | null => (value === null ? null : value ? 'works' : 'does not work');

/** The check sheet's order: what may forbid all else comes first. */
export const CHECK_GROUPS: readonly CheckGroup[] = [
  {
    heading: 'Frame and force',
    lines: [
      { what: 'Cracks or weld repair at the throat', how: 'cleaned, both sides, dye penetrant or as a competent person says', unit: '', found: (s) => s.throat, choose: 'nothing / crack / weld repair' },
      { what: 'Where, and how it was looked for', how: 'in words; a picture beside it helps', unit: '', found: (s) => (s.throatWords === '' ? null : s.throatWords) },
      { what: 'Force reached', how: 'load cell or pressure gauge and piston area, ram on a block in the middle', unit: 'kN', found: (s) => figure(s.forceReached === null ? null : s.forceReached / 1000, 0) },
      { what: 'Ram drift under hold', how: 'dial gauge on the bed, ram at rest without pressure', unit: 'mm in s', found: (s) => (s.ramDrift === null ? null : `${s.ramDrift.mm.toFixed(2)} mm in ${s.ramDrift.seconds} s`), choose: '              mm in              s' },
      { what: 'Clearance in the guides', how: 'feeler, ram at half stroke, each guide', unit: 'mm', found: (s) => figure(s.guideClearance, 2) },
    ],
  },
  {
    heading: 'Ram and gauge, come back to one place ten times',
    lines: [
      { what: 'Repeatability of the ram', how: 'dial gauge under the ram, both ends', unit: '± mm', found: (s) => figure(s.repeatability.ram, 3) },
      { what: 'Repeatability of X', how: 'dial gauge on the finger, from both directions', unit: '± mm', found: (s) => figure(s.repeatability.x, 3) },
      { what: 'Repeatability of R', how: 'dial gauge on the finger, from both directions', unit: '± mm', found: (s) => figure(s.repeatability.r, 3) },
      { what: 'Repeatability of Z', how: 'dial gauge on the finger, from both directions', unit: '± mm', found: (s) => figure(s.repeatability.z, 3) },
      { what: 'Gauge out of square with the bending plane', how: 'both fingers on a straight edge held in the die', unit: 'mm on 1,000', found: (s) => figure(s.squareness, 2) },
      { what: 'Play of a finger', how: 'pushed and pulled by hand, dial gauge on its nose', unit: 'mm', found: (s) => figure(s.play, 2) },
    ],
  },
  {
    heading: 'Crowning and tilt',
    lines: [
      { what: 'Crowning', how: 'set to its end and back, dial gauge in the middle of the bed', unit: '', found: (s) => yesNo(s.crowningWorks), choose: 'works / does not work' },
      { what: 'Tilt of the ram', how: 'set out of level and back, dial gauge at both ends', unit: '', found: (s) => yesNo(s.tiltWorks), choose: 'works / does not work' },
    ],
  },
  {
    heading: 'Guarding, by a competent person, to the local rules',
    lines: [
      { what: 'Guarding', how: 'complete, fixed, tried', unit: '', found: (s) => s.guarding, choose: 'present / missing' },
      { what: 'Stopping time', how: 'as tested by a competent person', unit: 'ms', found: (s) => figure(s.stoppingTime, 0) },
      { what: 'Tested by', how: 'name', unit: '', found: (s) => (s.testedBy === '' ? null : s.testedBy) },
    ],
  },
];

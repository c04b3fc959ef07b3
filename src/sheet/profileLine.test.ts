import { describe, expect, it } from 'vitest';
import { PROFILE_HELP, type LineFault, lineProfile, partFromLine, profilePart } from './index.js';

const profile = (line: string) => {
  const read = lineProfile(line, 'p');
  if (!read.ok) throw new Error(read.fault.sentence);
  return read.value.profile;
};
const fault = (line: string): LineFault => {
  const made = partFromLine(line, 'p');
  if (made.ok) throw new Error(`"${line}" was taken`);
  return made.fault;
};

describe('lineProfile', () => {
  it('reads what the help shows', () => {
    const shown = PROFILE_HELP.split('\n').map((it) => it.trim()).find((it) => it.startsWith('40 ^90'))!;
    expect(profile(shown)).toEqual({ name: 'p', thickness: 1.5, width: 200, insideRadius: 2, flanges: [40, 60, 30], turns: [90, -45] });
  });

  it('settings by letter or word, anywhere; a radius left out is the thickness; decimals by point or comma', () => {
    expect(profile('thick 1,5 40 v 90 60 wide 100')).toEqual({ name: 'p', thickness: 1.5, width: 100, insideRadius: 1.5, flanges: [40, 60], turns: [-90] });
    expect(profile('w10 t2 r0 5')).toMatchObject({ width: 10, thickness: 2, insideRadius: 0, flanges: [5], turns: [] });
  });

  it('measures, radii and hems', () => {
    expect(profile('10 ^closed 40i ^90r3 60f v open 2 12o t1 w50')).toMatchObject({
      flanges: [10, { length: 40, measure: 'inside' }, { length: 60, measure: 'flat' }, { length: 12, measure: 'outside' }],
      turns: [{ turn: 180, insideRadius: 0.1 }, { turn: 90, insideRadius: 3 }, { turn: -180, insideRadius: 1 }],
    });
  });

  it('is the same part as the profile it stands for; each measure by hand', () => {
    const typed = partFromLine('40 ^90 60 t2 r3 w100', 'p');
    const spelt = profilePart({ name: 'p', thickness: 2, insideRadius: 3, width: 100, flanges: [40, 60], turns: [90] });
    if (!typed.ok || !spelt.ok) throw new Error('refused');
    expect(typed.value).toEqual({ ...spelt.value, reading: { from: 'profile', line: '40 ^90 60 t2 r3 w100' } });
    // flats: outside 40 less (3 + 2), inside 40 less 3, flat 40
    for (const [word, flat] of [['40', 35], ['40i', 37], ['40f', 40]] as const) {
      const part = partFromLine(`${word} ^90 60 t2 r3 w100`, 'p');
      expect(part.ok && part.value.plates[0]!.outline[2]!.y).toBeCloseTo(flat, 9);
    }
  });

  it('one sentence for each fault, with its place', () => {
    const cases: readonly (readonly [string, number, number, string])[] = [
      ['', 0, 0, 'At the end: a profile has at least one flange, like 40.'],
      ['^90 40 t1 w9', 0, 3, 'At character 1, "^90": a profile begins with a flange: give its length first.'],
      ['40 ^90 ^90 40 t1 w9', 7, 10, 'At character 8, "^90": between two bends there is a flange: give its length first.'],
      ['40 60 t1 w9', 3, 5, 'At character 4, "60": between two flanges there is a bend: give it first, like ^90 or v90.'],
      ['40 ^90 t1 w9', 12, 12, 'At the end: after the last bend there is a flange: give its length.'],
      ['40 ^190 60 t1 w9', 3, 7, 'At character 4, "^190": a bend angle lies above 0 (flat) and up to 180 (folded back).'],
      ['40 ^0 60 t1 w9', 3, 5, 'At character 4, "^0": a bend angle lies above 0 (flat) and up to 180 (folded back).'],
      ['40mm ^90 60 t1 w9', 0, 4, 'At character 1, "40mm": a flange length in mm is wanted here, like 40, 40i or 40f.'],
      ['40 <90 60 t1 w9', 3, 6, 'At character 4, "<90": a bend is wanted here (^90 up, v90 down, ^closed, ^open2), or t, w, r with a number.'],
      ['40 ^90 60 w9', 12, 12, 'At the end: the thickness (t1.5) is missing.'],
      ['40 ^90 60 t1', 12, 12, 'At the end: the width (w200) is missing.'],
      ['40 t1 t2 w9', 6, 8, 'At character 7, "t2": the thickness (t1.5) is given twice.'],
      ['40 ^open0 60 t1 w9', 3, 9, 'At character 4, "^open0": an open hem has a gap above 0 mm between its faces; without one it is ^closed.'],
      ['0 ^90 60 t1 w9', 0, 1, 'At character 1, "0": a flange is longer than 0 and at most 20000 mm.'],
    ];
    for (const [line, from, to, sentence] of cases) expect(fault(line), line).toEqual({ from, to, sentence });
    // 8 between two bends that take 4 each: by the flange's own place
    expect(fault('40 ^90 8 ^90 40 t2 w9')).toMatchObject({ from: 7, to: 8, sentence: expect.stringContaining('Flange 2 of 8 mm outside leaves 0.00 mm flat') });
  });
});

import { describe, expect, it } from 'vitest';
import {
  MACHINE, STATION, allowance, angleTrial, loadOf, rectangle, stepOf, straightPunch, stripPart, trialOf, vDie, zedTrial,
} from '../../test/proof/handTrial.js';
import type { Bend, HemArc, Part } from '../sheet/index.js';
import type { Station, Step, Trial } from '../trial/index.js';
import { proveTrial } from './index.js';

// One spoilt trial for each sentence that damaged.test.ts leaves out: what the record says of itself, and bodies of the press.

const findings = async (trial: Trial): Promise<string> => (await proveTrial(trial)).findings.join('\n');

/** The record alone, nothing replayed. */
const ofRecord = async (trial: Trial): Promise<readonly string[]> => (await proveTrial(trial, { steps: [] })).findings;

const withStep = (trial: Trial, index: number, change: Partial<Step>): Trial => ({
  ...trial,
  steps: trial.steps.map((s, i) => (i === index ? { ...s, ...change } : s)),
});

const withStation = (trial: Trial, change: Partial<Station>): Trial => ({ ...trial, stations: [{ ...STATION, ...change }] });

const [angle] = angleTrial().steps;

describe('a step against its station and its part', () => {
  const spoilt = (change: Partial<Step>): Promise<readonly string[]> => ofRecord(withStep(angleTrial(), 0, change));

  it('other tools than the station holds', async () => {
    expect(await spoilt({ punch: 'other' })).toEqual(['Step 1: it names other and die; station S1 holds punch and die.']);
    expect(await spoilt({ die: 'v8' })).toEqual(['Step 1: it names punch and v8; station S1 holds punch and die.']);
  });

  it('the punch the other way round than it stands', async () => {
    expect(await spoilt({ facing: 'reversed' })).toEqual(['Step 1: it has the punch reversed; in station S1 it stands as drawn.']);
  });

  it('bend angle and included angle that do not go together', async () => {
    expect(await spoilt({ includedAngle: 89 })).toEqual(['Step 1: bend angle 90 and included angle 89 do not make 180 degrees.']);
  });

  it('under load less than released', async () => {
    expect(await spoilt({ bendAngleUnderLoad: 89 })).toEqual(['Step 1: the bend angle under load, 89 degrees, is less than the released one of 90 degrees.']);
  });

  it('another flat length than the part has', async () => {
    // pi / 2 x 2.8 = 4.40
    expect(await spoilt({ allowance: allowance(90) + 0.1 })).toEqual(['Step 1: it prints a flat length of 4.50 mm for b1; the part has 4.40 mm.']);
  });

  it('more than the part asks', async () => {
    expect(await spoilt({ bendAngle: 95, includedAngle: 85, bendAngleUnderLoad: 96 }))
      .toEqual(['Step 1: b1 is bent to 95 degrees of bend angle; the part asks 90.', 'Bend b1 ends at 95 degrees of bend angle; the part asks 90.']);
  });

  it('a second stroke that would open what the first has bent', async () => {
    const to = (number: number, degrees: number): Step => ({ ...angle!, number, bendAngle: degrees, includedAngle: 180 - degrees, bendAngleUnderLoad: degrees + 1 });
    expect(await ofRecord({ ...angleTrial(), steps: [to(1, 60), to(2, 50), to(3, 90)] })).toEqual(['Step 2: the stroke would open b1, which stands at 60 degrees of bend angle.']);
  });

  it('one stroke over two bends, one of which is begun already', async () => {
    const one = stripPart(40, [50, 30], [{ degrees: 90, direction: 'A' }]);
    const [bend] = one.part.bends;
    const at = (from: number): Bend['sides'] => [{ plate: 0, line: { from: [from, 50], to: [from + 40, 50] } }, { plate: from === 0 ? 1 : 2, line: { from: [0, 0], to: [40, 0] } }];
    const part: Part = {
      ...one.part,
      plates: [{ outline: rectangle(0, 100, 0, 50), holes: [] }, one.part.plates[1]!, one.part.plates[1]!],
      bends: [{ ...bend!, sides: at(0) }, { ...bend!, id: 'b2', sides: at(60) }],
    };
    const stop = { plate: 0, x: allowance(90) / 2 + 50, r: 60, retract: 0 };
    const trial = trialOf({ part, allowances: [allowance(90), allowance(90)] }, [
      stepOf(1, 'b2', 'A', 0, stop, { bendAngle: 45, includedAngle: 135, bendAngleUnderLoad: 46 }),
      stepOf(2, 'b1', 'A', 0, stop, { bends: ['b1', 'b2'] }),
    ]);
    expect(await ofRecord(trial)).toEqual(['Step 2: b2 stands at another bend angle than b1 before the stroke.']);
  });

  it('numbers out of order, a station, a tool or a bend that is not there, an anvil to bend over', async () => {
    expect(await spoilt({ number: 3 })).toEqual(['Step 3 stands in place 1 of the order.']);
    expect(await spoilt({ station: 'S9' })).toEqual(['Step 1: there is no station S9.', 'Bend b1 is never made.']);
    expect(await spoilt({ bends: ['b7'] })).toEqual(['Step 1: it names a bend that the part does not have.', 'Bend b1 is never made.']);
    expect(await ofRecord(angleTrial({ punches: [] }))).toEqual([
      "Station S1: punch punch is not among the trial's tools.", 'Step 1: station S1 lacks its punch or die.', 'Bend b1 is never made.',
    ]);
    expect(await ofRecord(angleTrial({ dies: [] }))).toContain("Station S1: die die is not among the trial's tools.");
    expect(await ofRecord(angleTrial({ dies: [{ ...vDie(16, 60), shape: 'anvil' }] }))).toContain('Step 1: station S1 with straight punch and V 16 die bends nothing in a V.');
  });
});

describe('a hem', () => {
  const HEM: HemArc = { preBendAngle: 150, preBendAngleUnderLoad: 152, preInsideRadius: 2, preLength: allowance(150), closedLength: 5 };
  const strip = stripPart(100, [40, 60], [{ degrees: 180, direction: 'A' }]);
  const sheet = { ...strip, part: { ...strip.part, bends: strip.part.bends.map((b): Bend => ({ ...b, kind: 'hem', hem: HEM })) } };
  const flattening: Partial<Trial> = {
    punches: [straightPunch(10), { ...straightPunch(10, 'flat'), shape: 'flattening' }],
    dies: [vDie(16, 60), { ...vDie(16, 60, 'anvil'), shape: 'anvil' }],
    stations: [STATION, { ...STATION, id: 'S2', punch: 'flat', die: 'anvil', punchSegments: [{ length: 100, from: 200 }], dieSegments: [{ length: 100, from: 200 }] }],
  };
  const pre = (change: Partial<Step> = {}): Step => ({ ...angle!, bendAngle: 150, includedAngle: 30, bendAngleUnderLoad: 152, allowance: HEM.preLength, ...change });
  const close = (change: Partial<Step> = {}): Step =>
    ({ ...pre(), number: 2, kind: 'hem close', station: 'S2', punch: 'flat', die: 'anvil', bendAngle: 180, includedAngle: 0, bendAngleUnderLoad: 180, allowance: HEM.closedLength, ...change });
  const spoilt = (steps: readonly Step[]): Promise<readonly string[]> => ofRecord(trialOf(sheet, steps, flattening));

  it('holds as it is written', async () => {
    expect(await spoilt([pre(), close()])).toEqual([]);
  });

  it('pre-bent to another angle than its arc is written for, pre-bent twice, not closed to its end', async () => {
    expect(await spoilt([pre({ bendAngle: 140, includedAngle: 40 }), close()])).toContain(
      'Step 1: hem b1 is pre-bent to 140 degrees of bend angle, 152 under load; its arc is written for 150 and 152.');
    expect(await spoilt([pre(), pre({ number: 2 }), close({ number: 3 })])).toContain('Step 2: hem b1 is pre-bent already.');
    expect(await spoilt([pre(), close({ bendAngle: 175, includedAngle: 5 })])).toContain('Step 2: hem b1 is closed to 175 degrees of bend angle only; the part asks 180.');
  });

  it('another flat length than pre-bent and closed curve', async () => {
    // 150 degrees of pi x 2.8 = 7.33
    expect(await spoilt([pre({ allowance: 5 }), close({ allowance: HEM.preLength })])).toEqual([
      'Step 1: it prints a flat length of 5.00 mm for b1; the part has 7.33 mm.', 'Step 2: it prints a flat length of 7.33 mm for b1; the part has 5.00 mm.',
    ]);
  });
});

describe('the layout', () => {
  it('risers that carry less bed than stands on them', async () => {
    const of = (length: number): Trial => ({ ...withStation(angleTrial(), { riser: 20, dieTop: 80, stackHeight: 180 }), risers: [{ id: 'riser', height: 20, seat: 'seat A', length, width: 60 }] });
    expect(await ofRecord(of(100))).toEqual([]);
    expect(await ofRecord(of(90))).toEqual(['Stations on risers of 20.0 mm take 100.0 mm of bed; these risers carry 90.0 mm in all.']);
  });

  it('a stack higher than die top and punch make', async () => {
    expect(await ofRecord(withStation(angleTrial(), { stackHeight: 165 }))).toEqual(['Station S1: the stack is written as 165.0 mm high; die top and punch make 160.0 mm.']);
  });

  it('tools reversed that cannot be', async () => {
    const reversed = withStation(withStep(angleTrial(), 0, { facing: 'reversed' }), { punchFacing: 'reversed', dieFacing: 'reversed' });
    expect(await ofRecord(reversed)).toEqual([]);
    expect(await ofRecord({ ...reversed, punches: [{ ...straightPunch(10), reversible: false }] })).toEqual(['Station S1: straight punch cannot stand reversed.']);
    expect(await ofRecord({ ...reversed, dies: [{ ...vDie(16, 60), reversible: false }] })).toEqual(['Station S1: V 16 die cannot stand reversed.']);
  });

  it('two stations in one place', async () => {
    const other: Station = { ...STATION, id: 'S2', punchSegments: [{ length: 100, from: 60 }], dieSegments: [{ length: 100, from: 42 }] };
    expect(await ofRecord(angleTrial({ stations: [STATION, other] }))).toEqual(['Stations S1 and S2: their die segments overlap by 8.00 mm along the bed.']);
  });

  it('a die too short for the line, and none', async () => {
    expect(await findings(withStation(angleTrial(), { dieSegments: [{ length: 50, from: -50 }] }))).toContain('the die of station S1 leaves 50.0 mm at an end of bend b1 uncovered; 5 mm are allowed.');
    const bare = await findings(withStation(angleTrial(), { dieSegments: [], punchSegments: [] }));
    expect(bare).toContain('Step 1: station S1 has no die.');
    expect(bare).toContain('Step 1: station S1 has no punch.');
  });

  it('an empty punch 0.1 mm above the flanks of its own die', async () => {
    // as in damaged.test.ts: the V 24 of 60 leads the tip to 62 - (12.44 tan 45.5 - 4.969 (sec 45.5 - 1)); the flanks of punch and V 8 both
    // stand 42.5 degrees from upright, so that a tip so far over the V's lowest point keeps sin 42.5 of it
    const [c, half] = [12 + Math.tan((23.75 * Math.PI) / 180), (42.5 * Math.PI) / 180];
    const b = (45.5 * Math.PI) / 180;
    const inside = allowance(90) / (2 * b) - 0.8;
    const tip = 62 - (c * Math.tan(b) - (inside + 3) * (1 / Math.cos(b) - 1));
    const top = tip - 0.1 / Math.sin(half) + 4 / Math.tan(half);
    const other: Station = { ...STATION, id: 'S2', die: 'v8', dieTop: top, stackHeight: top + 100, punchSegments: [{ length: 100, from: 200 }], dieSegments: [{ length: 100, from: 200 }] };
    const trial = angleTrial(
      { punches: [straightPunch(10)], dies: [vDie(24, 60), vDie(8, top, 'v8')], stations: [STATION, other] },
      { contactReach: 12 + Math.tan((23.75 * Math.PI) / 180) + 1 + 2 },
    );
    expect(await findings(trial)).toBe('Step 1: with the ram at its lowest the empty punch of station S2 comes within 0.10 mm of its own die.');
  });
});

describe('the gauge', () => {
  const x = allowance(90) / 2 + 60;
  const on = (gauge: Partial<typeof MACHINE.gauge>, stop: Partial<Step['stop']> = {}): Promise<string> =>
    findings(angleTrial({ machine: { ...MACHINE, gauge: { ...MACHINE.gauge, ...gauge } } }, { stop: { ...angle!.stop, ...stop } }));
  const powered = (min: number, max: number) => ({ drive: 'powered', min, max, speed: 1 }) as const;

  it('X moved back further than it reaches', async () => {
    expect(await on({ x: powered(5, 70) }, { retract: 7 })).toBe('');
    expect(await on({ x: powered(5, 70) }, { retract: 10 })).toBe(`Step 1: the gauge's X, moved back, is asked to stand at ${(x + 10).toFixed(1)} mm; it reaches from 5.00 to 70.0 mm.`);
  });

  it('R and Z that do not reach, R that is fixed elsewhere', async () => {
    expect(await on({ r: powered(0, 50) })).toBe("Step 1: the gauge's R is asked to stand at 60.0 mm; it reaches from 0.00 to 50.0 mm.");
    expect(await on({ r: { drive: 'fixed', at: 58 } })).toBe("Step 1: the gauge's R is asked to stand at 60.0 mm; it is fixed at 58.0 mm.");
    expect(await on({ z: powered(-20, 450) })).toBe("Step 1: the gauge's Z is asked to stand at -30.0 mm; it reaches from -20.0 to 450.0 mm.");
  });

  it('more fingers than it has, none, and three for two X axes', async () => {
    expect(await on({}, { z: [-35, 0, 35] })).toBe('Step 1: 3 fingers are used; the gauge has 2.');
    expect(await on({}, { z: [] })).toContain('Step 1: the stop names no finger.');
    expect(await on({ fingers: 3, ownX: { most: 10 } }, { z: [-35, 0, 35], skew: 0 })).toContain('Step 1: two X axes serve two fingers; the stop names 3.');
  });

  it('its beam over the sheet: the leg rises into it', async () => {
    expect(await on({ beam: rectangle(-10, 40, 12, 60) })).toMatch(/^Step 1, bend at [\d.]+ degrees of bend angle: the base runs into the gauge beam/);
    expect(await on({ beam: rectangle(5, 40, 12, 60) })).toBe('');
  });

  it('fingers lower than the die beside it, and their beam in a riser', async () => {
    // a leg of 8: the nose at 2.2 + 8 = 10.2, the die 15 to a side, the finger from 55 to 65
    const short = trialOf(stripPart(100, [40, 8], [{ degrees: 90, direction: 'A' }]), [stepOf(1, 'b1', 'A', 1, { plate: 1, x: allowance(90) / 2 + 8, r: 55, retract: 0 })]);
    expect(await findings(short)).toContain('Step 1, close: the left finger stands in the die of station S1; they share a space of 4.80 x 5.00 x 20.0 mm.');
    // the beam 122 to 162 behind the bending plane and from 20 up, the riser 150 to a side and 30 high
    const machine = { ...MACHINE, openHeight: 330, gauge: { ...MACHINE.gauge, beam: rectangle(60, 100, -70, -10) } };
    const raised = (width: number): Trial => angleTrial(
      { machine, risers: [{ id: 'riser', height: 30, seat: 'seat A', length: 1000, width }], stations: [{ ...STATION, riser: 30, dieTop: 90, stackHeight: 190 }] },
      { stop: { ...angle!.stop, r: 90 } },
    );
    expect(await findings(raised(60))).toBe('');
    expect(await findings(raised(300))).toContain('Step 1, close: the gauge beam stands in the riser of station S1; they share a space of 10.0 x 27.8 x 100.0 mm.');
  });

  it('moved back into what hangs from the ram, with the ram on the sheet', async () => {
    // finger 62 to 122 behind the bending plane, 60 to 70 up; the ram's seat stands 162 up when the tip touches, the apron 67 up and 130 behind
    const machine = { ...MACHINE, beam: [...MACHINE.beam, rectangle(130, 150, -95, 500)] };
    expect(await findings(angleTrial({ machine }))).toBe('');
    expect(await findings(angleTrial({ machine }, { stop: { ...angle!.stop, retract: 20 } }))).toContain('Step 1, retract: the left finger runs into the upper beam; they share a space of 3.00 x');
  });
});

describe('bodies around', () => {
  it('a standing flange half a millimetre beside a die 5 mm higher than its own; one of its own height it may touch', async () => {
    // a base 60 x 50, its end flange (b2) stands already: its outer face at 60 + 4 from the other end, 34 left of the middle
    const one = stripPart(60, [50, 30], [{ degrees: 90, direction: 'A' }]);
    const [b1] = one.part.bends;
    const b2: Bend = { ...b1!, id: 'b2', sides: [{ plate: 0, line: { from: [60, 50], to: [60, 0] } }, { plate: 2, line: { from: [0, 0], to: [50, 0] } }], zone: [rectangle(0, 50, 0, 1)] };
    const part: Part = { ...one.part, plates: [...one.part.plates, { outline: rectangle(0, 50, 0, 20), holes: [] }], bends: [b1!, b2] };
    const row = [{ length: 50, from: -25 }];
    const beside = (top: number): Promise<string> => {
      const other: Station = { ...STATION, id: 'S2', die: 'other', dieTop: top, stackHeight: top + 100, punchSegments: [], dieSegments: [{ length: 100, from: -34.5 - 100 }] };
      const second = stepOf(2, 'b1', 'A', 0, { plate: 0, x: allowance(90) / 2 + 50, r: 60, retract: 0 }, { place: 30, ...loadOf(60) });
      const trial = trialOf({ part, allowances: [allowance(90), allowance(90)] }, [
        stepOf(1, 'b2', 'A', 0, { plate: 0, x: allowance(90) / 2 + 60, r: 60, retract: 0 }),
        { ...second, stop: { ...second.stop, z: [-15, 15] }, wayIn: [{ kind: 'shift', by: [0, 400, 0] }] },
      ], { stations: [{ ...STATION, punchSegments: row, dieSegments: row }, other], dies: [vDie(16, 60), vDie(16, top, 'other')] });
      return proveTrial(trial, { steps: [2] }).then(({ findings: found }) => found.join('\n'));
    };
    expect(await beside(60)).toBe('');
    expect(await beside(65)).toContain('the flange beyond b2 comes within 0.50 mm of the die of station S2; 1 mm is asked.');
  });

  it('a shelf of the bed is met by the leg that hangs to 18 over the die seat', async () => {
    // proveTrial.test.ts: the leg's end at up 18, 64 behind the bending plane
    const bed = [...MACHINE.bed, rectangle(45, 100, -50, 20)];
    expect(await findings(zedTrial({ machine: { ...MACHINE, bed } }))).toContain('the flange beyond b1 runs into the bed');
  });

  it('a riser as wide as the widest of the rack is met by a longer hanging leg', async () => {
    // a leg of 60, 20 longer: its end at 20 + 18 - 20 = 18 over the die seat, the riser 20 high and 100 to a side
    const zed = zedTrial();
    const longer = (width: number): Trial => ({
      ...zed,
      sheet: stripPart(100, [60, 60, 40], [{ degrees: 90, direction: 'A' }, { degrees: 90, direction: 'B' }]),
      risers: [{ id: 'riser', height: 20, seat: 'seat A', length: 1000, width }],
      stations: [{ ...STATION, riser: 20, dieTop: 80, stackHeight: 180 }],
      steps: [
        { ...zed.steps[0]!, stop: { ...zed.steps[0]!.stop, x: allowance(90) / 2 + 60, axisX: allowance(90) / 2 + 60, r: 80 } },
        { ...zed.steps[1]!, stop: { ...zed.steps[1]!.stop, r: 60, retract: 40 }, wayIn: [{ kind: 'shift', by: [0, 400, 0] }, { kind: 'shift', by: [0, 0, -65] }], wayOut: [{ kind: 'shift', by: [0, 0, 70] }, { kind: 'shift', by: [0, -400, 0] }] },
      ],
    });
    expect(await findings(longer(60))).toBe('');
    expect(await findings(longer(200))).toContain('the flange beyond b1 runs into the riser of station S1');
  });
});

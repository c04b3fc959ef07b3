import { describe, expect, it } from 'vitest';
import {
  MACHINE, STATION, allowance, angleTrial, channelTrial, depth, loadOf, rectangle, stepOf, straightPunch, stripPart, trialOf, vDie, zedTrial,
} from '../../test/proof/handTrial.js';
import type { Part } from '../sheet/index.js';
import type { Station, Step, Trial } from '../trial/index.js';
import { proveTrial } from './index.js';

// Each trial here is one of those that hold (proveTrial.test.ts) with one thing spoilt.

const findings = async (trial: Trial): Promise<string> => {
  const proof = await proveTrial(trial);
  expect(proof.passed).toBe(proof.findings.length === 0);
  return proof.findings.join('\n');
};

const withStep = (trial: Trial, index: number, change: Partial<Step>): Trial => ({
  ...trial,
  steps: trial.steps.map((s, i) => (i === index ? { ...s, ...change } : s)),
});

const withStation = (trial: Trial, change: Partial<Station>): Trial => ({ ...trial, stations: [{ ...STATION, ...change }] });

/** back of the channel's first leg under load, worked out in proveTrial.test.ts. */
const legBack = 52 * Math.cos((45.5 * Math.PI) / 180) - (32 - (allowance(90) / ((91 * Math.PI) / 180) - 0.8)) * Math.sin((45.5 * Math.PI) / 180);

const away = (trial: Trial, index: number): Trial =>
  withStep(trial, index, { stop: { ...trial.steps[index]!.stop, retract: 40 } });

describe('tools in the way', () => {
  it('a punch 14.5 to a side leaves the first leg of the channel 0.53 mm: too little', async () => {
    expect(legBack).toBeCloseTo(15.03, 2);
    const found = await findings(away(channelTrial({ punches: [straightPunch(14.5)] }), 1));
    expect(found).toBe('Step 2, bend at 91.0 degrees of bend angle: the flange beyond b1 comes within 0.53 mm of the punch of station S1; 1 mm is asked.');
  });

  it('a punch 16 to a side is run into', async () => {
    const found = await findings(away(channelTrial({ punches: [straightPunch(16)] }), 1));
    expect(found).toMatch(/^Step 2, bend at [\d.]+ degrees of bend angle: the flange beyond b1 runs into the punch of station S1; they share a space of/);
  });

  it('a punch of 13.9 keeps 1.13 mm and passes: nothing is rejected before its time', async () => {
    const proof = await proveTrial(away(channelTrial({ punches: [straightPunch(13.9)] }), 1));
    expect(proof.findings).toEqual([]);
    expect(proof.smallestClearance).toBeCloseTo(legBack - 13.9, 3);
  });

  it('a nose blunter than the bend is run into beyond the reach of the stroke', async () => {
    // 100 degrees included: flanks at 50 degrees from upright, the wing under load at 44.5
    const half = 30;
    const blunt = { ...straightPunch(half), profile: straightPunch(half).profile.map((v) => (v.y > 0 && v.y < 99 ? { ...v, y: half / Math.tan((50 * Math.PI) / 180) } : v)) };
    expect(await findings(angleTrial({ punches: [blunt] }))).toMatch(/runs into the punch of station S1 beyond the reach of the stroke/);
  });

  it('a die of 100 degrees included is pressed on its flanks', async () => {
    // flanks at 40 degrees from level, the outer face of the wing at 45.5: it cannot lie on the shoulder and miss the flank
    const die = vDie(16, 60);
    const shallow = { ...die, profile: die.profile.map((v, i) => (i === 5 ? { ...v, y: -3 } : v)) };
    expect(await findings(angleTrial({ dies: [shallow] }))).toMatch(/runs into the die of station S1 deeper than 0.05 mm/);
  });
});

describe('bodies around', () => {
  it('side frames, where the part is wider than their gap and deeper than the throat', async () => {
    const machine = { ...MACHINE, betweenFrames: 80, throat: 40 };
    expect(await findings(angleTrial({ machine }))).toMatch(/the base runs into the (left|right) side frame/);
    expect(await findings(angleTrial({ machine: { ...machine, throat: 70 } }))).not.toMatch(/side frame/);
  });

  it('a low upper beam and clamp meet the leg that swings up', async () => {
    // seat at tip + 30: the leg of 60 rises 44 over it, and the clamp reaches 40 to either side
    const low = { ...straightPunch(10, 'punch', 30) };
    const machine = { ...MACHINE, clamp: [rectangle(-40, 40, 0, 50)], shutHeight: 50 };
    const trial = angleTrial({ punches: [low], machine, stations: [{ ...STATION, stackHeight: 90 }] });
    expect(await findings(trial)).toMatch(/the base runs into the clamp/);
  });

  it('the floor, where a low bed lets the hanging leg reach it', async () => {
    // the leg ends at up 18 (proveTrial.test.ts); a floor at -17.5 + 35 = 17.5 leaves 0.5
    const found = await findings(zedTrial({ machine: { ...MACHINE, bedHeight: -17.5 } }));
    expect(found).toContain('comes within 0.50 mm of the floor');
  });

  it('the other station comes down on a sheet that lies under it', async () => {
    const other: Station = { ...STATION, id: 'S2', punchSegments: [{ length: 100, from: 60 }], dieSegments: [{ length: 100, from: 60 }] };
    const clear = angleTrial({ stations: [STATION, other] });
    expect(await findings(clear)).toBe('');
    const under = withStep(angleTrial({ stations: [STATION, { ...other, punchSegments: [{ length: 50, from: 50.5 }], dieSegments: [{ length: 50, from: 50.5 }] }] }), 0, { place: -45 });
    expect(await findings(under)).toMatch(/the punch of station S2/);
  });

  it('a finger left standing is struck by the hanging leg', async () => {
    const trial = zedTrial();
    const found = await findings(withStep(trial, 1, { stop: { ...trial.steps[1]!.stop, retract: 0 } }));
    expect(found).toMatch(/Step 2, bend at .*the flange beyond b1 runs into the left finger/);
    expect(found).toMatch(/the right finger/);
  });

  it('a finger under the punch is met when the ram comes down', async () => {
    // a leg of 8: the finger's nose at 2.2 + 8 = 10.2, 10 high; 8 over the sheet the upright punch is 10 to a side
    const trial = trialOf(stripPart(100, [40, 8], [{ degrees: 90, direction: 'A' }]), [
      stepOf(1, 'b1', 'A', 1, { plate: 1, x: allowance(90) / 2 + 8, r: 60, retract: 0 }),
    ]);
    expect(await findings(trial)).toMatch(/Step 1, (close|bend).*the punch of station S1 (comes within|runs into).*finger/);
  });
});

describe('the record', () => {
  it('order swapped', async () => {
    const [first, second] = zedTrial().steps;
    const found = await findings({ ...zedTrial(), steps: [{ ...second!, number: 1 }, { ...first!, number: 2 }] });
    expect(found).not.toBe('');
    expect(found).toMatch(/Step 1/);
  });

  it('a bend missing', async () => {
    expect(await findings({ ...zedTrial(), steps: zedTrial().steps.slice(0, 1) })).toBe('Bend b2 is never made.');
  });

  it('a bend made twice', async () => {
    const [step] = angleTrial().steps;
    expect(await findings({ ...angleTrial(), steps: [step!, { ...step!, number: 2 }] })).toContain('b1 is bent already');
  });

  it('the wrong side up', async () => {
    expect(await findings(withStep(angleTrial(), 0, { sideUp: 'B' }))).toContain('side B lies up, but b1 turns towards A');
  });

  it('a reach that excuses too much', async () => {
    expect(await findings(withStep(angleTrial(), 0, { contactReach: 40 }))).toContain('contact is excused out to 40.0 mm');
  });

  it('a closed hem is not passed over in silence', async () => {
    expect(await findings(withStep(angleTrial(), 0, { kind: 'hem close' }))).toContain('a hem is closed between a flattening punch and an anvil');
  });
});

describe('the stop', () => {
  it('X half a millimetre out', async () => {
    const { stop } = angleTrial().steps[0]!;
    const x = allowance(90) / 2 + 60;
    expect(await findings(withStep(angleTrial(), 0, { stop: { ...stop, axisX: x + 0.5 } }))).toBe("Step 1: the X axis is written at 62.7 mm; the face 'nose' at 62.2 mm asks for 62.2 mm.");
    expect(await findings(withStep(angleTrial(), 0, { stop: { ...stop, x: x + 0.5 } }))).toContain('written at X 62.7 mm; at the finger at -30.0 mm the metal ends at 62.2 mm');
    // half a millimetre short, the sheet would also stand in the finger
    expect(await findings(withStep(angleTrial(), 0, { stop: { ...stop, x: x - 0.5 } }))).toMatch(/runs into the left finger deeper than 0.05 mm/);
  });

  it('a finger beside the edge, one too low, two too close', async () => {
    const { stop } = angleTrial().steps[0]!;
    const spoilt = (change: Partial<typeof stop>): Promise<string> => findings(withStep(angleTrial(), 0, { stop: { ...stop, ...change } }));
    expect(await spoilt({ z: [-30, 70] })).toContain('the finger at 70.0 mm along the bed meets no metal');
    expect(await spoilt({ z: [-30, 59.5] })).toContain('bears on 0.50 mm of the edge only');
    expect(await spoilt({ r: 45 })).toContain('meets no metal');
    expect(await spoilt({ z: [-10, 15] })).toContain('two fingers stand 25.0 mm apart; they need 30.0 mm');
    expect(await spoilt({ face: 'nowhere' })).toContain("no face called 'nowhere'");
  });

  it('an X that the gauge does not reach', async () => {
    const machine = { ...MACHINE, gauge: { ...MACHINE.gauge, x: { drive: 'powered', min: 5, max: 60, speed: 1 } as const } };
    expect(await findings(angleTrial({ machine }))).toContain("the gauge's X is asked to stand at 62.2 mm");
  });
});

describe('stations and ram', () => {
  it('a die top that die and riser do not make', async () => {
    const found = await findings(withStation(angleTrial(), { dieTop: 62, stackHeight: 162 }));
    expect(found).toContain('the die top is written as 62.0 mm over the die seat; die and riser make 60.0 mm');
  });

  it('a punch too short for the line', async () => {
    const found = await findings(withStation(angleTrial(), { punchSegments: [{ length: 50, from: -50 }] }));
    expect(found).toContain('the punch of station S1 leaves 50.0 mm at an end of bend b1 uncovered');
  });

  it('segments past the bed, on top of each other, not on the rack, used twice', async () => {
    const rows = (row: Station['punchSegments']): Promise<string> => findings(withStation(angleTrial(), { punchSegments: row }));
    expect(await rows([{ length: 100, from: -50 }, { length: 100, from: 420 }])).toContain('reaches 20.0 mm past the end of the bed');
    expect(await rows([{ length: 100, from: -50 }, { length: 50, from: 40 }])).toContain('two punch segments overlap by 10.0 mm');
    expect(await rows([{ length: 100, from: -50 }, { length: 70, from: 200 }])).toContain('has no segment of 70.0 mm');
    const ear = { length: 60, ear: 'left' as const };
    expect(await rows([{ length: 100, from: -50 }, { ...ear, from: 200 }, { ...ear, from: 300 }])).toContain('uses 2 times the left ear segment of 60.0 mm');
  });

  it('2 mm over V 24 beside an equal stack of V 8: the empty punch is driven into its die', async () => {
    // c = 12.44, depth at 91: 12.44 tan 45.5 - 5 (sec 45.5 - 1) = 10.5, tip 8.5 below the die top; the V 8 is 4.4 deep
    const other: Station = { ...STATION, id: 'S2', die: 'v8', punchSegments: [{ length: 100, from: 200 }], dieSegments: [{ length: 100, from: 200 }] };
    const wide = { punches: [straightPunch(10)], dies: [vDie(24, 60), vDie(8, 60, 'v8')] };
    const step: Partial<Step> = { contactReach: 12 + Math.tan((23.75 * Math.PI) / 180) + 1 + 2 };
    expect(await findings(angleTrial({ ...wide }, step))).toBe('');
    const equal = await findings(angleTrial({ ...wide, stations: [STATION, other] }, step));
    expect(equal).toBe('Step 1: with the ram at its lowest the empty punch of station S2 runs into its own die.');
    // with a die 10 lower the empty tip stays 1.5 above it: flank and shoulder keep clear
    const lower = angleTrial({ ...wide, dies: [vDie(24, 60), vDie(8, 50, 'v8')], stations: [STATION, { ...other, dieTop: 50, stackHeight: 150 }] }, step);
    expect(await findings(lower)).toBe('');
  });

  it('an opening that the ram does not have, and a stroke below its lowest', async () => {
    expect(await findings(withStep(angleTrial(), 0, { ramOpening: 170 }))).toContain('takes the ram to 330.0 mm; its highest is 320.0 mm');
    // the stroke ends at 60 + 2 - depth + 100
    const lowest = 162 - depth(91);
    expect(await findings(angleTrial({ machine: { ...MACHINE, shutHeight: lowest + 1 } }))).toContain(`the stroke ends with the ram at ${lowest.toFixed(1)} mm`);
  });
});

describe('ways', () => {
  it('a part that is never brought in or let go', async () => {
    expect(await findings(withStep(angleTrial(), 0, { wayIn: [] }))).toContain('way in starts with the part still between punch and die');
    expect(await findings(withStep(angleTrial(), 0, { wayOut: [] }))).toContain('way out ends with the part still between punch and die');
  });

  it('drawn out without a lift, the bend catches the die', async () => {
    expect(await findings(withStep(angleTrial(), 0, { wayOut: [{ kind: 'shift', by: [0, -400, 0] }] }))).toMatch(/way out.*runs into the die of station S1/);
  });

  it('with the ram hardly open, the leg that stands up catches the punch on the way out', async () => {
    expect(await findings(withStep(angleTrial(), 0, { ramOpeningOut: 30 }))).toMatch(/way out, move 2: the base runs into the punch of station S1/);
  });

  it('tilted out: the leg lowered to the gauge side passes under a punch that it would meet upright', async () => {
    // apex at 60 + 2 - 6.4 + 15; drawn out level, the leg's end 60 sin 45 + 0.6 = 43 over that, at 113.6, meets the tip at
    // 110; tilted, the front leg stands 20 + 1.4 over it
    const level = withStep({ ...angleTrial(), sheet: stripPart(100, [20, 60], [{ degrees: 90, direction: 'A' }]) }, 0, { ramOpeningOut: 50 });
    expect(await findings(level)).toMatch(/way out, move 2: the base runs into the punch of station S1/);
    const tilted = withStep(level, 0, {
      wayOut: [{ kind: 'shift', by: [0, 0, 15] }, { kind: 'tilt', degrees: -45 }, { kind: 'shift', by: [0, -400, 0] }],
    });
    expect(await findings(tilted)).toBe('');
  });
});

describe('the part against itself', () => {
  it('a profile that closes onto itself', async () => {
    // 60, 40, 40, 60 with 90 degrees each: the two long legs cross inside the corner of the two short ones
    const sheet = stripPart(100, [60, 40, 40, 60], [1, 2, 3].map(() => ({ degrees: 90, direction: 'A' as const })));
    const trial = trialOf(sheet, [
      stepOf(1, 'b1', 'A', 0, { plate: 0, x: allowance(90) / 2 + 60, r: 60, retract: 0 }),
      stepOf(2, 'b3', 'A', 1, { plate: 3, x: allowance(90) / 2 + 60, r: 60, retract: 0 }),
      stepOf(3, 'b2', 'A', 1, { plate: 3, x: allowance(90) / 2 + 44, r: 66, retract: 40 }),
    ]);
    expect(await findings(trial)).toMatch(/Step 3, bend at [\d.]+ degrees of bend angle: the flange beyond b1 runs into the flange beyond b3/);
  });

  /** A base 100 x 50 with two tabs at its far side, the second's line `off` further out. */
  const tabs = (off: number): Trial => {
    const one = stripPart(40, [50, 30], [{ degrees: 90, direction: 'A' }]);
    const [bend] = one.part.bends;
    const line = (from: number, y: number) => ({ from: [from, y] as const, to: [from + 40, y] as const });
    const part: Part = {
      ...one.part,
      plates: [{ outline: rectangle(0, 100, 0, 50), holes: [] }, one.part.plates[1]!, one.part.plates[1]!],
      bends: [
        { ...bend!, sides: [{ plate: 0, line: line(0, 50) }, { plate: 1, line: line(0, 0) }] },
        { ...bend!, id: 'b2', sides: [{ plate: 0, line: line(60, 50 + off) }, { plate: 2, line: line(0, 0) }] },
      ],
    };
    return trialOf({ part, allowances: [allowance(90), allowance(90)] }, [
      stepOf(1, 'b1', 'A', 0, { plate: 0, x: allowance(90) / 2 + 50, r: 60, retract: 0 }, { bends: ['b1', 'b2'], ...loadOf(80) }),
    ]);
  };

  it('two tabs on one line are one stroke; 0.2 mm apart they are not', async () => {
    expect(await findings(tabs(0))).toBe('');
    expect(await findings(tabs(0.2))).toContain('bend b2 lies 0.20 mm off the line of bend b1');
  });
});

describe('flanges beside the line', () => {
  /** A base 60 x 50 with a flange 30 on its far side (b1) and one of 20 on its end (b2): the corner of a tray. */
  const corner = (placeOfSecond: number): Trial => {
    const one = stripPart(60, [50, 30], [{ degrees: 90, direction: 'A' }]);
    const second = {
      ...one.part.bends[0]!,
      id: 'b2',
      sides: [
        { plate: 0, line: { from: [60, 50], to: [60, 0] } },
        { plate: 2, line: { from: [0, 0], to: [50, 0] } },
      ] as const,
      zone: [rectangle(0, 50, 0, 1)],
    };
    const part: Part = {
      ...one.part,
      plates: [...one.part.plates, { outline: rectangle(0, 50, 0, 20), holes: [] }],
      bends: [one.part.bends[0]!, second],
    };
    const stop = { plate: 0, r: 60, retract: 0 };
    return trialOf({ part, allowances: [allowance(90), allowance(90)] }, [
      stepOf(1, 'b1', 'A', 0, { ...stop, x: allowance(90) / 2 + 50 }, { place: 30, ...loadOf(60) }),
      stepOf(2, 'b2', 'A', 0, { ...stop, x: allowance(90) / 2 + 60 }, {
        place: placeOfSecond,
        ...loadOf(50, placeOfSecond - 25),
        stop: { ...angleTrial().steps[0]!.stop, ...stop, x: allowance(90) / 2 + 60, axisX: allowance(90) / 2 + 60, z: [placeOfSecond - 45, placeOfSecond - 14] },
      }),
    ]);
  };

  it('flat with the base it may lie under a longer punch; standing it keeps its distance from the punch end', async () => {
    // b1: the second flange, flat, reaches from 30 to 54 left of the middle, the punch to 50, its line 2.2 off the plane.
    // b2: the first flange stands, its inner face 2 past the end of the line: at 50 + 2 - 50 = 2 from the punch end
    const proof = await proveTrial(corner(50));
    expect(proof.findings).toEqual([]);
    expect(proof.smallestClearance).toBeCloseTo(2, 3);
    expect(proof.where).toMatch(/the flange beyond b1 and the punch of station S1/);
  });

  it('with the line 1.3 further in, the punch end comes within 0.7 of the standing flange; 3 further it is run into', async () => {
    expect(await findings(corner(48.7))).toContain('the flange beyond b1 comes within 0.70 mm of the punch of station S1');
    // inner face at 47 + 2, punch end at 50
    expect(await findings(corner(47))).toMatch(/the flange beyond b1 runs into the punch of station S1; they share a space of [\d.]+ x/);
  });
});

describe('force', () => {
  const trial = angleTrial();
  const { forcePerLength, force } = trial.steps[0]!;

  it('a punch, a die or a machine rated for less along the length than the step asks', async () => {
    const less = forcePerLength - 1;
    const [punch, die] = [trial.punches[0]!, trial.dies[0]!];
    expect(await findings({ ...trial, punches: [{ ...punch, rating: less }] })).toBe(`Step 1: it asks ${forcePerLength.toFixed(0)} N/mm of the punch ${punch.name}, rated ${less.toFixed(0)} N/mm.`);
    expect(await findings({ ...trial, dies: [{ ...die, rating: less }] })).toMatch(/N\/mm of the die /);
    expect(await findings({ ...trial, machine: { ...trial.machine, ratingPerLength: less } })).toMatch(/N\/mm of the machine, rated/);
  });

  it('a machine rated for less in all, or a cylinder that bears more than half', async () => {
    expect(await findings({ ...trial, machine: { ...trial.machine, rating: force - 1 } })).toMatch(/N of the machine, rated/);
    expect(await findings(withStep(trial, 0, { cylinderForces: [trial.machine.rating / 2 + 1, 0] }))).toMatch(/N of one cylinder, rated/);
  });
});

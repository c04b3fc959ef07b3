import { describe, expect, it } from 'vitest';
import { benchParts } from '../bench/parts.js';
import { questionFloor, stateByState } from '../bench/questionCounts.js';
import { planAndProve } from '../src/fit/index.js';
import { metalById } from '../src/metal/index.js';
import { type Machine, type Rack, demoFloor, demoRack } from '../src/shop/index.js';
import { type Developed, type Part, blank } from '../src/sheet/index.js';
import { type Trial, planTrial } from '../src/trial/index.js';

const rack = demoRack();
const metal = metalById('dc01')!;
const machine = (id: string): Machine => demoFloor().find((m) => m.id === id)!;
const partOf = (id: string): Part => benchParts().find((b) => b.id === id)!.part;
const now = (): number => performance.now();
const straightOnly: Rack = { ...rack, punches: rack.punches.filter((p) => p.shape === 'straight') };
const plan = (part: Part, on: Machine, tools: Rack = rack): Trial => planTrial({ part, machine: on, rack: tools, metal, quantity: 50 }, { now });

describe('benchmark parts on the general machine, each plan replayed by the independent check', () => {
  it.each(['P1', 'P2', 'P3', 'P5', 'P7'])('%s is made and the check passes', async (id) => {
    const trial = await planAndProve({ part: partOf(id), machine: machine('general'), rack, metal, quantity: 50 }, { now });
    console.log(`${id}: ${trial.steps.map((s) => s.bends.join('+')).join(' ')}; ${trial.seconds.toFixed(1)} s a part, ${trial.computeSeconds.toFixed(2)} s computing, smallest clearance ${trial.proof.smallestClearance?.toFixed(2) ?? 'none'} mm`);
    expect(trial.reasons).toEqual([]);
    expect(trial.verdict).toBe('makes');
    expect(trial.proof).toMatchObject({ checked: true, passed: true, findings: [] });
    expect(trial.steps.flatMap((s) => s.bends).sort()).toEqual(partOf(id).bends.map((b) => b.id).sort());
  });

  it('P2 with straight punches alone is refused: the leg, the punch and the millimetres', () => {
    // hand geometry: at 90 degrees the first leg's end stands (70 - 60)/sqrt 2 = 7.1 mm past the bending plane, 91.9 mm up, where a
    // straight punch still is: on its own side it must overlap, whichever bend comes second
    const trial = plan(partOf('P2'), machine('general'), straightOnly);
    expect(trial.verdict).toBe('does not make');
    const [first] = trial.reasons;
    expect(first!.code).toBe('clearance');
    // at 92 degrees of bend angle (over-bend): 70 sin b - 60 cos b past the plane; straight back by that and half the punch's width
    // clears it, so the least shift is no more; and it is more than the leg reaches past the plane
    const punch = straightOnly.punches.find((p) => first!.bodies!.some((b) => b.includes(p.name)))!;
    const half = Math.max(...punch.profile.map((v) => v.x));
    const past = (degrees: number): number => 70 * Math.sin((degrees * Math.PI) / 360) - 60 * Math.cos((degrees * Math.PI) / 360);
    expect(first!.by).toBeGreaterThan(past(90));
    expect(first!.by).toBeLessThan(half + past(92) + 1);
    expect(first!.sentence).toMatch(/At bend b[12] the flange beyond b[12] meets the punch Straight punch.* by \d+\.\d mm if b[12] is made\./);
  });

  it('P2 is made with a gooseneck', () => {
    const trial = plan(partOf('P2'), machine('general'));
    expect(trial.verdict).toBe('makes');
    expect(trial.steps.map((s) => rack.punches.find((p) => p.id === s.punch)!.shape)).toContain('gooseneck');
  });

  it('P2 with web 40 and legs 80 ends 28 mm past the plane: no punch of the rack is relieved that far', () => {
    const trial = plan(benchParts().filter((b) => b.id.startsWith('P2'))[1]!.part, machine('general'));
    expect(trial.verdict).toBe('does not make');
    expect(trial.reasons[0]!.sentence).toMatch(/meets the punch .* by \d+\.\d mm if b[12] is made/);
  });

  it('P9 without a scribed line: what stopped the V that its lips suit is told before what a wider V lacks', () => {
    // its lips are 8 mm: V 12 asks 7.7 mm of flat beside the bend and 6.6 are there (told first, once), V 10 has enough of it
    const trial = planTrial({ part: partOf('P9'), machine: machine('general'), rack, metal, quantity: 50, limits: { scribedLine: 'refused' } });
    expect(trial.verdict).toBe('does not make');
    expect(trial.reasons[0]!.code).not.toBe('short flange');
    // a lip that nothing but the want of a stop refuses is seen by the remedies, and the list told is no longer for it
    expect(trial.reasons.length).toBeLessThanOrEqual(6);
    expect([...trial.reasons, ...(trial.untold ?? [])].map(({ code }) => code)).toContain('no stop');
  }, 120_000);

  it('P5: both lips are made before the legs they close in', () => {
    const order = plan(partOf('P5'), machine('general')).steps.map((s) => s.bends[0]);
    expect(order.indexOf('b1')).toBeLessThan(order.indexOf('b2'));
    expect(order.indexOf('b4')).toBeLessThan(order.indexOf('b3'));
  });

  it('P7: the tool of the last pair is no longer than the inside width less the allowance at both ends', () => {
    const trial = plan(partOf('P7'), machine('general'));
    expect(trial.steps).toHaveLength(4);
    const last = trial.steps[3]!;
    const station = trial.stations.find((s) => s.id === last.station)!;
    const length = station.punchSegments.reduce((sum, s) => sum + s.length, 0);
    const index = trial.sheet.part.bends.findIndex((b) => b.id === last.bends[0]);
    const us = trial.sheet.part.bends[index]!.zone.flat().map((v) => v.x);
    const line = Math.max(...us) - Math.min(...us);
    // base 200 x 150 outside, sheet 1.5: inside 197 or 147, 1 mm at both ends
    expect(length).toBeLessThanOrEqual((line > 170 ? 197 : 147) - 2);
    expect(length).toBeGreaterThanOrEqual(line - 10);
  });

  it('answers no more clearance questions than a stated share of what asking every fold by itself takes', () => {
    // BENCH.md: 4 arms of 3 make 319,488 questions asked fold by fold; 4 arms of 1 by the same count 4 x 2^3 x 5 = 160, each of them once.
    // A plan asks them of all pairs of tools, seats, phases and stops: P9 all of that in less than 15 %, P7, which has no depth to save in, 20 times.
    for (const [id, foldByFold, share] of [['P7', 160, 20], ['P9', 319_488, 0.15]] as const) {
      const part = partOf(id);
      expect(stateByState(part)).toBe(foldByFold);
      const { verdict, counts } = planTrial({ part, machine: machine('general'), rack, metal, quantity: 50, limits: { seconds: 20 } }, { now });
      expect(verdict).toBe('makes');
      const [asked, anew] = [counts['clearance questions asked']!, counts['clearance questions answered anew']!];
      expect(anew, id).toBeLessThan(share * foldByFold);
      // no checked plan does with fewer than its floor, and what is remembered is worth remembering
      expect(anew, id).toBeGreaterThanOrEqual(questionFloor(part));
      expect(anew, id).toBeLessThan(asked * 0.6);
    }
  });
});

describe('the same plan from the same input', () => {
  it('is the same, clock aside', () => {
    const one = planTrial({ part: partOf('P3'), machine: machine('general'), rack, metal, quantity: 10 });
    const two = planTrial({ part: partOf('P3'), machine: machine('general'), rack, metal, quantity: 10 });
    expect(two).toEqual(one);
  });

  it('stops when told to and says that it is not decided', () => {
    const trial = planTrial({ part: partOf('P13'), machine: machine('general'), rack, metal, quantity: 10 }, { now, cancelled: () => true });
    expect(trial.verdict).toBe('not decided');
  });
});

describe('a blank already cut', () => {
  const grown = (sheet: Developed, by: number): { outline: { x: number; y: number; bulge: number }[]; holes: [] } => {
    const own = blank(sheet);
    if (!own.ok) throw new Error(own.failure.sentence);
    const xs = own.value.outline.map((v) => v.x);
    const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
    // P1's blank is a rectangle; both ends across the bend move out by half of `by`, and the drawing stands turned by 90 degrees
    const ys = own.value.outline.map((v) => v.y);
    const across = Math.max(...xs) - Math.min(...xs) === 100 ? 'y' : 'x';
    const centre = across === 'x' ? middle : (Math.min(...ys) + Math.max(...ys)) / 2;
    return {
      outline: own.value.outline.map((v) => {
        const x = across === 'x' ? v.x + (Math.sign(v.x - centre) * by) / 2 : v.x;
        const y = across === 'y' ? v.y + (Math.sign(v.y - centre) * by) / 2 : v.y;
        return { x: -y, y: x, bulge: v.bulge };
      }),
      holes: [],
    };
  };

  it('2 mm too long over the bend: both flanges come out 1 mm too long, and the stop goes with the edge', async () => {
    const part = partOf('P1');
    const plain = plan(part, machine('general'));
    const cut = await planAndProve({ part, machine: machine('general'), rack, metal, quantity: 50, blank: grown(plain.sheet, 2) }, { now });
    expect(cut.verdict).toBe('makes');
    expect(cut.misses!.map((m) => m.miss)).toEqual([expect.closeTo(1, 2), expect.closeTo(1, 2)]);
    expect(cut.steps[0]!.stop.x).toBeCloseTo(plain.steps[0]!.stop.x + 1, 2);
    expect(cut.proof.passed).toBe(true);
  });

  it('of another part is refused with how far it lies away', () => {
    const part = partOf('P1');
    const square = [[0, 0], [300, 0], [300, 300], [0, 300]].map(([x, y]) => ({ x: x!, y: y!, bulge: 0 }));
    const trial = planTrial({ part, machine: machine('general'), rack, metal, quantity: 50, blank: { outline: square, holes: [] } }, { now });
    expect(trial.verdict).toBe('does not make');
    expect(trial.reasons[0]!.sentence).toMatch(/^The blank given is not this part's: .* \d+\.\d mm away on average\.$/);
  });
});

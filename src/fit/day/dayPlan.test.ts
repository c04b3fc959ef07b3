import { describe, expect, it } from 'vitest';
import { channelTrial } from '../../papers/fixture.js';
import { demoRack } from '../../shop/index.js';
import type { Station, Trial } from '../../trial/index.js';
import { changeCost, changeOver } from './changeOver.js';
import { checkFirst } from './checkFirst.js';
import { dayPlan } from './dayPlan.js';
import { kitList } from './kitList.js';
import { riserInWords } from './kitRisers.js';

const rack = demoRack();
const base = channelTrial();
const [s1] = base.stations;
/** Two segments of 100 mm, the left one beginning at `from`. */
const station = (id: string, from: number, more: Partial<Station> = {}): Station =>
  ({ ...s1!, id, punchSegments: [{ length: 100, from }, { length: 100, from: from + 100 }], dieSegments: [{ length: 100, from }, { length: 100, from: from + 100 }], ...more });
const trial = (name: string, stations: readonly Station[], more: Partial<Trial> = {}): Trial =>
  ({ ...base, stations, sheet: { ...base.sheet, part: { ...base.sheet.part, name } }, ...more });

const at = (from: number): Station => station('S1', from);
const turned: Station = station('S2', 600, { punchFacing: 'reversed' });

describe('a change-over', () => {
  it('leaves what stands the same, alters what is of the same tool, builds and takes off the rest', () => {
    const whats = (a: Trial | null, b: Trial): string[] => changeOver(a, b).map((c) => `${c.station} ${c.kind} ${c.what}`);
    expect(whats(null, trial('a', [at(0)]))).toEqual(['S1 punch built', 'S1 die built']);
    expect(whats(trial('a', [at(0), turned]), trial('b', [at(0)]))).toEqual(['S2 punch taken off', 'S2 die taken off', 'S1 punch stays', 'S1 die stays']);
    expect(whats(trial('a', [at(0)]), trial('b', [at(250)]))).toEqual(['S1 punch altered', 'S1 die altered']);
    expect(whats(trial('a', [at(0)]), trial('b', [station('S1', 0, { punchSegments: [{ length: 100, from: 0 }] })]))).toEqual(['S1 punch altered', 'S1 die stays']);
    // the one in its place stays although the first of the list could be altered
    expect(whats(trial('a', [at(-300), at(0)]), trial('b', [at(0)]))).toEqual(['S1 punch taken off', 'S1 die taken off', 'S1 punch stays', 'S1 die stays']);
    // a punch the other way round is turned; another die is built: 60 + 120 + 30
    const other = { ...turned, die: 'other' };
    expect(whats(trial('a', [at(0)]), trial('b', [other]))).toEqual(['S1 die taken off', 'S2 punch altered', 'S2 die built']);
    expect(changeCost(changeOver(trial('a', [at(0)]), trial('b', [other])), base.machine)).toEqual({ changes: 3, seconds: 210 });
  });
});

describe('a day plan', () => {
  // a and c share a bed, b needs another: a c b (or b ... ) changes less than a b c
  const a = trial('a', [at(0)]);
  const b = trial('b', [station('S1', 0, { die: 'other' })], { dies: [{ ...base.dies[0]!, id: 'other' }], steps: base.steps.map((s) => ({ ...s, die: 'other' })) });
  const c = trial('c', [at(0)]);
  const made = dayPlan({ trials: [a, b, c], rack, pieces: 2, spares: 1 });
  if (!made.ok) throw new Error(made.sentence);
  const plan = made.value;

  it('puts parts of the same bed after one another', () => {
    expect(plan.stops.map(({ part }) => part)).toEqual(['a', 'c', 'b']);
    // two rows built, none, a die built and one taken off; as given: 2 + 2 + 2
    expect([plan.changes, plan.changesAsGiven]).toEqual([4, 6]);
  });

  it('adds up the times: change-over, making ready, two pieces each', () => {
    // by the fixture a piece takes 12 + 14 s beside the set-up's share of 15
    expect(plan.stops.map(({ seconds }) => seconds)).toEqual([
      { change: 240, prepare: 600, pieces: 52 }, { change: 0, prepare: 600, pieces: 52 }, { change: 150, prepare: 600, pieces: 52 },
    ]);
    expect(plan.stops.map(({ from }) => from)).toEqual([840, 1492, 2294]);
    expect(plan.seconds).toBe(2346);
  });

  it('takes the machine\'s own time to build a station, and says so', () => {
    const quick = { ...base.machine, stationSeconds: 100 };
    const day = dayPlan({ trials: [a, b, c].map((t) => ({ ...t, machine: quick })), rack, pieces: 2, spares: 1 });
    if (!day.ok) throw new Error(day.sentence);
    // 100/240 of 240, 0 and 150
    expect(day.value.stops.map(({ seconds }) => seconds.change)).toEqual([100, 0, 62.5]);
    expect(day.value.model).toContain("A row built takes 50 s, altered 25 s, taken off 12.5 s by the machine's own 100 s for a station of two rows, a part made ready");
    expect(plan.model).toContain('A row built takes 120 s, altered 60 s, taken off 30 s, a part made ready');
  });

  it('lists each segment once, as many as stand at one time, against the rack', () => {
    const punch = plan.kit.filter(({ kind }) => kind === 'punch');
    const stock = rack.punches.find(({ id }) => id === s1!.punch)!.segments.find((s) => s.length === 100 && !s.ear)!;
    expect(punch).toMatchObject([{ id: s1!.punch, length: 100, needed: 2, atHand: stock.count }]);
    expect(plan.stops[0]!.blanks).toMatchObject({ thickness: 1.5, pieces: 2, spares: 1, length: 200 });
    // 37 + 74 + 37 + 2 allowances of (pi/2)(1.5 + 0.6)
    expect(plan.stops[0]!.blanks.width).toBeCloseTo(154.597, 3);
    // a and c are of one metal, thickness and pair of tools: one strip tells both
    expect(plan.stops.map(({ strips }) => strips.length)).toEqual([1, 0, 1]);
  });

  it('lists the risers by height, as much bed as stands on them at one time, against the rack', () => {
    const on = (riser: number, from: number): Station => station(`S${from}`, from, { riser });
    // two stations of 200 mm on 20 mm at once in one part, one in the next: 400 mm; of 30 mm only the second part's
    const day = (risers: typeof rack.risers): unknown =>
      kitList([trial('d', [on(20, 0), on(20, 500), on(0, 900)]), trial('e', [on(20, 0), on(30, 500)])], { ...rack, risers }).filter(({ kind }) => kind === 'riser');
    const seat = base.dies[0]!.tang;
    const of20 = { id: 'a', height: 20, seat, length: 250, width: 60 };
    expect(day([of20, { ...of20, id: 'b', length: 100 }, { ...of20, id: 'c', height: 30, length: 900 }, { ...of20, id: 'd', seat: 'another' }])).toEqual([
      { kind: 'riser', height: 20, seat, needed: 400, atHand: 350 }, { kind: 'riser', height: 30, seat, needed: 200, atHand: 900 },
    ]);
    expect(plan.kit.some(({ kind }) => kind === 'riser')).toBe(false);
    expect(riserInWords({ kind: 'riser', height: 20, seat, needed: 400, atHand: 350 }, (mm) => `${mm} mm`)).toBe(`20 mm high, ${seat}: 400 mm of bed at once (350 mm at hand, ⚠ too few)`);
  });

  it('says what to check with its measure', () => {
    const said = plan.checks.join('\n');
    // 90 mm of opening over the stack of the fixture
    expect(said).toContain(`is planned to open to ${(90 + s1!.stackHeight).toFixed(0)} mm`);
    expect(said).not.toContain('Not known: how well');
    expect(said).toContain('Guarding');
    expect(said).toContain('at most 21.4 kN predicted in a typical sheet (a)');
    expect(said).not.toMatch(/\bsafe\b|guarantee/i);
  });

  it('says the force of the thickest and strongest sheet beside a typical one, each by the part that asks most', () => {
    const pressed = (name: string, force: number, strongest: number): Trial =>
      trial(name, [at(0)], { steps: base.steps.map((s) => ({ ...s, force, forcePerLength: 100, pressing: { strongest: { forcePerLength: strongest, words: '' } } as NonNullable<typeof s.pressing> })) });
    const said = (...trials: readonly Trial[]): string | undefined => checkFirst(base.machine, trials).find((words) => words.startsWith('Force'));
    expect(said(pressed('p', 66_800, 150))).toMatch(/^Force: at most 100\.2 kN predicted in the thickest and strongest sheet, 66\.8 kN in a typical one \(p\); the machine's rating/);
    // q: 60 kN, but one and a half times that in the worst; r: 70 kN in any sheet
    expect(said(pressed('q', 60_000, 150), pressed('r', 70_000, 90))).toContain('at most 90.0 kN predicted in the thickest and strongest sheet (q), 70.0 kN in a typical one (r);');
  });

  it('says which axes nobody measured, one as one and several as several', () => {
    const unmeasured = (...axes: readonly ('ram' | 'x' | 'r')[]): string | undefined => {
      const repeatability = { ...a.machine.repeatability, ...Object.fromEntries(axes.map((axis) => [axis, { source: 'not known' }])) };
      return checkFirst({ ...a.machine, repeatability }, [a]).find((words) => words.startsWith('Not known'));
    };
    expect(unmeasured('r')).toBe('Not known: how well R comes back to its place. Measure it before a tolerance is shown.');
    expect(unmeasured('ram', 'x', 'r')).toBe('Not known: how well the ram, X and R come back to their places. Measure it before a tolerance is shown.');
  });

  it('begins with what the machine\'s record says that everybody must read, as it is known today', () => {
    const known = { ...a, machine: { ...a.machine, beware: ['It has a crack.'] } };
    const firstOf = (beware?: readonly string[]): string => {
      const day = dayPlan({ trials: [known], rack, pieces: 1, spares: 0, ...(beware && { beware }) });
      return day.ok ? day.value.checks[0]! : day.sentence;
    };
    expect([firstOf(), firstOf(['Its guarding is missing.']), firstOf([])]).toEqual(['⚠ It has a crack.', '⚠ Its guarding is missing.', plan.checks[0]]);
  });

  it('leaves out what is not made as it stands, says why and what would make it, and plans the others', () => {
    const reason = { code: 'clearance', sentence: 'The left flange meets the punch by 4.0 mm.' } as Trial['reasons'][number];
    const gooseneck = { sentence: '', confirmed: true, price: 9500, items: [{ kind: 'punch', id: 'g', name: 'A gooseneck', price: 9500, currency: 'EUR' }] } as const;
    const relief = { sentence: '', confirmed: true, items: [{ kind: 'relief', id: 'r', name: 'a notch', price: 0 }] } as const;
    const hat = trial('hat', [], { verdict: 'makes with remedy', reasons: [reason], remedies: [gooseneck, relief] });
    const ring = trial('ring', [], { verdict: 'does not make', reasons: [reason], remedies: [] });
    const open = trial('open', [], { verdict: 'not decided', reasons: [{ ...reason, code: 'limit', sentence: 'The computing time ended' }] });
    const day = dayPlan({ trials: [hat, a, ring, b, open, c], rack, pieces: 2, spares: 1 });
    if (!day.ok) throw new Error(day.sentence);
    const { stops, left, changes, seconds, kit } = day.value;
    // the others' day is as if the three had not been asked for
    expect([stops.map(({ part, trial: t }) => [part, t]), changes, seconds, kit]).toEqual([[['a', 1], ['c', 5], ['b', 3]], plan.changes, plan.seconds, plan.kit]);
    expect(left.map(({ part, trial: t, verdict, madeWith }) => [part, t, verdict, madeWith])).toEqual([
      ['hat', 0, 'makes with remedy', ['made with: A gooseneck, 9,500 EUR', 'made with: a notch, if the drawing allows it']], ['ring', 2, 'does not make', []], ['open', 4, 'not decided', []],
    ]);
    expect(left[0]!.words).toBe('The left flange meets the punch by 4.0 mm. Made with: A gooseneck, 9,500 EUR; or made with: a notch, if the drawing allows it; not planned into the day until that is chosen.');
    const split = { sentence: '', confirmed: true, items: [{ kind: 'split', id: 's', name: 'Made in two, joined at b2', price: null }] } as const;
    const parted = dayPlan({ trials: [a, { ...hat, remedies: [split] }], rack, pieces: 1, spares: 0 });
    if (!parted.ok) throw new Error(parted.sentence);
    expect(parted.value.left[0]!.words).toContain('Made in two, joined at b2, if the drawing allows it; not planned');
    expect(left[1]!.words).toMatch(/a fit looks for them\. Not planned into the day\.$/);
    expect(left[2]!.words).toMatch(/^The computing time ended\. Not decided/);
  });

  it('refuses parts of two machines and parts of which none is made, in a sentence', () => {
    const worn = { ...a, machine: { ...a.machine, id: 'x', name: 'X' } };
    expect(dayPlan({ trials: [a, worn], rack, pieces: 1, spares: 0 })).toMatchObject({ ok: false, sentence: expect.stringContaining('one machine') as unknown });
    expect(dayPlan({ trials: [{ ...a, verdict: 'not decided' as const }], rack, pieces: 1, spares: 0 })).toMatchObject({ ok: false, sentence: expect.stringContaining('makes none of the parts') as unknown });
    expect(dayPlan({ trials: [], rack, pieces: 1, spares: 0 }).ok).toBe(false);
  });
});

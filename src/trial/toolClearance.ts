import type { Interval, Planar } from '../geometry/index.js';
import type { Asker } from './asker.js';
import type { Pair } from './bodies.js';
import type { Body } from './body.js';
import type { Conflict } from './conflict.js';
import { type Ears, type Rows, insetOf, joinRows, shortestOf, stationWindow } from './ears.js';
import { keptWithBranch } from './keptWithBranch.js';
import { BASE_ALLOWANCE, CARRY_ROOM, NEAR_END, NOSE_ALLOWANCE, ON_DIE_TOP } from './limits.js';
import type { Setting } from './setting.js';
import type { StrikeOptions } from './strike.js';
import { contactReach, startOf, tipAt, touchOf, wingsAt } from './stroke.js';
import type { Branch, View } from './views.js';
import { once } from './once.js';
import { outOfReach } from './outOfReach.js';
import { type Passes, type Way, passesFor, passesClose, passesIn, passesOpen, passesOut, passesStroke, tilted } from './ways.js';

/** Lifts that are tried when the sheet is carried over the die: few, so that answers are shared. mm */
const LIFTS = [3, 8, 15, 25, 40, 60, 90, 130, 180, 250, 350, 500, 700, 1000];
/** Openings tried when the part leaves or comes sideways: the punch needs to be free of the bend, no more. mm */
const SIDE_OPENINGS = [8, 20, 50];

/** Ram openings that are tried for the way in and out: no more than the part asks. mm */
const OPENINGS = [20, 40, 60, 80, 100, 120, 140, 160, 180, 200, 250, 300, 350, 400, 500, 600];

const rung = (ladder: readonly number[], needed: number): number => ladder.find((step) => step >= needed) ?? needed;

/** What the tools ask of one stroke: the window along the bed in which they may stand, and how the sheet comes and goes. */
export interface ToolClearance {
  /** For the station's whole length, ears included. */
  readonly window: Interval;
  readonly wayIn: Way;
  readonly wayOut: Way;
}

export type ToolAnswer =
  | { readonly ok: true; readonly value: ToolClearance }
  | { readonly ok: false; readonly conflicts: readonly Conflict[] };

export interface Phase {
  readonly name: Conflict['phase'];
  /** What tells this phase's passes from others', seen from the ram and seen from the bed. */
  readonly ramKey: string;
  readonly bedKey: string;
  /** Passes by the punch (and what hangs over it), and by the die (and what lies under it). */
  readonly byRam: (() => Passes) | null;
  /** Passes by the feet of ears, seen from their own tip: while they hang it lies lower than the punch's. */
  readonly byFeet: (() => Passes) | null;
  readonly byBed: (() => Passes) | null;
}

interface Found {
  readonly rows: Rows;
  readonly conflicts: readonly Conflict[];
}

const liftOf = (way: Way): string => (way.by === 'side' ? 'side' : `${way.by} ${way.lift}`);

const byRoom = (needed: number): number => rung(LIFTS, Math.max(0, needed) + CARRY_ROOM);

/** Heights from the die top. mm */
interface Passing {
  readonly low: number;
  readonly high: number;
}

const frontOf = (bodies: readonly Body[]): number => Math.min(...bodies.map((b) => b.shape.box[0]));

const passingBranch = ({ views }: Branch, pair: Pair, wings: { readonly gauge: Planar; readonly front: Planar }): Passing => {
  const dieFront = frontOf(pair.dieBodies);
  const punchFront = frontOf(pair.punchBodies);
  let [low, high] = [Infinity, -Infinity];
  for (const view of views) {
    const { c, s, x, y } = view.onGaugeSide ? wings.gauge : wings.front;
    for (const { outline } of view.pieces) {
      let [back, under, over] = [-Infinity, Infinity, -Infinity];
      for (const [b, h] of outline) {
        const up = y + s * b + c * h;
        back = Math.max(back, x + c * b - s * h);
        under = Math.min(under, up);
        over = Math.max(over, up);
      }
      if (back > dieFront - BASE_ALLOWANCE) low = Math.min(low, under);
      if (back > punchFront - BASE_ALLOWANCE) high = Math.max(high, over);
    }
  }
  return { low, high };
};

const passingKept = keptWithBranch<Passing>();

/** The highest and lowest metal that passes over the die on the way, with the wings at the place that `where` names. */
const passing = ({ branches, pair }: Setting, where: string, wings: () => { readonly gauge: Planar; readonly front: Planar }): Passing => {
  let [low, high] = [Infinity, -Infinity];
  for (const branch of branches) {
    const mine = passingKept(branch, `${where}|${pair.key}`, () => passingBranch(branch, pair, wings()));
    low = Math.min(low, mine.low);
    high = Math.max(high, mine.high);
  }
  return { low, high };
};

/** The way in from the front: lifted so that what hangs passes over the die, the ram open so that what stands passes under. */
const wayInFront = (setting: Setting): Way => {
  const { bend } = setting;
  const { low, high } = passing(setting, 'in', () => wingsAt(bend, startOf(bend)));
  // a bend begun hangs into the V by its outer apex
  const lift = byRoom(bend.kind === 'V' ? Math.max(-low, bend.thickness - touchOf(bend)) : -low);
  return { by: 'front', lift, opening: openingFor(setting, high + lift) };
};

/** The ways out to the front, straight or with the back wing lowered. */
const waysOutFront = (setting: Setting): readonly Way[] => {
  const { bend } = setting;
  const wings = wingsAt(bend, bend.bendAngle);
  const tip = tipAt(bend, bend.bendAngle);
  const straight = passing(setting, 'out', () => wings);
  const lift = byRoom(Math.max(-straight.low, bend.thickness - tip));
  const ahead: Way = { by: 'front', lift, opening: openingFor(setting, straight.high + lift) };
  if (bend.kind !== 'V') return [ahead];
  const lowered = passing(setting, 'lowered', () => ({
    gauge: tilted(wings.gauge, -bend.bendAngle / 2, tip),
    front: tilted(wings.front, -bend.bendAngle / 2, tip),
  }));
  const deeper = byRoom(Math.max(-straight.low, -lowered.low, bend.thickness - tip));
  return [
    ahead,
    { by: 'tilt', lift: deeper, opening: openingFor(setting, Math.max(lowered.high, tip) + deeper) },
  ];
};

/**
 * The least that ways in and out can ask of a stroke in any fold of the rest: only its own wings are looked at, and every
 * further plate asks as much or more. Ram openings and ways, for the bound of the search.
 */
export const leastWays = (setting: Setting): readonly { readonly wayIn: Way; readonly wayOut: Way }[] => {
  const views = setting.views.filter((v) => v.wing);
  const own: Setting = { ...setting, views, branches: [{ views }] };
  const { bendAngle } = setting.bend;
  const aside = SIDE_OPENINGS[0]! + slidesOf(setting);
  const waysIn: Way[] = [wayInFront(own), { by: 'side', opening: aside + touchOf(setting.bend) }];
  const waysOut: Way[] = [...waysOutFront(own), { by: 'side', opening: aside + tipAt(setting.bend, bendAngle) }];
  return waysIn.flatMap((wayIn) => waysOut.map((wayOut) => ({ wayIn, wayOut })));
};

const framesKept = keptWithBranch<boolean>();

/** Does the sheet, flat or bent, reach back to where the side frames stand? */
export const reachesFrames = ({ branches, bend, machine }: Setting): boolean => {
  const wings = once(() => [startOf(bend), bend.bendAngle].map((x) => wingsAt(bend, x).gauge));
  const reaches = ({ views }: Branch): boolean => wings().some(({ c, s, x }) =>
    views.some((v) => v.onGaugeSide && v.pieces.some((p) => p.outline.some(([b, h]) => x + c * b - s * h > machine.throat - BASE_ALLOWANCE))));
  return branches.some((branch) => framesKept(branch, machine.id, () => reaches(branch)));
};

export const slidesOf = ({ pair }: Setting): number => pair.ears?.slides ?? 0;

const openingFor = (setting: Setting, high: number): number =>
  Math.min(setting.pair.opening, rung(OPENINGS, high + slidesOf(setting) + BASE_ALLOWANCE + CARRY_ROOM));

const foundKept = keptWithBranch<Found>();

/** Everything that one phase of the step meets: tool intervals, and bodies that forbid. */
export const look = (asker: Asker, setting: Setting, phase: Phase, slides: boolean, need: Interval): Found => {
  const key = `${setting.pair.key}|${phase.name}|${phase.ramKey}|${phase.bedKey}`;
  const found = setting.branches.map((branch) => foundKept(branch, key, () => lookAt(asker, setting, branch.views, phase, slides, need)));
  return { rows: joinRows(found.map((f) => f.rows)), conflicts: found.flatMap((f) => f.conflicts) };
};

const lookAt = (asker: Asker, setting: Setting, views: readonly View[], phase: Phase, slides: boolean, need: Interval): Found => {
  const { pair, bend } = setting;
  const rows = { whole: [] as Interval[], drawn: [] as Interval[], body: [] as Interval[] };
  const conflicts: Conflict[] = [];
  const reach = contactReach(bend);
  const { ears } = pair;
  // out for the stroke only: before and after it they hang
  const feet = phase.name === 'stroke' ? 'whole' : 'drawn';
  const inner = (need[1] - need[0]) / 4;
  const ask = (view: View, what: string, bodies: readonly Body[], passes: () => Passes, options: StrikeOptions, row: keyof Rows | null): void => {
    if (outOfReach(view, passesFor(view, passes()), bodies, options.allowance)) return;
    const part = what === 'ear' ? `${pair.punchKey}|${ears!.footHeight}|${ears!.slides}|${phase.ramKey}` : what === 'punch' || what === 'beam' ? `${pair.punchKey}|${phase.ramKey}` : `${pair.dieKey}|${phase.bedKey}`;
    // a view belongs to one running bend, and a bend has one forming: neither needs to be in the key
    const key = `${part}|${what}|${options.only ?? ''}${options.across ? 'across' : ''}`;
    let answer = asker.ask(view, key, bodies, passes, options);
    const inset = row ? insetOf(row, ears) : 0;
    // a tool's end face keeps the allowance too
    const kept = (): readonly Interval[] => answer.where.map(([a, b]) => [a - BASE_ALLOWANCE, b + BASE_ALLOWANCE]);
    const meetsNeed = (within: number): boolean => kept().some(([a, b]) => a < need[1] - within && b > need[0] + within);
    // so little at an end may be no more than what was ruled out with the rest
    if (row && meetsNeed(inset) && !meetsNeed(inset + NEAR_END)) answer = asker.ask(view, `${key}|close`, bodies, passes, { ...options, close: true });
    if (answer.where.length === 0) return;
    if (row) rows[row].push(...kept());
    const beside = row !== null && !meetsNeed(inset);
    conflicts.push({ ...(beside ? { beside } : {}), code: phase.name === 'way in' ? 'way in' : phase.name === 'way out' ? 'way out' : 'clearance', body: what, phase: phase.name, by: answer.depth, view, atEnds: what === 'punch' && !slides && !answer.where.some(([a, b]) => a < need[1] - inner && b > need[0] + inner) });
  };
  for (const view of views) {
    if (phase.byRam) {
      const touching = phase.name !== 'way in' && phase.name !== 'way out';
      // a hem's flange lies under the punch's face by purpose, the plate under it comes as near as one thickness
      const pressed = bend.kind === 'hem close' && view.onGaugeSide;
      const byTool = (what: 'punch' | 'ear', bodies: readonly Body[], passes: () => Passes, row: keyof Rows): void => {
        const kept = slides ? null : row;
        if (!touching) ask(view, what, bodies, passes, { allowance: BASE_ALLOWANCE }, kept);
        // the flat beside the bend turns with the wing: near the nose it may come as near as the wing does
        if (touching && !pressed && view.pieces.some((p) => p.flat)) ask(view, what, bodies, passes, { allowance: NOSE_ALLOWANCE, ...(bend.kind === 'hem close' ? {} : { beyond: reach }), only: 'flat' }, kept);
        if (touching && view.pieces.some((p) => !p.flat)) ask(view, what, bodies, passes, { allowance: BASE_ALLOWANCE, only: 'risen' }, kept);
      };
      byTool('punch', pair.punchBodies, phase.byRam, 'body');
      if (ears) byTool('ear', ears.feet, phase.byFeet!, feet);
      ask(view, 'beam', pair.ramBodies, phase.byRam, { allowance: BASE_ALLOWANCE }, null);
    }
    if (phase.byBed) {
      const resting = { allowance: BASE_ALLOWANCE, below: -bend.thickness / 2 - ON_DIE_TOP };
      ask(view, 'die', pair.dieBodies, phase.byBed, resting, slides ? null : 'whole');
      // what lies flat with the wing but reaches over the bend line goes down as the wing goes up
      if ((phase.name !== 'way in' || (bend.kind === 'V' && startOf(bend) > 0)) && view.pieces.some((p) => p.flat)) ask(view, 'die', pair.dieBodies, phase.byBed, { allowance: NOSE_ALLOWANCE, across: true, only: 'flat' }, slides ? null : 'whole');
      ask(view, 'bed', pair.bedBodies, phase.byBed, { allowance: BASE_ALLOWANCE }, null);
    }
  }
  return { rows, conflicts };
};

/** Bed-long bodies, and tools when the part slides past them, forbid by being met at all. */
export const forbids = (found: Found, slides: boolean): readonly Conflict[] =>
  found.conflicts.filter((c) => slides || c.body === 'beam' || c.body === 'bed');

const tooShortFor = (ears: Ears): Conflict => ({
  code: 'no segments', body: 'ear', phase: 'set-up', by: 0, view: null,
  note: `the room along the bed is shorter than a left and a right ear segment of ${shortestOf(ears).toFixed(0)} mm together`,
});

/** The ways in and out that are tried for a stroke, in this order. */
export const waysFor = (setting: Setting): { readonly waysIn: readonly Way[]; readonly waysOut: readonly Way[] } => {
  const { bend, pair } = setting;
  // a sheet deeper than the throat cannot go along the bed past a side frame
  const sideOpenings = reachesFrames(setting) ? [] : SIDE_OPENINGS.map((o) => o + slidesOf(setting)).filter((o) => o + touchOf(bend) < pair.opening);
  const aside = (over: number): Way[] => sideOpenings.map((o): Way => ({ by: 'side', opening: o + over }));
  return {
    waysIn: [wayInFront(setting), ...aside(touchOf(bend))],
    waysOut: [...waysOutFront(setting), ...aside(tipAt(bend, bend.bendAngle))],
  };
};

/** What is asked of a way in: the sheet coming to its seat, and the ram coming down on it. */
export const phasesIn = (setting: Setting, way: Way): readonly Phase[] => {
  const { bend } = setting;
  const hung = slidesOf(setting);
  const { opening } = way;
  return [
    { name: 'way in', ramKey: `in|${liftOf(way)}|${opening}`, bedKey: `in|${liftOf(way)}`, byRam: once(() => passesIn(bend, way, opening)), byFeet: once(() => passesIn(bend, way, opening - hung)), byBed: once(() => passesIn(bend, way, 0)) },
    { name: 'ram closing', ramKey: `close|${opening}`, bedKey: '', byRam: once(() => passesClose(bend, opening)), byFeet: once(() => passesClose(bend, opening - hung)), byBed: null },
  ];
};

/** What is asked of a way out: the ram going up from the released bend, and the part leaving. */
export const phasesOut = (setting: Setting, way: Way): readonly Phase[] => {
  const { bend } = setting;
  const hung = slidesOf(setting);
  const { opening } = way;
  return [
    { name: 'ram opening', ramKey: `open|${opening}`, bedKey: '', byRam: once(() => passesOpen(bend, opening)), byFeet: once(() => passesOpen(bend, opening - hung)), byBed: null },
    { name: 'way out', ramKey: `out|${liftOf(way)}|${opening}`, bedKey: `out|${liftOf(way)}`, byRam: once(() => passesOut(bend, way, opening)), byFeet: once(() => passesOut(bend, way, opening - hung)), byBed: once(() => passesOut(bend, way, 0)) },
  ];
};

/**
 * May this stroke be made with this pair? `need` is the part of the bend line that must stand on tools, along the bed
 * from the bend's own origin. Answers with the window for the tools and the ways in and out, or with what is met.
 */
export const toolClearance = (asker: Asker, setting: Setting, need: Interval): ToolAnswer => {
  const { bend, pair: { ears } } = setting;
  const windowOf = (rows: Rows): Interval | null => stationWindow(rows, need, ears);
  if (ears && need[1] - need[0] < 2 * Math.max(insetOf('body', ears), insetOf('drawn', ears))) return { ok: false, conflicts: [tooShortFor(ears)] };
  const stroke: Phase = {
    name: 'stroke', ramKey: 'stroke', bedKey: 'stroke',
    byRam: once(() => passesStroke(bend, true)),
    byFeet: once(() => passesStroke(bend, true)),
    byBed: once(() => passesStroke(bend, false)),
  };
  const during = look(asker, setting, stroke, false, need);
  const hard = forbids(during, false);
  if (hard.length > 0) return { ok: false, conflicts: hard };
  if (!windowOf(during.rows)) return { ok: false, conflicts: during.conflicts };

  const { waysIn, waysOut } = waysFor(setting);
  const firstThat = (ways: readonly Way[], phases: (way: Way) => readonly Phase[], soFar: Rows):
    { readonly way: Way; readonly rows: Rows } | { readonly way: null; readonly conflicts: readonly Conflict[] } => {
    let least: readonly Conflict[] | null = null;
    for (const way of ways) {
      const found = phases(way).map((phase) => ({ phase, slides: way.by === 'side' && (phase.name === 'way in' || phase.name === 'way out') }))
        .map(({ phase, slides }) => ({ slides, ...look(asker, setting, phase, slides, need) }));
      const stop = found.flatMap((f) => forbids(f, f.slides));
      const rows = joinRows([soFar, ...found.map((f) => f.rows)]);
      if (stop.length === 0 && windowOf(rows)) return { way, rows };
      least ??= stop.length > 0 ? stop : found.flatMap((f) => f.conflicts);
    }
    return { way: null, conflicts: least ?? [] };
  };

  const entered = firstThat(waysIn, (way) => phasesIn(setting, way), during.rows);
  if (!entered.way) return { ok: false, conflicts: entered.conflicts };

  const left = firstThat(waysOut, (way) => phasesOut(setting, way), entered.rows);
  if (!left.way) return { ok: false, conflicts: left.conflicts };
  const window = windowOf(left.rows)!;
  if (ears && window[1] - window[0] < shortestOf(ears)) return { ok: false, conflicts: [tooShortFor(ears)] };
  return { ok: true, value: { window, wayIn: entered.way, wayOut: left.way } };
};

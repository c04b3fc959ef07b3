import { type Rigid, type Vec3, apply, compose } from '../geometry/index.js';
import type { FingerFace } from '../shop/index.js';
import type { Move } from '../trial/index.js';
import type { Carrier } from './body.js';
import { cornersOf } from './box.js';
import { type Element, relOf } from './element.js';
import { type Placement, movesIn, movesOut, tiltBy } from './moves.js';
import type { Phase, PhaseName, StraightPhase } from './phase.js';
import type { Setting } from './setting.js';

const RADIANS = Math.PI / 180;

const degrees = (x: number): string => (x / RADIANS).toFixed(1);

/** The face that touches, by its name in the stop. */
export const faceOf = (setting: Setting): FingerFace | undefined =>
  setting.machine.gauge.finger.faces.find((f) => f.name === setting.step.stop.face);

/** Where carriers stand: the ram by its tip's height, the gauge by how far it has moved back. */
const offsets = (setting: Setting, tip: number, retracted: number): ((carrier: Carrier) => Vec3) => {
  const { stop } = setting.step;
  const x = stop.x - (faceOf(setting)?.behind ?? 0) + retracted;
  return (carrier) =>
    carrier === 'ram' || carrier === 'ears' ? [0, 0, tip + setting.punch.height] : carrier === 'gauge' ? [0, x, stop.r] : [0, 0, 0];
};

const AT_REST: readonly Move[] = [{ kind: 'shift', by: [0, 0, 0] }];

/** A way without a move is looked at all the same. */
const orAtRest = (moves: readonly Move[]): readonly Move[] => (moves.length === 0 ? AT_REST : moves);

const turnedBack = (v: Vec3): Vec3 => [-v[0], -v[1], -v[2]];

/** The phases of one or the other way, the running bends at x and the tip at `tip`. */
const wayPhases = (
  setting: Setting,
  name: PhaseName,
  list: readonly Placement[],
  x: number,
  tip: number,
  retracted: number,
): Phase[] =>
  list.map((move, i): Phase => {
    const offset = offsets(setting, tip, retracted);
    const seat = { gauge: setting.root('gauge', x), front: setting.root('front', x) };
    const word = list.length === 1 ? '' : `, move ${i + 1}`;
    const common = { name, offset, angle: () => x };
    if (move.kind === 'shift') {
      const by = turnedBack(move.by);
      return {
        ...common,
        kind: 'straight',
        root: (wing) => compose(move.before, seat[wing]),
        at: () => word,
        sweep: { bed: by, ram: by, gauge: by, ears: by },
      };
    }
    const levers = new Map<Element, number>();
    const lever = (e: Element): number => {
      const known = levers.get(e);
      if (known !== undefined) return known;
      const pose = compose(move.before, compose(seat[e.wing], relOf(e, x)));
      const places = cornersOf(e.box(x, 0)).map((p) => apply(pose, p));
      const found = Math.max(...places.map((p) => Math.hypot(p[1], p[2] - move.pivotUp)));
      levers.set(e, found);
      return found;
    };
    return {
      ...common,
      kind: 'turn',
      degrees: move.degrees,
      root: (wing, s): Rigid => compose(tiltBy(move.degrees * s, move.pivotUp), compose(move.before, seat[wing])),
      at: (s) => `${word}, tilted by ${(move.degrees * s).toFixed(1)} degrees`,
      travel: (e, _, s0, s1) => lever(e) * Math.abs(move.degrees * RADIANS * (s1 - s0)),
    };
  });

/** Between way in and way out everything but the bend itself is one body shifting past a part at rest. */
const atRest = (
  setting: Setting,
  name: PhaseName,
  x: number,
  tip: number,
  retracted: number,
  sweep: StraightPhase['sweep'],
  ears = 0,
): Phase => {
  const seat = { gauge: setting.root('gauge', x), front: setting.root('front', x) };
  return {
    kind: 'straight',
    name,
    root: (wing) => seat[wing],
    angle: () => x,
    offset: (carrier) => offsets(setting, carrier === 'ears' ? tip + ears : tip, retracted)(carrier),
    at: () => '',
    sweep,
  };
};

/** Where the part, displaced from its seat, starts its way in and ends its way out; both with the running angle. */
export interface Ends {
  readonly start: { readonly displaced: Rigid; readonly x: number };
  readonly end: { readonly displaced: Rigid; readonly x: number };
}

/**
 * A step in time (docs/kinematics.md). The release is left out: it goes back through poses of the bend, tip and metal
 * in the same places to each other.
 */
export const phasesOf = (setting: Setting): { readonly phases: readonly Phase[]; readonly ends: Ends } => {
  const { step, before, load, after, vee, slides } = setting;
  const inward = movesIn(orAtRest(step.wayIn), setting.tip(before));
  const outward = movesOut(orAtRest(step.wayOut), setting.tip(after));
  const [openIn, openOut] = [vee.top + step.ramOpening, vee.top + step.ramOpeningOut];
  const { retract } = step.stop;
  const at = (s: number): number => (s === 1 ? load : before + (load - before) * s);
  const bend: Phase = {
    kind: 'turn',
    name: 'bend',
    degrees: (load - before) / RADIANS,
    root: (wing, s) => setting.root(wing, at(s)),
    angle: at,
    offset: (carrier, s) => offsets(setting, setting.tip(at(s)), retract)(carrier),
    at: (s) => ` at ${degrees(at(s))} degrees of bend angle`,
    travel: (e, carrier, s0, s1) => setting.travel[carrier === 'ram' || carrier === 'ears' ? 'fromPunch' : 'fromBed'](e, at(s0), at(s1)),
  };
  return {
    phases: [
      ...wayPhases(setting, 'way in', inward.list, before, openIn, 0),
      // hanging ears meet the sheet first; what is left of the ram's way they slide out on it
      atRest(setting, 'close', before, openIn, 0, { ram: [0, 0, setting.tip(before) - openIn], ears: [0, 0, setting.tip(before) + slides - openIn] }),
      ...(retract > 0 ? [atRest(setting, 'retract', before, setting.tip(before), 0, { gauge: [0, retract, 0] })] : []),
      bend,
      atRest(setting, 'open', after, setting.tip(after), retract, { ram: [0, 0, openOut - setting.tip(after)], ears: [0, 0, openOut - setting.tip(after) - slides] }, slides),
      ...wayPhases(setting, 'way out', outward.list, after, openOut, retract),
    ],
    ends: {
      start: { displaced: inward.start, x: before },
      end: { displaced: outward.end, x: after },
    },
  };
};

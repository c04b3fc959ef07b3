import type { Interval, Vec2 } from '../geometry/index.js';
import type { Asker } from './asker.js';
import type { Body } from './body.js';
import { gaugeBodies } from './gaugeClearance.js';
import { keptWithBranch } from './keptWithBranch.js';
import { BASE_ALLOWANCE, ON_DIE_TOP } from './limits.js';
import { once } from './once.js';
import { outOfReach } from './outOfReach.js';
import type { Setting } from './setting.js';
import type { Target } from './stopTargets.js';
import type { ToolClearance } from './toolClearance.js';
import type { Branch, View } from './views.js';
import { type Passes, passesFor, passesIn, passesOut, passesStroke, seenFrom } from './ways.js';

/** Against what it touches the finger is tested one allowance behind where it stands, with that allowance less this. mm */
const TOUCHING = 0.02;
/**
 * A gauge that is set by hand stays where it is in the stroke. The edge's lower corner, one thickness t under the upper one, swings
 * out by t^2 / 2L before it rises, and the flat is drawn into the V: the finger gives so much. mm; common practice, no source.
 */
const GIVES = 0.3;
const EVERYWHERE: readonly Interval[] = [[-Infinity, Infinity]];

/** What fingers at a place meet: where along the bed, and whether the bar that carries them is met. */
export interface Struck {
  readonly where: readonly Interval[];
  readonly beam: boolean;
}

const struckKept = keptWithBranch<Struck>();

/** Asks what fingers at X and R (mm) meet as the sheet arrives, or in the stroke and on the way out, `movedBack` or standing at what they touch. */
export type FingerStrikes = (target: Target, x: number, r: number, kind: 'arriving' | 'bending', movedBack: boolean) => Struck;

export const fingerStrikes = (asker: Asker, setting: Setting, ways: Pick<ToolClearance, 'wayIn' | 'wayOut'>): FingerStrikes => {
  const { machine: { gauge }, pair, bend } = setting;
  const { finger, beam } = gaugeBodies(gauge);
  return (target, x, r, kind, movedBack) => {
    const way = kind === 'arriving' ? ways.wayIn : ways.wayOut;
    const placeKey = `${x.toFixed(3)}|${r.toFixed(3)}|${kind}|${way.by}|${way.by === 'side' ? 0 : way.lift}`;
    /** Asks with the fingers at `x`, or, for what touches them, one allowance behind it. */
    const asking = (touches: boolean): ((view: View, name: string, bodies: readonly Body[]) => readonly Interval[]) => {
      const place: Vec2 = [touches ? x + BASE_ALLOWANCE : x, r - pair.dieTop];
      const slack = kind === 'bending' && gauge.x.drive !== 'powered' ? GIVES : TOUCHING;
      const allowance = touches ? BASE_ALLOWANCE - slack : BASE_ALLOWANCE;
      const key = `${pair.dieKey}|${placeKey}${touches ? '|touching' : ''}`;
      const carried = once((): Passes => seenFrom(kind === 'arriving' ? passesIn(bend, ways.wayIn, 0) : passesOut(bend, ways.wayOut, 0), place));
      const stroke = once((): Passes => seenFrom(passesStroke(bend, false), place));
      const whole = once((): Passes => ({ gauge: [...stroke().gauge, ...carried().gauge], front: [...stroke().front, ...carried().front] }));
      const meets = (view: View, name: string, bodies: readonly Body[], walk: () => Passes): readonly Interval[] =>
        outOfReach(view, passesFor(view, walk()), bodies, allowance) ? [] : asker.ask(view, `${key}|${name}`, bodies, walk, { allowance }).where;
      return (view, name, bodies) => {
        if (way.by !== 'side') return meets(view, name, bodies, kind === 'arriving' ? carried : whole);
        // carried along the bed, what meets a finger where it lies passes the fingers wherever they stand
        if (meets(view, `${name}|carried`, bodies, carried).length > 0) return EVERYWHERE;
        return kind === 'arriving' ? [] : meets(view, `${name}|stroke`, bodies, stroke);
      };
    };
    const [touching, plain] = [asking(true), asking(false)];
    const flatEdge = target.kind === 'edge' && target.low <= ON_DIE_TOP;
    const ofBranch = (branch: Branch): Struck => {
      const where: Interval[] = [];
      let hitsBeam = false;
      for (const view of branch.views) {
        // the stop's own plate and what lies flat with it touch the fingers while these stand there; everything else keeps clear of them
        const touches = !movedBack && (view === target.view || (flatEdge && view.pieces.every((p) => p.flat)));
        const meets = touches ? touching : plain;
        // a finger's sides keep the allowance too, but for the edge that runs on at a slant from the corner that touches it
        const beside = touches && target.taper ? 0 : BASE_ALLOWANCE;
        where.push(...meets(view, 'finger', finger).map(([a, b]): Interval => [a - beside, b + beside]));
        if (!hitsBeam && meets(view, 'gauge beam', beam).length > 0) hitsBeam = true;
      }
      return { where, beam: hitsBeam };
    };
    const touched = movedBack ? '' : `|${flatEdge ? 'flat' : ''}${target.taper ? 'slant' : ''}`;
    const key = `${pair.dieKey}|${placeKey}${touched}`;
    const all = setting.branches.map((branch) => struckKept(branch, touched && branch.views.includes(target.view) ? `${key}|${target.view.plate}` : key, () => ofBranch(branch)));
    return { where: all.flatMap((s) => s.where), beam: all.some((s) => s.beam) };
  };
};

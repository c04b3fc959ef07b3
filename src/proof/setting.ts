import { type Rigid, apply, compose, invert } from '../geometry/index.js';
import type { Developed } from '../sheet/index.js';
import type { Die, Machine, Punch } from '../shop/index.js';
import type { Station, Step } from '../trial/index.js';
import { acrossBend, sideFrame } from './bendShape.js';
import { cornersOf } from './box.js';
import { closingRoot, closingTip, closingTravel, faceHalf } from './closing.js';
import { type BendTravel, bendTravel } from './bendTravel.js';
import { type Element, type Wing, type WingMap, elementsOf, wingsOf } from './element.js';
import type { Metal } from './metal.js';
import { flatWith, restingElements } from './flatMetal.js';
import { segmentOf } from './profileSlabs.js';
import { type OffsetPlates, offsetPlates, steppingOf } from './stepping.js';
import { type Vee, apexAt, gaugePose, veeOf } from './vee.js';

const RADIANS = Math.PI / 180;

/** One step with all that its replay needs. Angles in radians, lengths in mm, heights from the die seat. */
export interface Setting {
  readonly step: Step;
  readonly machine: Machine;
  readonly sheet: Developed;
  readonly station: Station;
  readonly punch: Punch;
  readonly die: Die;
  /** Index of the step's first bend, and all that run. */
  readonly first: number;
  readonly running: ReadonlySet<number>;
  readonly vee: Vee;
  /** The stroke closes a hem: the front wing lies on the anvil, the gauge side's is the hem's flange. */
  readonly closes: boolean;
  /** The stroke makes an offset: both its bends run, the flanges beyond them stay level. */
  readonly offset: OffsetPlates | null;
  /** Angle of the running bends before the stroke, under load, and released. */
  readonly before: number;
  readonly load: number;
  readonly after: number;
  readonly wings: WingMap;
  readonly elements: readonly Element[];
  /** Elements that touch the die top at the seat. */
  readonly resting: ReadonlySet<Element>;
  /** Elements that carry on the two wings in their own plane, and the zones that join them to something. */
  readonly level: ReadonlySet<Element>;
  /** What may touch the fingers: the stop's plate as far as it goes on flat, and the zones joined to it. */
  readonly stopped: ReadonlySet<Element>;
  /** mm by which ears of the step's punch slide; 0 where it has none that do. */
  readonly slides: number;
  /** up of the punch tip when it touches the inner apex (closing a hem: of its face on the flange) at the running angle x. */
  tip(x: number): number;
  /** The pose of a wing's root plate with the running bends at x. */
  root(wing: Wing, x: number): Rigid;
  readonly travel: BendTravel;
}

/** `angles`: of every bend before the step. */
export const makeSetting = (
  record: { readonly step: Step; readonly machine: Machine; readonly sheet: Developed },
  tools: { readonly station: Station; readonly punch: Punch; readonly die: Die },
  bends: readonly number[],
  metal: Metal,
  angles: readonly number[],
  names: readonly string[],
): Setting => {
  const { step, sheet } = record;
  const first = bends[0]!;
  const running = new Set(bends);
  const bend = sheet.part.bends[first]!;
  const shape = metal.shapes[first]!;
  const vee = veeOf(tools.die, tools.station.dieTop);
  const [before, load, after] = [angles[first]!, step.bendAngleUnderLoad * RADIANS, step.bendAngle * RADIANS];
  const offset = step.kind === 'offset bend' ? offsetPlates(sheet, bends)! : null;
  const stepping = offset && steppingOf(sheet, metal, bends, offset, angles, step, tools.punch, tools.station.punchFacing, tools.station.dieTop, after);
  const roots = stepping ? (stepping.lowWing === 'gauge' ? { gauge: offset.low, front: offset.high } : { gauge: offset.high, front: offset.low }) : { gauge: bend.sides[step.gaugeSide].plate, front: bend.sides[step.gaugeSide === 0 ? 1 : 0].plate };
  // the metal between an offset's bends goes with the flange that goes down, as far as it goes with any
  const wings = wingsOf(sheet, offset ? new Set([bends[1]!]) : running, roots);
  const elements = elementsOf(sheet, metal, angles, running, wings, names, stepping ? { web: offset.web, relAt: stepping.web } : undefined);
  const closes = step.kind === 'hem close';
  const closing = closingRoot(bend, shape, step, vee.top);
  const root = (wing: Wing, x: number): Rigid => {
    if (stepping) return stepping.root(wing, x);
    if (closes) return closing(wing, x);
    const gauge = gaugePose(vee, bend, shape, step, x);
    if (wing === 'gauge') return gauge;
    const across = acrossBend(bend, shape, x);
    return compose(gauge, step.gaugeSide === 0 ? across : invert(across));
  };
  const seat = (wing: Wing): Rigid => root(wing, before);
  const beside = new Set(offset ? [offset.low, offset.web, offset.high] : bends.flatMap((i) => sheet.part.bends[i]!.sides.map((s) => s.plate)));
  const level = flatWith(sheet, elements, beside, seat);
  const flange = invert(sideFrame(bend.sides[step.gaugeSide].line));
  const reach = Math.max(0, ...[...level].filter((e) => e.kind === 'plate' && e.wing === 'gauge').flatMap((e) => cornersOf(e.box(0, 0)).map((p) => Math.abs(apply(flange, apply(e.rel, p))[1]))));
  const face = faceHalf(tools.punch);
  const tip = (x: number): number => stepping ? stepping.tip(x) : (closes ? closingTip(bend, shape, step, face, reach, root('gauge', x)) : apexAt(vee, shape, x));
  return {
    ...record,
    ...tools,
    closes,
    offset,
    first,
    running,
    vee,
    before,
    load,
    after,
    wings,
    elements,
    resting:
      before === 0 || closes ? restingElements(sheet, elements, seat, vee.top) : new Set<Element>(),
    level,
    stopped: step.stop.kind === 'none' ? new Set<Element>() : flatWith(sheet, elements, new Set([step.stop.plate]), seat),
    slides: Math.max(0, ...tools.station.punchSegments.map((p) => segmentOf(tools.punch.segments, p, tools.station.punchFacing)?.ear?.slides ?? 0)),
    tip,
    root,
    travel: stepping ? stepping.travel : closes ? closingTravel(bend, shape, step.gaugeSide, before, load, tip) : bendTravel(vee, shape, bend, step.gaugeSide, before, load),
  };
};

import { type Vec2, apply, convexPieces, flatten, invert } from '../geometry/index.js';
import { type Developed, type Part, asFormed, bendFrame } from '../sheet/index.js';
import { bendsInV } from '../shop/index.js';
import { asCut } from './asCut.js';
import { type Pair, pairOf } from './bodies.js';
import { type Forming, formedInStep } from './forming.js';
import { formingChoice, isRelieved, suits, tooWeak } from './formingChoice.js';
import type { Group } from './groups.js';
import { closingPairs } from './hemTooling.js';
import type { TrialInput } from './input.js';
import { CHORD_ERROR, V_LEAST, V_MOST } from './limits.js';
import { once } from './once.js';
import { type ReachStretch, reachAlong, reachesFor } from './reachAlong.js';
import type { Twice } from './states.js';
import { bendLength, lengthsBent } from './strokeLength.js';
import type { Reason, Trial } from './trial.js';

/** One way to tool the whole part: each bend's forming, the sheet that results, the pairs that may be used. */
export interface Tooling {
  readonly v: number;
  readonly forming: readonly Forming[];
  readonly sheet: Developed;
  /** Present when a blank already cut was given. */
  readonly misses?: Trial['misses'];
  readonly pairs: readonly Pair[];
  /** For each bend, the pairs (index) that form it. */
  readonly pairsOf: readonly (readonly number[])[];
  /** The pairs (index) that close hems. */
  readonly closing: readonly number[];
  /** Punches that were left out because they bear less than is asked. */
  readonly tooWeak: readonly Reason[];
}

/** V over thickness that is the trade's first choice. Common practice, no source. */
const V_FIRST_CHOICE = 8;

/** How far each plate beside a bend reaches from its line, along each piece of the bend's metal. */
const besideBend = (part: Part, bend: number): readonly (readonly ReachStretch[])[] => part.bends[bend]!.sides.flatMap(({ plate, line }, side) => {
  const into = invert(bendFrame(line));
  // side 0 lies to the right of its line
  const away = side === 0 ? -1 : 1;
  const flats = convexPieces(flatten(part.plates[plate]!.outline, CHORD_ERROR)).map((piece) => piece.map(([x, y]): Vec2 => {
    const [u, v] = apply(into, [x, y, 0]);
    return [u, away * v];
  }));
  return lengthsBent(part.bends[bend]!).map((piece) => reachAlong(flats, piece));
});

/** The forming of a bend (index) in a V of this width. */
type Chooser = (v: number, bend: number) => Forming | null;

type Asked = Pick<TrialInput, 'part' | 'metal' | 'machine' | 'rack' | 'blank' | 'deductions' | 'leaveOut'>;

/**
 * The ways to tool a part on a machine, best first: the V nearest to 8 t for every bend; then the same with a smaller V
 * for the bends whose flange is too short for it; then both with the tips that have relieved punches. Each is worked out when it is asked for; `reasons` gathers why tools fell out.
 */
export function* toolings({ part, metal, machine, rack, blank: given, deductions: measured = [], leaveOut = [] }: Asked, groups: readonly Group[], twice: Twice, reasons: Reason[]): Generator<Tooling> {
  const inStep = new Map(groups.flatMap(({ offset }) => offset?.bends.map((b) => [b, formedInStep(metal, part, b, offset)] as const) ?? []));
  const t = part.thickness;
  const dies = rack.dies.filter((d) => d.shape === 'V' && machine.seatFamilies.includes(d.tang));
  const punches = rack.punches.filter((p) => bendsInV(p) && machine.clampFamilies.includes(p.tang));
  const openings = [...new Set(dies.map((d) => d.v))].filter((v) => v >= V_LEAST * t && v <= V_MOST * t);
  const strangeness = (v: number): number => Math.abs(Math.log(v / (V_FIRST_CHOICE * t)));
  openings.sort((a, b) => strangeness(a) - strangeness(b));
  if (openings.length === 0) {
    reasons.push({ code: 'no tool', sentence: `The rack has no V die between ${(V_LEAST * t).toFixed(0)} and ${(V_MOST * t).toFixed(0)} mm for ${t} mm of sheet.`, bends: [] });
  }
  const closers: Pair[] = [];
  for (const group of groups.filter((g) => g.closes)) {
    const length = group.bends.reduce((sum, b) => sum + bendLength(part, b), 0);
    const { pairs: able, reason } = closingPairs(metal, part, group.bends, length, machine, rack);
    if (reason) {
      reasons.push(reason);
      return;
    }
    closers.splice(0, closers.length, ...able.filter((p) => closers.length === 0 || closers.some((q) => q.key === p.key)));
  }
  const withV = formingChoice({ part, metal, machine, dies, punches, measured, leaveOut, twice }, reasons);
  const build = (v: number, chosen: readonly Forming[]): Tooling | null => {
    const reshaped = asFormed(part, chosen.map((f) => (f.hem ? { insideRadius: f.closedRadius!, hem: f.hem } : { insideRadius: f.air.insideRadius })));
    if (!reshaped.ok) {
      reasons.push({ code: 'radius', sentence: reshaped.failure.sentence, bends: reshaped.failure.bends, ...(reshaped.failure.by === undefined ? {} : { by: reshaped.failure.by }) });
      return null;
    }
    const developed: Developed = { part: reshaped.value, allowances: chosen.map((f) => (f.hem ? Math.max(f.hem.preLength, f.hem.closedLength) : f.air.allowance)) };
    const cut = given ? asCut(developed, given) : null;
    if (cut && !cut.ok) {
      reasons.push({ code: 'blank', sentence: cut.sentence, bends: [], by: cut.by });
      return null;
    }
    const pairs: Pair[] = [];
    const pairsOf = chosen.map((forming) => {
      const tools = forming.offset?.tools ?? punches.filter((p) => suits(p, forming)).map((punch) => ({ punch, die: forming.die }));
      return tools.flatMap(({ punch, die }) => {
        const turns = punch.reversible && (!forming.offset || die.reversible);
        return (turns ? (['as drawn', 'reversed'] as const) : (['as drawn'] as const)).map((facing) => {
          const pair = pairOf(machine, punch, die, facing);
          const index = pairs.findIndex((p) => p.key === pair.key);
          return index < 0 ? pairs.push(pair) - 1 : index;
        });
      });
    });
    const closing = closers.map((pair) => pairs.push(pair) - 1);
    const weak = chosen.flatMap((forming, i) => (forming.offset ? [] : tooWeak(part, i, forming, punches)));
    return { v, closing, tooWeak: weak, forming: chosen, sheet: cut?.value.sheet ?? developed, ...(cut ? { misses: cut.value.misses } : {}), pairs, pairsOf };
  };
  const found: Tooling[] = [];
  const isNew = (tooling: Tooling): boolean => {
    const same = (other: Tooling): boolean => tooling.forming.every((f, i) => f.die.id === other.forming[i]!.die.id && f.tipRadius === other.forming[i]!.tipRadius);
    if (found.some(same)) return false;
    found.push(tooling);
    return true;
  };
  const whole = (forming: readonly (Forming | null)[]): forming is readonly Forming[] => forming.every((f) => f !== null);
  const beside = part.bends.map((_, i) => once(() => besideBend(part, i)));
  const reaches = (bend: number, { air, hem, die }: Forming): boolean => {
    const least = air.minFlange - air.deduction / 2 - (hem?.closedLength ?? air.allowance) / 2;
    return beside[bend]!().every((reach) => reachesFor(reach, least, die.v));
  };
  const isHem = (bend: number): boolean => part.bends[bend]!.kind === 'hem';
  /** Of the widths a bend may take, nearest to the one wished first, the first that it and its mates of one stroke are long enough for. */
  const longEnough = (widths: readonly number[], bend: number, mates: readonly number[], chosen: Chooser = withV): Forming | null => {
    const all = widths.map((w) => chosen(w, bend)).filter((f) => f !== null);
    return all.find((f) => mates.every((m) => reaches(m, f))) ?? (isHem(bend) ? all[0] : chosen(widths[0]!, bend)) ?? null;
  };
  const alone = (bend: number): readonly number[] => [bend];
  const inOne = (bend: number): readonly number[] => groups.find((g) => g.bends.includes(bend))?.bends ?? [bend];
  /** A hem's acute V need not be that of the other bends: of those it is long enough for, the nearest to the one wished. */
  const forHem = (v: number, bend: number, mates: readonly number[]): Forming | null => longEnough([v, ...openings.filter((w) => w !== v)], bend, mates);
  for (const v of openings) {
    const single = part.bends.map((_, i) => inStep.get(i) ?? (isHem(i) ? forHem(v, i, inOne(i)) : withV(v, i)));
    const tooling = whole(single) ? build(v, single) : null;
    if (tooling && isNew(tooling)) yield tooling;
  }
  // the tip nearest to the drawing may have no punch that a flange can stand up behind, where another tip has
  const slim: Chooser = (v, bend) => {
    const nearest = withV(v, bend);
    return nearest && punches.some((p) => isRelieved(p) && suits(p, nearest)) ? nearest : withV(v, bend, true) ?? nearest;
  };
  for (const chosen of [withV, slim]) {
    for (const v of openings) {
      const narrower = [v, ...openings.filter((w) => w < v).sort((a, b) => b - a)];
      // bends of one stroke in one V first, then each by itself
      for (const mates of [inOne, alone]) {
        const each = part.bends.map((_, i) => inStep.get(i) ?? (isHem(i) ? forHem(v, i, mates(i)) : longEnough(narrower, i, mates(i), chosen)));
        const tooling = whole(each) ? build(v, each) : null;
        if (tooling && isNew(tooling)) yield tooling;
      }
    }
  }
}

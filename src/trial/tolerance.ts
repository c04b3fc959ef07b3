import { linearTolerance } from '../metal/index.js';
import { type Dimension, type Part, bendsOf, defaultDimensions, develop, plateNames, valueOf } from '../sheet/index.js';
import type { Machine } from '../shop/index.js';
import { type Deviations, type Placed, type Prediction, createDeviations } from './deviations.js';
import { describeDimension } from './dimensionWords.js';
import type { ToleranceRule, TrialInput } from './input.js';
import { type SearchResult, search } from './search.js';
import type { Layout } from './layout.js';
import { seatsStanding } from './seatShift.js';
import type { StrokeOption } from './strokeOption.js';
import type { Held, Holding, Planned, SearchTask } from './task.js';
import type { Tooling } from './tooling.js';
import type { Contribution, PredictedDimension, Reason } from './trial.js';

/** A dimension with what is asked of it. */
interface Asked {
  readonly dimension: Dimension;
  /** mm: as drawn, and as these tools form it. */
  readonly drawn: number;
  readonly value: number;
  readonly tolerance: number | null;
  readonly askedBy: string;
  readonly bends: readonly number[];
}

interface Placing extends Held {
  readonly placed: Placed;
}

/** Less than this off the drawing is rounding of what is told. mm */
const NOT_OFF = 0.005;

/** At their full angles bends stand where radius and angle put them, whatever flat length they take up: any rule will do. */
const AS_DRAWN = { name: 'K-factor', k: 0.44 } as const;

const askedOf = (tooling: Pick<Tooling, 'sheet'>, part: Part, { toleranceClass }: Pick<TrialInput, 'toleranceClass'>): readonly Asked[] => {
  const drawing = develop(part, AS_DRAWN);
  return (part.dimensions ?? defaultDimensions(tooling.sheet)).map((dimension): Asked => {
    const [datum, other] = dimension.between;
    const value = valueOf(tooling.sheet, dimension);
    // of lengths that nobody drew, those between faces follow from the flanges', which are kept: no drawing asks for both
    const asDrawn = valueOf(drawing, dimension);
    const follows = part.dimensions === undefined && datum.kind === 'face' && other.kind === 'face' && Math.abs(value - asDrawn) >= NOT_OFF;
    const drawn = follows ? value : asDrawn;
    const cls = dimension.class ?? toleranceClass;
    const general = cls ? linearTolerance(drawn, cls) : null;
    return {
      dimension, drawn, value, bends: bendsOf(tooling.sheet.part, { datum, other }),
      ...(dimension.tolerance !== undefined ? { tolerance: dimension.tolerance, askedBy: 'the drawing' }
        : general ? { tolerance: general.tolerance, askedBy: `class ${cls!}, ${general.source}${general.doubt ? ` (${general.doubt})` : ''}${follows ? ', about what follows from the flanges as formed' : ''}` }
          : { tolerance: null, askedBy: cls ? `class ${cls} has no figure for this length` : 'nobody' }),
    };
  });
};

export const asksTolerance = ({ part, toleranceClass }: TrialInput): boolean =>
  toleranceClass !== undefined || (part.dimensions ?? []).some((d) => d.tolerance !== undefined || d.class !== undefined);

const sizeBy = (rule: ToleranceRule, { batch }: Pick<Prediction, 'batch'>): number => (rule === 'worst case' ? batch.worstCase : batch.rootSumSquare);

/** mm: how far the tools form it off the drawing, which every piece of the batch is, and its scatter about that. */
const offBy = ({ value, drawn }: Asked, rule: ToleranceRule, prediction: Pick<Prediction, 'batch'>): number => Math.abs(value - drawn) + sizeBy(rule, prediction);

const verdictOf = (asked: Asked, prediction: Prediction, rule: ToleranceRule): PredictedDimension['verdict'] => {
  if (asked.tolerance === null) return 'no tolerance';
  if (offBy(asked, rule, prediction) > asked.tolerance) return 'does not hold';
  return prediction.notKnown.length > 0 ? 'not known' : 'holds';
};

/** The source that does most, all its strokes together, and what it does to the dimension. mm */
const mainCause = (contributions: readonly Contribution[]): { readonly cause: Contribution; readonly size: number } | null => {
  const sums = new Map<string, { cause: Contribution; square: number }>();
  for (const c of contributions) {
    if (c.kind !== 'scatter') continue;
    const so = sums.get(c.what);
    sums.set(c.what, { cause: so?.cause ?? c, square: (so?.square ?? 0) + c.size ** 2 });
  }
  const first = [...sums.values()].sort((a, b) => b.square - a.square)[0];
  return first ? { cause: first.cause, size: Math.sqrt(first.square) } : null;
};

const isOff = ({ value, drawn }: Asked): boolean => Math.abs(value - drawn) >= NOT_OFF;

const mm = (value: number): string => `${value.toFixed(2)} mm`;

/** What a plan does by tolerance: the prediction for every dimension, and the orders and stops that it had to give up. */
export interface WithinTolerance {
  readonly result: SearchResult;
  /** Why there is no plan within the tolerances although there is one without. */
  readonly reason: Reason | null;
  /** The reason is that nobody measured the machine, not what was measured. */
  readonly notKnown: boolean;
  readonly predicted: (layout: Layout) => readonly PredictedDimension[];
  /** A dimension that the stations as they stand do not hold, although a better place along the worn bed would. */
  readonly whereItStands: (layout: Layout) => Reason | null;
  readonly deviations: Deviations;
}

/**
 * The quickest plan that holds every tolerance. First the quickest of all; the dimensions that it misses become a limit of the
 * search, in which the strokes on their chains may take any stop; and so on until none is missed. Each round asks less than
 * the whole question, so a plan that meets the whole is the quickest one that does.
 */
export const searchWithin = (task: SearchTask, tooling: Tooling, input: TrialInput): WithinTolerance => {
  const { machine, metal, part } = input;
  const rule = input.toleranceRule ?? 'root-sum-square';
  const deviations = createDeviations(tooling, machine, metal);
  const all = askedOf(tooling, part, input);
  const names = plateNames(tooling.sheet.part);
  const limited = new Set<Asked>();
  const nearest = new Map<Asked, Prediction>();
  const placedBy = (plan: readonly Planned[], by: Deviations): Placed => plan.reduce<Placed>((placed, { option }) => by.place(placed, option), new Map());
  const spoken = (asked: Asked): string =>
    `${asked.dimension.id} (${describeDimension(asked.dimension, names, tooling.sheet.part)}, ${mm(asked.drawn)} ± ${asked.tolerance!.toFixed(2)})`;
  let quickest: (SearchResult & { kind: 'plan' }) | null = null;
  let result = search(task);
  for (;;) {
    if (result.kind !== 'plan') break;
    quickest ??= result;
    const placed = placedBy(result.plan, deviations);
    const missed = all.filter((a) => a.tolerance !== null && !limited.has(a) && verdictOf(a, deviations.predictDimension(a.dimension, placed), rule) !== 'holds');
    if (missed.length === 0) break;
    missed.forEach((a) => limited.add(a));
    result = search({ ...task, holding: holdingOf([...limited], deviations, rule, nearest) });
  }
  const standing = (layout: Layout): { readonly deviations: Deviations; readonly placed: Placed } => {
    const seats = seatsStanding(machine, layout);
    const there = seats ? createDeviations(tooling, machine, metal, seats) : deviations;
    return { deviations: there, placed: placedBy(layout.plan, there) };
  };
  const predicted = (layout: Layout): readonly PredictedDimension[] => {
    const { plan } = layout;
    const { deviations, placed } = standing(layout);
    const before = quickest && limited.size > 0 ? placedBy(quickest.plan, deviations) : null;
    return all.map((asked): PredictedDimension => {
      const prediction = deviations.predictDimension(asked.dimension, placed);
      const dearer = quickest && result.kind === 'plan' ? result.seconds - quickest.seconds : 0;
      return {
        id: asked.dimension.id, what: describeDimension(asked.dimension, names, tooling.sheet.part),
        value: asked.value, ...(isOff(asked) ? { drawn: asked.drawn } : {}), tolerance: asked.tolerance, askedBy: asked.askedBy, ...prediction, verdict: verdictOf(asked, prediction, rule),
        ...(before && limited.has(asked)
          ? { forced: forcedSentence(spoken(asked), quickest!.plan, plan, sizeBy(rule, deviations.predictDimension(asked.dimension, before)), sizeBy(rule, prediction), dearer, tooling.sheet.part) } : {}),
      };
    });
  };
  const refusal = quickest && result.kind === 'none' ? refusalOf([...limited], nearest, rule, spoken, machine, tooling.sheet.part) : null;
  const whereItStands = (layout: Layout): Reason | null => {
    if (!machine.seats) return null;
    const { deviations: there, placed } = standing(layout);
    const missed = new Map(all.map((a) => [a, there.predictDimension(a.dimension, placed)] as const).filter(([a, p]) => a.tolerance !== null && verdictOf(a, p, rule) !== 'holds'));
    return missed.size === 0 ? null : refusalOf([...missed.keys()], missed, rule, spoken, machine, tooling.sheet.part)?.reason ?? null;
  };
  return { result, whereItStands, reason: refusal?.reason ?? null, notKnown: refusal?.notKnown ?? false, predicted, deviations };
};

const holdingOf = (limited: readonly Asked[], deviations: Deviations, rule: ToleranceRule, nearest: Map<Asked, Prediction>): Holding => {
  const chain = new Set(limited.flatMap((a) => a.bends));
  const answers = new WeakMap<StrokeOption, Map<string, Placing | null>>();
  const isDone = (asked: Asked, placed: Placed): boolean => asked.bends.every((b) => placed.has(b));
  const after = (before: Placing, option: StrokeOption): Placing | null => {
    const placed = deviations.place(before.placed, option);
    for (const asked of limited) {
      if (isDone(asked, before.placed) || !isDone(asked, placed)) continue;
      const prediction = deviations.predictDimension(asked.dimension, placed);
      if (verdictOf(asked, prediction, rule) === 'holds') continue;
      const best = nearest.get(asked);
      if (!best || sizeBy(rule, prediction) < sizeBy(rule, best)) nearest.set(asked, prediction);
      return null;
    }
    return { placed, key: limited.every((a) => isDone(a, placed)) ? '' : deviations.key(placed) };
  };
  const start: Placing = { placed: new Map(), key: '' };
  return {
    start,
    options: ({ option, others }) => (option.setting.group.bends.some((b) => chain.has(b)) ? [option, ...others()] : [option]),
    after: (held, option) => {
      const before = held as Placing;
      if (before.placed.size > 0 && before.key === '') return before;
      const known = answers.get(option) ?? new Map<string, Placing | null>();
      answers.set(option, known);
      if (!known.has(before.key)) known.set(before.key, after(before, option));
      return known.get(before.key)!;
    },
  };
};

const stopWords = (option: StrokeOption, names: readonly string[]): string => {
  const { stop } = option;
  return stop.kind === 'none' ? 'a scribed line' : `${stop.kind === 'edge' ? 'the back edge' : 'the outer face'} of ${names[stop.plate]!}`;
};

const forcedSentence = (
  what: string, quickest: readonly Planned[], plan: readonly Planned[], before: number, now: number, dearer: number, part: Part,
): string => {
  const names = plateNames(part);
  const ids = (option: StrokeOption): string => option.setting.group.bends.map((b) => part.bends[b]!.id).join('+');
  const order = (of: readonly Planned[]): string => of.map(({ option }) => ids(option)).join(', ');
  const changed = plan.flatMap(({ option }) => {
    const old = quickest.find((p) => p.action.group === plan.find((q) => q.option === option)!.action.group)!;
    const [a, b] = [stopWords(old.option, names), stopWords(option, names)];
    return a === b ? [] : [`${ids(option)} stops at ${b} instead of ${a}`];
  });
  const choice = [...(order(quickest) === order(plan) ? [] : [`the order is ${order(plan)} instead of ${order(quickest)}`]), ...changed];
  return `Dimension ${what} decided this: the quickest plan would scatter by ${before.toFixed(2)} mm, this one by ${now.toFixed(2)} mm and takes ${dearer.toFixed(1)} s longer.${choice.length > 0 ? ` Here ${choice.join('; ')}.` : ''}`;
};

/** The dimension that comes furthest from its tolerance at its best, and the measurement that does most of it. */
const refusalOf = (
  limited: readonly Asked[], nearest: ReadonlyMap<Asked, Prediction>, rule: ToleranceRule, spoken: (asked: Asked) => string, machine: Machine, part: Part,
): { readonly reason: Reason; readonly notKnown: boolean } | null => {
  const over = (a: Asked): number => (nearest.has(a) ? offBy(a, rule, nearest.get(a)!) / a.tolerance! : 0);
  const asked = [...limited].filter((a) => nearest.has(a)).sort((a, b) => over(b) - over(a))[0];
  if (!asked) return null;
  const best = nearest.get(asked)!;
  const size = offBy(asked, rule, best);
  const main = mainCause(best.contributions);
  const notKnown = size <= asked.tolerance!;
  const miss = asked.value - asked.drawn;
  const formed = isOff(asked) ? `comes out at ${mm(asked.value)} as these tools form it, ${mm(Math.abs(miss))} ${miss < 0 ? 'under' : 'over'} the drawing, and ` : '';
  const bends = asked.bends.map((b) => part.bends[b]!.id);
  const sentence = notKnown
    ? `Dimension ${spoken(asked)} cannot be promised on ${machine.name}: ${best.notKnown.join(' and ')} bears on it and was not measured.`
    : `Dimension ${spoken(asked)} ${formed}scatters by ${mm(sizeBy(rule, best))} on ${machine.name} at the best stops and order tried (${rule}).${main ? ` The most of ${formed === '' ? 'it' : 'the scatter'}, ${mm(main.size)}, is ${main.cause.what}: ${main.cause.half.toFixed(2)} ${main.cause.unit}, ${main.cause.mark}.` : ''}`;
  return { notKnown, reason: { code: 'tolerance', bends, sentence, by: size - asked.tolerance!, ...(main ? { bodies: [main.cause.what] } : {}) } };
};

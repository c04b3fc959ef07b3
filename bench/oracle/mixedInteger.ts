import { cubesOfBad } from './cubes.js';
import type { Leg } from './leg.js';
import { Model } from './model.js';
import { type Problem, handSeconds } from './problem.js';
import { solver } from './solver.js';
import { WALK, changeOf } from './timeModel.js';

/** One stroke with one set of figures, and the folds (bits of groups) in which it has them. */
interface Variant {
  readonly leg: Leg;
  readonly folds: Set<number>;
}

const variantsOf = (problem: Problem): readonly Variant[] => {
  const strokes = problem.bits.length;
  const found = new Map<string, Variant>();
  for (let fold = 0; fold < 2 ** strokes; fold++) {
    const mask = problem.bits.reduce((sum, b, g) => ((fold & (1 << g)) !== 0 ? sum | b : sum), 0);
    for (const leg of problem.legs(mask)) {
      const { action, seconds, least, most, stop } = leg;
      const standing = problem.byHand.x + problem.byHand.r > 0 && stop ? `${stop.x.toFixed(3)} ${stop.r.toFixed(3)}` : stop ? 'stop' : 'none';
      const key = `${action.group} ${action.gaugeSide} ${action.pair} ${seconds.toFixed(6)} ${least.toFixed(4)} ${most.toFixed(4)} ${standing}`;
      const known = found.get(key) ?? { leg, folds: new Set() };
      known.folds.add(fold);
      found.set(key, known);
    }
  }
  return [...found.values()];
};

/** A station as the model may set it up. */
interface Stand {
  readonly pair: number;
  readonly takes: ReadonlySet<number>;
}

/**
 * The stations worth setting up for a pair: tools may always be as long as the tightest window of what is bent on them, so
 * one for each window's length is enough (two of one length are one), less those that take nothing that another does not.
 */
const standsOf = (pair: number, variants: readonly Variant[]): readonly Stand[] => {
  const mine = variants.flatMap(({ leg }, v) => (leg.pair === pair ? [{ leg, v }] : []));
  const all = [...new Set(mine.map(({ leg }) => leg.most))].map((long): Stand => ({
    pair, takes: new Set(mine.filter(({ leg }) => leg.least <= long && long <= leg.most).map(({ v }) => v)),
  }));
  const within = (a: Stand, b: Stand): boolean => [...a.takes].every((v) => b.takes.has(v));
  return all.filter((a, i) => !all.some((b, k) => k !== i && within(a, b) && (b.takes.size > a.takes.size || k < i)));
};

/** Things numbered as they come. */
const numbering = (): ((key: string) => number) => {
  const seen = new Map<string, number>();
  return (key) => {
    if (!seen.has(key)) seen.set(key, seen.size);
    return seen.get(key)!;
  };
};

/**
 * The same commitments as a mixed-integer model: which stroke with which figures at which place of the order and on which
 * station. What is made before each place follows from that; folds in which a stroke does not have its figures are cut off
 * by cubes. Costs between two places are flows between classes (how the sheet lies, hand-set stops).
 */
const modelOf = (problem: Problem, variants: readonly Variant[]): Model => {
  const model = new Model();
  const strokes = problem.bits.length;
  const places = Array.from({ length: strokes }, (_, p) => p);
  const pairs = [...new Set(variants.map((v) => v.leg.pair))];
  const stands = pairs.flatMap((pair) => standsOf(pair, variants));
  const taken = variants.flatMap((variant, v) =>
    stands.flatMap((stand, k) => (stand.takes.has(v) ? places.map((p) => ({ variant, v, k, p, name: model.binary(`x${v}_${k}_${p}`) })) : [])));
  const sum = (pick: (x: (typeof taken)[number]) => boolean, factor = 1): [number, string][] => taken.filter(pick).map((x) => [factor, x.name]);

  for (const x of taken) model.cost(x.variant.leg.seconds, x.name);
  for (const p of places) {
    model.row(sum((x) => x.p === p), '=', 1);
    for (const g of places) {
      if (p === 0) model.row(sum((x) => x.variant.leg.group === g), '=', 1);
      // m: group g is made before place p
      model.row([[1, `m${g}_${p}`], ...sum((x) => x.variant.leg.group === g && x.p < p, -1)], '=', 0);
    }
  }
  variants.forEach(({ leg, folds }, v) => {
    for (const { made, unmade } of cubesOfBad(strokes, leg.group, folds)) {
      const inCube = places.filter((g) => (made & (1 << g)) !== 0);
      for (const p of places) {
        const bound = inCube.length;
        model.row([
          ...sum((x) => x.v === v && x.p === p),
          ...inCube.map((g): [number, string] => [1, `m${g}_${p}`]),
          ...places.filter((g) => (unmade & (1 << g)) !== 0).map((g): [number, string] => [-1, `m${g}_${p}`]),
        ], '<=', bound);
      }
    }
  });
  stands.forEach(({ pair }, k) => {
    model.cost(problem.share, model.binary(`open${k}`));
    for (const g of places) model.row([...sum((x) => x.k === k && x.variant.leg.group === g), [-1, `open${k}`]], '<=', 0);
    stands.slice(0, k).forEach((other, j) => {
      if (other.pair !== pair && !problem.together(other.pair, pair)) model.row([[1, `open${k}`], [1, `open${j}`]], '<=', 1);
    });
  });

  /** Flows between the classes of neighbouring places, each with its price. */
  const between = (name: string, classOf: (x: (typeof taken)[number]) => number, price: (from: number, to: number) => number): void => {
    const classes = [...new Set(taken.map(classOf))];
    for (const p of places.slice(1)) {
      for (const c of classes) {
        model.row([...classes.map((d): [number, string] => [1, `${name}${c}_${d}_${p}`]), ...sum((x) => classOf(x) === c && x.p === p - 1, -1)], '=', 0);
        model.row([...classes.map((d): [number, string] => [1, `${name}${d}_${c}_${p}`]), ...sum((x) => classOf(x) === c && x.p === p, -1)], '=', 0);
        for (const d of classes) model.cost(price(c, d), `${name}${c}_${d}_${p}`);
      }
    }
  };
  // how the sheet lies and where it is bent change together: one flow for both is tighter than two
  const lie = numbering();
  const lies = new Map<number, { leg: Leg; k: number }>();
  const lieOf = ({ variant: { leg }, k }: (typeof taken)[number]): number => {
    const id = lie(`${leg.sideUp} ${leg.towards.toFixed(3)} ${k}`);
    lies.set(id, { leg, k });
    return id;
  };
  between('c', lieOf, (a, b) => (changeOf(lies.get(a)!.leg, lies.get(b)!.leg) + (lies.get(a)!.k === lies.get(b)!.k ? 0 : WALK)) * problem.handling);
  if (problem.byHand.x + problem.byHand.r > 0) {
    const stop = numbering();
    const stops = new Map<number, Leg>();
    const stopOf = ({ variant: { leg } }: (typeof taken)[number]): number => {
      const id = stop(leg.stop ? `${leg.stop.x.toFixed(3)} ${leg.stop.r.toFixed(3)}` : 'none');
      stops.set(id, leg);
      return id;
    };
    between('h', stopOf, (a, b) => handSeconds(problem, stops.get(a)!.stop, stops.get(b)!.stop));
  }
  return model;
};

export type MixedInteger = { readonly kind: 'best'; readonly seconds: number } | { readonly kind: 'none' } | { readonly kind: 'gave up'; readonly why: string };

/** The quickest order by a mixed-integer solver, to an absolute gap of a millionth of a second. `limit` in s. */
export const mixedInteger = async (problem: Problem, limit = 60): Promise<MixedInteger> => {
  const variants = variantsOf(problem);
  if (problem.bits.some((_, g) => !variants.some((v) => v.leg.group === g))) return { kind: 'none' };
  const { solve } = await solver();
  const answer = solve(modelOf(problem, variants).text(), { mip_rel_gap: 0, mip_abs_gap: 1e-6, time_limit: limit, output_flag: false });
  if (answer.Status === 'Optimal') return { kind: 'best', seconds: answer.ObjectiveValue };
  return answer.Status === 'Infeasible' ? { kind: 'none' } : { kind: 'gave up', why: answer.Status };
};

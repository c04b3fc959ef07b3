import { Model } from './model.js';
import type { RowProblem } from './rowProblem.js';
import { solver } from './solver.js';

/** More than any difference of places that matters. */
const FAR = 200;
/** Places of bends' origins count from so far left of the bed's left end: no variable of the model is negative. */
const SHIFT = 50;

/** The same question as a mixed-integer model: slots for stations, who stands on which, which slot is left of which. Places from the bed's left end. */
const modelOf = ({ parts, bed, lengths, most, apart }: RowProblem): Model => {
  const model = new Model();
  const half = bed.length / 2;
  const units = parts.flatMap((plans, p) => plans.flatMap(({ stations }, q) => stations.map((ways, u) => ({ p, q, u, ways }))));
  const slots = Array.from({ length: parts.reduce((sum, plans) => sum + Math.max(...plans.map(({ stations }) => stations.length)), 0) }, (_, j) => j);
  const kinds = Object.keys(lengths);
  const set = (j: number, kind?: string): [number, string][] => kinds.filter((k) => kind === undefined || k === kind).flatMap((k) => lengths[k]!.map((l): [number, string] => [1, `s${j}_${k}_${l}`]));
  const times = (terms: readonly (readonly [number, string])[], by: number): [number, string][] => terms.map(([f, v]) => [f * by, v]);
  const long = (j: number): [number, string][] => kinds.flatMap((k) => lengths[k]!.map((l): [number, string] => [l, `s${j}_${k}_${l}`]));
  /** 1 where slot i is left of slot j; as terms and a constant. */
  const left = (i: number, j: number): { readonly terms: [number, string][]; readonly one: number } => (i < j ? { terms: [[1, `p${i}_${j}`]], one: 0 } : { terms: [[-1, `p${j}_${i}`]], one: 1 });

  model.cost(1, 'last');
  model.cost(-1, 'first');
  for (const [p, plans] of parts.entries()) model.row(plans.map((_, q): [number, string] => [1, model.binary(`z${p}_${q}`)]), '=', 1);
  for (const kind of kinds) model.row(slots.flatMap((j) => lengths[kind]!.map((l): [number, string] => [l, `s${j}_${kind}_${l}`])), '<=', most[kind]!);
  for (const j of slots) {
    for (const [, name] of set(j)) model.binary(name);
    model.row(set(j), '<=', 1);
    model.row([[1, `x${j}`], ...long(j)], '<=', bed.length);
    model.row([[1, 'last'], [-1, `x${j}`], ...times(long(j), -1), ...times(set(j), -FAR)], '>=', -FAR);
    model.row([[1, 'first'], [-1, `x${j}`], ...times(set(j), FAR)], '<=', FAR);
    model.binary(`l${j}`);
    model.binary(`r${j}`);
    for (const i of slots) {
      if (i === j) continue;
      if (i < j) model.binary(`p${i}_${j}`);
      const so = left(i, j);
      // x_i + L_i + between <= x_j where both stand and i is left of j
      model.row([[1, `x${i}`], ...long(i), [-1, `x${j}`], ...times(so.terms, FAR), ...times(set(i), FAR), ...times(set(j), FAR)], '<=', 3 * FAR - bed.between - FAR * so.one);
      // the leftmost is left of all that stand, the rightmost right of them
      const ahead = left(j, i);
      model.row([[1, `l${j}`], ...set(i), ...times(ahead.terms, -1)], '<=', 1 + ahead.one);
      model.row([[1, `r${j}`], ...set(i), ...times(so.terms, -1)], '<=', 1 + so.one);
      if (i < j && apart) for (const a of apart) for (const b of apart) if (a !== b) model.row([...set(i, a), ...set(j, b)], '<=', 1);
    }
  }
  for (const { p, q, u, ways } of units) {
    const at = ways.flatMap((way, w) => slots.map((j) => ({ way, w, j, name: model.binary(`a${p}_${q}_${u}_${w}_${j}`) })));
    model.row([...at.map(({ name }): [number, string] => [1, name]), [-1, `z${p}_${q}`]], '=', 0);
    for (const { way, w, j, name } of at) {
      model.row([[1, name], ...times(set(j, way.kind), -1)], '<=', 0);
      if (way.endOnly) model.row([[1, name], [-1, `l${j}`], [-1, `r${j}`]], '<=', 0);
      way.uses.forEach(({ need, window, metal, place }, k) => {
        // o counts from SHIFT left of the bed's left end
        const o = `o${p}_${q}_${u}_${w}_${k}`;
        const only = (terms: [number, string][], sense: '<=' | '>=', bound: number, more: [number, string][] = [], count = 1): void => {
          if (!Number.isFinite(bound)) return;
          const sign = sense === '<=' ? 1 : -1;
          model.row([...terms, ...times([[1, name], ...more], sign * FAR)], sense, bound + sign * FAR * count);
        };
        only([[1, o], [-1, `x${j}`]], '>=', SHIFT - need[0]);
        only([[1, o], [-1, `x${j}`]], '<=', SHIFT - window[0]);
        only([[1, o], [-1, `x${j}`], ...times(long(j), -1)], '<=', SHIFT - need[1]);
        only([[1, o], [-1, `x${j}`], ...times(long(j), -1)], '>=', SHIFT - window[1]);
        only([[1, o]], '>=', SHIFT + half + place[0]);
        only([[1, o]], '<=', SHIFT + half + place[1]);
        for (const i of slots) {
          if (i === j) continue;
          const [before, after] = [left(i, j), left(j, i)];
          only([[1, o], [-1, `x${i}`], ...times(long(i), -1)], '>=', SHIFT + bed.beside - metal[0], [...before.terms, ...set(i)], 3 - before.one);
          only([[1, o], [-1, `x${i}`]], '<=', SHIFT - bed.beside - metal[1], [...after.terms, ...set(i)], 3 - after.one);
        }
      });
    }
  }
  return model;
};

/** The least length of the row by a mixed-integer solver; null where nothing stands. */
export const mixedIntegerRow = async (problem: RowProblem): Promise<number | null> => {
  const answer = (await solver()).solve(modelOf(problem).text(), { mip_rel_gap: 0, mip_abs_gap: 1e-6, output_flag: false });
  if (answer.Status === 'Optimal') return answer.ObjectiveValue;
  if (answer.Status === 'Infeasible') return null;
  throw new Error(`the solver says ${answer.Status}`);
};

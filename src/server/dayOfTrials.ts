import { type DayPlan, type OneLayout, type OneLayoutAnswer, dayPlan } from '../fit/index.js';
import type { Rack, Tool } from '../shop/index.js';
import type { Store, StoredTrial } from '../store/index.js';
import type { Trial, TrialInput } from '../trial/index.js';
import { hashOf } from './hashOf.js';
import { found, HttpError } from './httpError.js';
import type { PaperDesk } from './paperDesk.js';
import { livePart } from './routes/livePart.js';
import type { Shop, ShopKeeper } from './shopKeeper.js';
import { bewareToday } from './today.js';

export interface DayQuestion {
  readonly trialIds: readonly string[];
  readonly pieces: number;
  readonly spares: number;
  readonly layout?: 'one' | undefined;
  /** mm of bed that the layout may take. */
  readonly bed?: number | undefined;
}

export interface PlannedDay {
  readonly plan: DayPlan;
  /** In the order that the plan's places speak of, and the stored trials that they come of. */
  readonly trials: readonly Trial[];
  readonly of: readonly StoredTrial[];
}

interface DayContext {
  readonly store: Store;
  readonly shop: Pick<ShopKeeper, 'current'>;
  readonly layouts: Pick<PaperDesk, 'make'>;
}

/** The tools that a day is laid out from, and why no layout can be planned with them, a sentence; null where one can. */
interface Tools {
  readonly rack: Rack;
  readonly noLayout: string | null;
}

const unique = <T extends Tool>(tools: readonly T[]): readonly T[] => [...new Map(tools.map((tool) => [tool.id, tool])).values()];

/** The rack that the trials were planned with, as it is now. */
const toolsOf = (stored: readonly StoredTrial[], { racks, rack: first }: Shop): Tools => {
  // trials from before racks were kept were planned with the first
  const rackIdOf = ({ rackId, whose }: StoredTrial): string | null => rackId ?? (whose === null || whose === 'ours' ? first.id : null);
  const [one] = stored;
  if (one === undefined) return { rack: first, noLayout: null };
  const id = rackIdOf(one);
  const other = stored.find((trial) => rackIdOf(trial) !== id);
  const named = (rackId: string | null): string => (rackId === null ? 'the buyer\'s tools' : `the rack '${rackId}'`);
  if (other) throw new HttpError(422, `A day is laid out from one rack: ${one.partName} was planned with ${named(id)}, ${other.partName} with ${named(rackIdOf(other))}.`);
  if (id === null) {
    // what the buyer brings is at hand as the trials know it
    const brought = { ...first, punches: unique(stored.flatMap(({ trial }) => trial.punches)), dies: unique(stored.flatMap(({ trial }) => trial.dies)) };
    return { rack: brought, noLayout: `${one.partName} was planned with the buyer's tools, of which only those used are kept: no layout can be planned with them.` };
  }
  const rack = racks.find((it) => it.id === id);
  return rack ? { rack, noLayout: null } : { rack: { ...first, punches: [], dies: [] }, noLayout: `The rack '${id}' with which ${one.partName} was planned is taken off: no layout can be planned with it.` };
};

/** The parts of these trials planned again, each as its trial was asked, onto one layout of their machine; of the same question one answer is kept. */
const onOneLayout = async (stored: readonly StoredTrial[], { rack, noLayout }: Tools, { pieces, bed }: DayQuestion, { store, shop, layouts }: DayContext): Promise<OneLayout> => {
  if (noLayout !== null) throw new HttpError(422, noLayout);
  const { deductions, metals } = await shop.current();
  const { machine } = stored[0]!.trial;
  const inputs: TrialInput[] = [];
  for (const { partId, partRevision, metalId, asked } of stored) {
    const { part } = await livePart(store, partId, partRevision);
    const metal = found(metals.find(({ id }) => id === metalId), `There is no metal '${metalId}'.`);
    inputs.push({
      part, machine, rack, metal, quantity: pieces, ...(deductions.length > 0 && asked?.measured !== 'left out' ? { deductions } : {}),
      ...(asked?.toleranceClass ? { toleranceClass: asked.toleranceClass } : {}), ...(asked?.scribedLine === 'refused' ? { limits: { scribedLine: 'refused' } } : {}),
    });
  }
  const task = { kind: 'one layout', inputs, ...(bed === undefined ? {} : { bed }) } as const;
  const answer = JSON.parse((await layouts.make(hashOf(task), task)) as string) as OneLayoutAnswer;
  if (!answer.ok) throw new HttpError(422, answer.sentence);
  return answer.value;
};

/** The day of these trials on their one machine, each with its own stations or all on one layout; an HttpError where there is none. */
export const dayOfTrials = async (question: DayQuestion, context: DayContext): Promise<PlannedDay> => {
  const { trialIds: ids, pieces, spares, layout } = question;
  const stored: StoredTrial[] = [];
  for (const id of ids) stored.push(found(await context.store.trial(id), `There is no trial '${id}'.`));
  const shop = await context.shop.current();
  const tools = toolsOf(stored, shop);
  const [first] = stored;
  const beware = first ? bewareToday(first, shop) : [];
  const { rack } = tools;
  const apart = dayPlan({ trials: stored.map(({ trial }) => trial), rack, pieces, spares, beware });
  if (!apart.ok) throw new HttpError(422, apart.sentence);
  if (layout === undefined) return { plan: apart.value, trials: stored.map(({ trial }) => trial), of: stored };
  // what is not made stands on no layout; it is told after the others
  const [made, left] = [stored.filter(({ trial }) => trial.verdict === 'makes'), stored.filter(({ trial }) => trial.verdict !== 'makes')];
  const shared = await onOneLayout(made, tools, question, context);
  const on = made.filter((_, i) => shared.without.every(({ input }) => input !== i));
  const trials = [...shared.trials, ...shared.without.map(({ trial }) => trial), ...left.map(({ trial }) => trial)];
  const planned = dayPlan({ trials, rack, pieces, spares, beware, layout: shared });
  if (!planned.ok) throw new HttpError(422, planned.sentence);
  return { plan: planned.value, trials, of: [...on, ...shared.without.map(({ input }) => made[input]!), ...left] };
};

import { withOptions } from '../shop/index.js';
import { listed } from '../trial/index.js';
import type { FitCell } from './fitCell.js';
import type { FitColumn } from './fitColumn.js';

/** What one option of one machine is worth to these parts. */
export interface OptionWorth {
  /** Id of the column that it belongs to. */
  readonly machine: string;
  readonly id: string;
  readonly name: string;
  readonly price: number;
  readonly currency: string;
  /** Names of the parts that are made with it and not without. */
  readonly makes: readonly string[];
  /** Minutes saved over one batch of every part that is made either way. */
  readonly minutesPerBatch: number;
  /** The dimension that gains most: plus and minus mm over the batch, without and with it; null where none gains. */
  readonly tolerance: { readonly part: string; readonly dimension: string; readonly without: number; readonly with: number } | null;
  /** Parts that were not decided without it or with it: of these it says nothing. */
  readonly notDecided: readonly string[];
  /** Nothing for these parts. */
  readonly nothing: boolean;
  /** All of it in a sentence. */
  readonly sentence: string;
}

/** A column with one option fitted. */
export interface OptionColumn extends FitColumn {
  /** Index of the column that it belongs to, and which option it is. */
  readonly of: number;
  readonly option: string;
}

/** For each option of our machines that changes what a machine's data say, the column as it stands with that option fitted. */
export const optionColumns = (columns: readonly FitColumn[]): readonly OptionColumn[] =>
  columns.flatMap((column, of) => (column.whose !== 'ours' ? [] : column.machine.options.filter(({ effect }) => effect).map((option): OptionColumn => ({
    ...column, of, option: option.id, id: `${column.id}/${option.id}`,
    machine: { ...withOptions(column.machine, [option.id]), name: `${column.machine.name}, with ${option.name}` },
  }))));

/** Less is lost in the model. Minutes, and mm. */
const LEAST_MINUTES = 0.1;
const LEAST_GAIN = 0.005;

const worthOf = (
  column: FitColumn, optionId: string, parts: readonly string[], without: readonly FitCell[], fitted: readonly FitCell[] | null, quantity: number,
): OptionWorth => {
  const option = column.machine.options.find((o) => o.id === optionId)!;
  const base = { machine: column.id, id: `${column.machine.id}/${option.id}`, name: option.name, price: option.price, currency: column.machine.currency };
  if (fitted === null) {
    return {
      ...base, makes: [], minutesPerBatch: 0, tolerance: null, notDecided: [], nothing: true,
      sentence: `${option.name}: nothing for these parts that the planner counts; it changes no figure of the machine's data.`,
    };
  }
  const both = parts.flatMap((name, p) => (without[p]!.verdict === 'makes' && fitted[p]!.verdict === 'makes' ? [{ name, a: without[p]!, b: fitted[p]! }] : []));
  const makes = parts.filter((_, p) => fitted[p]!.verdict === 'makes' && (without[p]!.verdict === 'does not make' || without[p]!.verdict === 'makes with remedy'));
  const open = ({ verdict }: FitCell): boolean => verdict === 'not decided' || verdict === 'not tried';
  const notDecided = parts.filter((_, p) => open(without[p]!) || (open(fitted[p]!) && without[p]!.verdict !== 'makes'));
  // an option may stay unused, so a slower plan with it costs nothing
  const saved = both.reduce((sum, { a, b }) => sum + Math.max(0, a.seconds! - b.seconds!) * quantity / 60, 0);
  const minutesPerBatch = saved < LEAST_MINUTES ? 0 : saved;
  const gains = both.flatMap(({ name, a, b }) => a.spreads.flatMap((from) => {
    const to = b.spreads.find((d) => d.name === from.name);
    return to && from.value - to.value > LEAST_GAIN ? [{ part: name, dimension: from.name, without: from.value, with: to.value }] : [];
  }));
  const tolerance = gains.sort((a, b) => (b.without - b.with) - (a.without - a.with))[0] ?? null;
  const says = [
    ...(makes.length > 0 ? [`it makes ${listed(makes)} possible`] : []),
    ...(minutesPerBatch > 0 ? [`it saves ${minutesPerBatch.toFixed(1)} min over a batch of ${quantity} of each part (predicted)`] : []),
    ...(tolerance ? [`${tolerance.part}, ${tolerance.dimension}: plus and minus ${tolerance.with.toFixed(2)} mm in place of ${tolerance.without.toFixed(2)} mm over the batch`] : []),
  ];
  const nothing = says.length === 0;
  const said = notDecided.length > 0 ? ` Not decided: ${listed(notDecided)}.` : '';
  return { ...base, makes, minutesPerBatch, tolerance, notDecided, nothing, sentence: `${option.name}: ${nothing ? 'nothing for these parts' : says.join('; ')}.${said}` };
};

/**
 * What every option of our machines buys for these parts: made possible, minutes saved, tolerance gained, or nothing. `fitted` holds a row
 * for each part with a cell for each of `optionColumns(columns)`.
 */
export const optionWorths = (
  parts: readonly string[], columns: readonly FitColumn[], cells: readonly (readonly FitCell[])[], fitted: readonly (readonly FitCell[])[], quantity: number,
): readonly OptionWorth[] => {
  const extra = optionColumns(columns);
  return columns.flatMap((column, c) => (column.whose !== 'ours' ? [] : column.machine.options.map((option) => {
    const k = extra.findIndex((e) => e.of === c && e.option === option.id);
    return worthOf(column, option.id, parts, cells.map((row) => row[c]!), k < 0 ? null : fitted.map((row) => row[k]!), quantity);
  })));
};

import type { InTwo, TrialInput, Wishes } from '../trial/index.js';
import { Fault } from './fault.js';
import { positive, wholeNumber } from './numbers.js';

interface WishOptions {
  readonly keep?: string;
  readonly lock?: readonly string[];
  readonly forbid?: readonly string[];
}

/** An option given several times. */
export const gathered = (value: string, before: readonly string[] | undefined): readonly string[] => [...(before ?? []), value];

const lockOf = (text: string): NonNullable<Wishes['lock']>[number] => {
  const [step = '', bend = ''] = text.split('=');
  if (bend === '') throw new Fault(`--lock ${text}: give a step and a bend, as 1=b3.`);
  return { step: wholeNumber('--lock', step, 1, 1000), bend };
};

const forbidOf = (text: string): NonNullable<Wishes['forbid']>[number] => {
  const [bend = '', what = '', ...rest] = text.trim().split(/\s+/);
  const value = rest.join(' ');
  if (what === 'plate' && value !== '') return { bend, plateToGauge: wholeNumber('--forbid', value, 0, 10_000) };
  if (what === 'punch' && value !== '') return { bend, punch: value };
  throw new Fault(`--forbid ${text}: say "b1 plate 2" or "b1 punch ID".`);
};

/** A bend in two passes, as b2=45 or b2. */
export const inTwoOf = (text: string): InTwo => {
  const [bend = '', first] = text.split('=');
  if (bend === '' || first === '') throw new Fault(`--in-two ${text}: give a bend and degrees of bend angle, as b2=45, or the bend alone.`);
  return { bend, ...(first === undefined ? {} : { first: positive('--in-two', first) }) };
};

/** What the command line asks of the order, as the planner takes it. */
export const wishesOf = ({ keep, lock, forbid }: WishOptions): Pick<TrialInput, 'wishes'> => {
  if (keep === undefined && lock === undefined && forbid === undefined) return {};
  return {
    wishes: {
      ...(keep === undefined ? {} : { keepOrder: keep.split(',').map((b) => b.trim()) }),
      ...(lock === undefined ? {} : { lock: lock.map(lockOf) }),
      ...(forbid === undefined ? {} : { forbid: forbid.map(forbidOf) }),
    },
  };
};

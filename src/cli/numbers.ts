import { Fault } from './fault.js';

/** A whole number typed for an option, within its limits. */
export const wholeNumber = (option: string, typed: string, least: number, most: number): number => {
  const value = Number(typed);
  if (!/^\d+$/.test(typed) || value < least || value > most) {
    throw new Fault(`${option} ${typed}: a whole number from ${least} to ${most} is wanted.`);
  }
  return value;
};

/** A number above zero typed for an option. */
export const positive = (option: string, typed: string): number => {
  const value = Number(typed);
  if (typed.trim() === '' || !Number.isFinite(value) || value <= 0) throw new Fault(`${option} ${typed}: a number above 0 is wanted.`);
  return value;
};

/** A number within its limits typed for an option, in a unit that is not typed with it. */
export const measure = (option: string, typed: string, least: number, most: number, unit: string): number => {
  const value = Number(typed);
  if (typed.trim() === '' || !(value >= least && value <= most)) throw new Fault(`${option} ${typed}: a number of ${unit} from ${least} to ${most} is wanted, with a decimal point and without its unit.`);
  return value;
};

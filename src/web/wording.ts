export const MINUS = '\u2212';

/** A figure with a proper minus and fixed decimals. */
export const figure = (value: number, decimals: number): string => {
  const shown = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(shown) !== 0 ? MINUS + shown : shown;
};
export const mm = (value: number, decimals = 2): string => `${figure(value, decimals)} mm`;
export const degrees = (value: number): string => `${figure(value, 1)}°`;
export const kilonewtons = (newtons: number): string => `${figure(newtons / 1000, newtons < 100_000 ? 1 : 0)} kN`;
/** A margin's figure with its unit: forces in kN, little lengths to the hundredth. */
export const amountOf = (value: number, unit: string): string => (unit === 'N' ? kilonewtons(value) : `${figure(value, Math.abs(value) < 10 ? 2 : 1)} ${unit}`);
export const seconds = (s: number): string =>
  s < 100 ? `${figure(s, s < 10 ? 1 : 0)} s` : `${Math.floor(Math.round(s) / 60)} min ${Math.round(s) % 60} s`;

/** The day of an ISO time, as it is written on a drawing. */
export const day = (iso: string): string => iso.slice(0, 10);

/** Words as a sentence: a capital in front and one full stop. */
export const asSentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1).replace(/[.\s]+$/, '')}.`;


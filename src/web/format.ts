/** Millimetres with one decimal, a true minus sign. */
export const mm = (value: number, digits = 1): string => value.toFixed(digits).replace(/^-/, '\u2212').replace(/^\u2212(0(\.0+)?)$/, '$1');

/** Millimetres without needless zeros, at most two decimals. */
export const mmShort = (value: number): string => mm(Math.round(value * 100) / 100, 2).replace(/\.?0+$/, '');

export const degrees = (value: number): string => `${mm(value, 1)}°`;

export const kilonewtons = (newtons: number): string => `${(newtons / 1000).toFixed(1)} kN`;

/** Seconds, from 100 s on minutes and seconds. */
export const duration = (seconds: number): string => {
  if (seconds < 100) return `${seconds < 10 ? seconds.toFixed(1) : seconds.toFixed(0)} s`;
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)} min ${whole % 60} s`;
};

/** Date and time on the reader's own clock, year first. */
export const when = (iso: string): string => {
  const date = new Date(iso);
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())} ${two(date.getHours())}:${two(date.getMinutes())}`;
};

/** "1 bend", "3 bends". */
export const count = (n: number, word: string, many = `${word}s`): string => `${n} ${n === 1 ? word : many}`;

/** Words as a sentence: a capital first, one full stop last. */
export const sentence = (words: string): string => {
  const trimmed = words.trim().replace(/[.\s]+$/, '');
  return trimmed === '' ? '' : `${trimmed.charAt(0).toUpperCase()}${trimmed.slice(1)}.`;
};

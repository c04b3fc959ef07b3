/** How lengths are shown; everything is stored in mm. */
export type Units = 'mm' | 'in';

const MM_PER_INCH = 25.4;

const MINUS = '−';
const fixed = (value: number, decimals: number): string => {
  const shown = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(shown) !== 0 ? MINUS + shown : shown;
};

/** A length to set or measure, without its unit: hundredths of a mm or thousandths of an inch. */
export const lengthFigure = (mm: number, units: Units): string =>
  units === 'mm' ? fixed(mm, 2) : fixed(mm / MM_PER_INCH, 3);

/** The same to a ten-thousandth of an inch: depths and ram positions. */
export const fineFigure = (mm: number, units: Units): string =>
  units === 'mm' ? fixed(mm, 2) : fixed(mm / MM_PER_INCH, 4);

/** A length that only says where or how long something is: tenths of a mm at most, as few decimals as it takes. */
export const roundFigure = (mm: number, units: Units): string => {
  const value = units === 'mm' ? mm : mm / MM_PER_INCH;
  const shown = String(Number(Math.abs(value).toFixed(units === 'mm' ? 1 : 2)));
  return value < 0 && shown !== '0' ? MINUS + shown : shown;
};

export const lengthText = (mm: number, units: Units): string => `${lengthFigure(mm, units)} ${units}`;
export const fineText = (mm: number, units: Units): string => `${fineFigure(mm, units)} ${units}`;
export const roundText = (mm: number, units: Units): string => `${roundFigure(mm, units)} ${units}`;

/** Degrees with one decimal. */
export const angleFigure = (degrees: number): string => `${fixed(degrees, 1)}°`;

/** kN with as many decimals as matter; tons (short, US) beside it where inches are shown. */
export const forceText = (newtons: number, units: Units): string => {
  const kn = newtons / 1000;
  const metric = `${fixed(kn, Math.abs(kn) < 100 ? 1 : 0)} kN`;
  return units === 'mm' ? metric : `${metric} (${fixed(newtons / 8896.44, 1)} US ton)`;
};

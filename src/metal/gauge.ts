import type { GaugeSystem, Source } from './metal.js';

/** A gauge number as a thickness. */
export interface GaugeThickness extends Source {
  readonly system: GaugeSystem;
  readonly gauge: number;
  /** mm */
  readonly thickness: number;
}

const INCH = 25.4;

/** Statutory weights of the US Standard gauge, ounces per square foot, for gauges 3 to 30 (15 U.S.C. 206). */
const OUNCES: readonly number[] = [
  160, 150, 140, 130, 120, 110, 100, 90, 80, 70, 60, 50, 45, 40, 36, 32, 28, 24, 22, 20, 18, 16, 14, 12, 11, 10, 9, 8,
];
const FIRST = 3;
const LAST = 30;
/** Galvanised sheet is numbered by its coated weight; its table begins at 8. */
const FIRST_GALVANISED = 8;
/** Pounds per square foot and inch of thickness by which the makers' table turns weight into thickness. */
const POUNDS_PER_INCH = 41.82;
/** Ounces of zinc per square foot that the galvanised table adds. */
const ZINC_OUNCES = 2.5;
/** Ounces per square foot and inch of the wrought iron for which the statute gives its approximate thicknesses. */
const STATUTE_OUNCES_PER_INCH = 640;

const sources: Readonly<Record<GaugeSystem, Source>> = {
  'manufacturers standard': {
    mark: 'textbook',
    source: "Manufacturers' Standard Gauge for steel sheet: weight of 15 U.S.C. 206 over 41.82 lb per square foot and inch",
  },
  galvanised: { mark: 'textbook', source: 'galvanised sheet gauge: that weight plus 2.5 oz per square foot over 41.82' },
  'us standard': { mark: 'standard', source: '15 U.S.C. 206 (the custom for stainless sheet; ASTM A480 discourages gauge numbers)' },
  'brown and sharpe': { mark: 'textbook', source: 'Brown and Sharpe gauge (AWG): 0.005 in x 92^((36 - n)/39)' },
};

/**
 * Thickness of a gauge number in a system, or null where the system's table does not reach. The same number means
 * different thicknesses in different systems: always say which.
 *
 * @example gaugeThickness('manufacturers standard', 16)?.thickness // 1.518 mm
 */
export const gaugeThickness = (system: GaugeSystem, gauge: number): GaugeThickness | null => {
  const least = system === 'galvanised' ? FIRST_GALVANISED : FIRST;
  if (!Number.isInteger(gauge) || gauge < least || gauge > LAST) return null;
  return { system, gauge, thickness: inches(system, gauge) * INCH, ...sources[system] };
};

const inches = (system: GaugeSystem, gauge: number): number => {
  const ounces = OUNCES[gauge - FIRST]!;
  switch (system) {
    case 'manufacturers standard':
      return ounces / 16 / POUNDS_PER_INCH;
    case 'galvanised':
      return (ounces + ZINC_OUNCES) / 16 / POUNDS_PER_INCH;
    case 'us standard':
      return ounces / STATUTE_OUNCES_PER_INCH;
    case 'brown and sharpe':
      return 0.005 * 92 ** ((36 - gauge) / 39);
  }
};

/** All gauges of a system, thickest first. */
export const gaugesOf = (system: GaugeSystem): readonly GaugeThickness[] =>
  Array.from({ length: LAST - FIRST + 1 }, (_, i) => gaugeThickness(system, i + FIRST)).filter((g) => g !== null);

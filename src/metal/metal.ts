/**
 * How well a figure is founded. 'standard' a standard's own figure; 'textbook' a published book or paper;
 * 'common practice' the trade's habit with no source; 'memory' recalled, not looked up, so it may only warn;
 * 'measured' the shop's own test.
 */
export type Mark = 'standard' | 'textbook' | 'common practice' | 'memory' | 'measured';

/** Where a figure comes from. */
export interface Source {
  readonly mark: Mark;
  readonly source: string;
}

/**
 * True stress (MPa) against equivalent plastic strain (logarithmic), monotonic tension.
 * swift K (e0 + e)^n; hollomon K e^n of the total strain; points [plastic strain, stress], first at strain 0.
 */
export type HardeningCurve =
  | { readonly kind: 'swift'; readonly k: number; readonly n: number; readonly e0: number }
  | { readonly kind: 'hollomon'; readonly k: number; readonly n: number }
  | { readonly kind: 'points'; readonly points: readonly (readonly [number, number])[] };

/**
 * A property of the stock as it is bought, MPa: what to reckon with, and the least and greatest to expect. `bound`
 * says which ends the standard itself sets; the other ends are our reckoning, for ranges only.
 */
export interface Band extends Source {
  readonly min: number;
  readonly max: number;
  readonly typical: number;
  readonly bound: 'both' | 'min' | 'max' | 'none';
}

/** How the bend line lies to the rolling direction. 'across' bends best. */
export type Grain = 'across' | 'along';

/** Smallest inside radius of a 90 degree bend. Factors are times the thickness. */
export type MinRadius = Source &
  (
    | { readonly kind: 'steel table' }
    | { readonly kind: 'factor'; readonly across: number; readonly along: number }
    /** [thickness up to mm, factor across], ascending; between two rows the thicker one counts. */
    | { readonly kind: 'rows'; readonly rows: readonly (readonly [number, number])[]; readonly alongFactor: number }
  );

export type Family =
  | 'mild steel'
  | 'high-strength steel'
  | 'galvanised steel'
  | 'stainless steel'
  | 'aluminium'
  | 'copper'
  | 'brass'
  | 'wear plate';

export type GaugeSystem = 'manufacturers standard' | 'galvanised' | 'us standard' | 'brown and sharpe';

/** Which table of thickness tolerances the stock is bought to, as a first guess. */
export type ThicknessStandard = 'EN 10131' | 'EN 10051' | 'EN 10029' | 'EN 10259' | 'none';

/** A sheet metal in one temper, as data. */
export interface Metal {
  readonly id: string;
  readonly name: string;
  readonly family: Family;
  /** Temper or delivery condition, '' where there is one only. */
  readonly temper: string;
  /** Young's modulus, MPa. */
  readonly modulus: number;
  readonly poisson: number;
  readonly elasticSource: Source;
  readonly curve: HardeningCurve;
  readonly curveSource: Source;
  readonly tensile: Band;
  readonly yield: Band;
  /** kg/m3 */
  readonly density: number;
  readonly minRadius: MinRadius;
  readonly gauge: GaugeSystem;
  readonly thicknessStandard: ThicknessStandard;
  /** mm, the range in which this sheet is usually sold. */
  readonly thickness: readonly [number, number];
  /** Invented for demonstration. */
  readonly demo: boolean;
}

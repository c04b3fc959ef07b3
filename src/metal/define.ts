import { swiftFromTensile } from './curve.js';
import type { Band, Family, GaugeSystem, HardeningCurve, Mark, Metal, MinRadius, Source, ThicknessStandard } from './metal.js';

const memory = (source: string): Source => ({ mark: 'memory', source });

const textbookElastic: Source = memory('textbook figures for the modulus and Poisson number');

/** [least, greatest, reckoned with], which ends the standard sets, mark, source. */
type BandRow = readonly [number, number, number, Band['bound'], Mark, string];

export interface MetalRow {
  readonly id: string;
  readonly name: string;
  readonly temper?: string;
  readonly yield: BandRow;
  readonly tensile: BandRow;
  /** Uniform plastic strain, logarithmic. */
  readonly uniform: number;
  readonly minRadius: MinRadius;
  readonly thicknessStandard?: ThicknessStandard;
  readonly thickness: readonly [number, number];
}

export interface FamilyRow {
  readonly family: Family;
  readonly modulus: number;
  readonly poisson: number;
  readonly density: number;
  readonly gauge: GaugeSystem;
}

const band = ([min, max, typical, bound, mark, source]: BandRow): Band => ({ min, max, typical, bound, mark, source });

/** Metals of one family from rows: the hardening curve is Swift's through the typical figures of the row. */
export const defineMetals = (family: FamilyRow, rows: readonly MetalRow[]): readonly Metal[] =>
  rows.map((row) => {
    const curve: HardeningCurve | null = swiftFromTensile(row.yield[2], row.tensile[2], row.uniform);
    if (curve === null) throw new Error(`no Swift law passes through the figures of ${row.id}`);
    return {
      id: row.id,
      name: row.name,
      family: family.family,
      temper: row.temper ?? '',
      modulus: family.modulus,
      poisson: family.poisson,
      elasticSource: textbookElastic,
      curve,
      curveSource: memory('Swift law through the typical yield, strength and uniform strain given here, none of them measured'),
      tensile: band(row.tensile),
      yield: band(row.yield),
      density: family.density,
      minRadius: row.minRadius,
      gauge: family.gauge,
      thicknessStandard: row.thicknessStandard ?? 'none',
      thickness: row.thickness,
      demo: false,
    };
  });

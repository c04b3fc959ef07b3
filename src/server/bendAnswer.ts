import { airBendCurve, type AirBendSetup, closedForms, deductionFor, explainV, type MeasuredDeduction, reliefHole, stockRange, testStripFor } from '../forming/index.js';
import type { Metal } from '../metal/index.js';
import { bendsInV, type Rack } from '../shop/index.js';

/** One bend as it is asked about at the counter. Lengths in mm. */
export interface BendQuestion {
  readonly metal: Metal;
  readonly rack: Rack;
  readonly deductions: readonly MeasuredDeduction[];
  readonly thickness: number;
  readonly length: number;
  /** Degrees, released. */
  readonly bendAngle: number;
  readonly insideRadius?: number;
  readonly flange?: number;
  readonly punchId?: string;
  readonly dieId?: string;
}

/** V over thickness outside which no die is worth working out. Common practice, no source. */
const V_RANGE = [4, 16] as const;

/** mm: the usual sheet's width, for its thickness tolerance. */
const SHEET_WIDTH = 1250;

/** The rack's pairs ranked, one of them (the best, or the one named) worked out with its curve; `chosen` null where the rack holds no such pair. */
export const bendAnswer = ({ metal, rack, deductions, length, punchId, dieId, ...asked }: BendQuestion) => {
  const dies = rack.dies.filter((d) => d.shape === 'V' && d.v >= V_RANGE[0] * asked.thickness && d.v <= V_RANGE[1] * asked.thickness);
  const punches = rack.punches.filter(bendsInV);
  const { ranked, words } = explainV({ metal, ...asked }, dies, punches);
  const chosen = ranked.find((c) => (punchId === undefined || c.punch === punchId) && (dieId === undefined || c.die === dieId));
  const die = dies.find((d) => d.id === chosen?.die);
  const punch = punches.find((p) => p.id === chosen?.punch);
  if (!chosen || !die || !punch) return { ranked, words, chosen: null };
  const setup: AirBendSetup = {
    metal, thickness: asked.thickness, v: die.v, vConvention: die.vConvention, dieAngle: die.includedAngle,
    shoulderRadius: die.shoulderRadius, tipRadius: punch.tipRadius,
  };
  const { bend } = chosen;
  const curve = airBendCurve(setup);
  const wanted = { ...setup, bendAngle: asked.bendAngle };
  const range = bend === null ? null : stockRange(wanted, SHEET_WIDTH, 'depth from touch');
  const strip = bend === null ? null : testStripFor(wanted);
  return {
    ranked, words,
    chosen: {
      choice: chosen, punchName: punch.name, dieName: die.name, dieAngle: die.includedAngle,
      force: bend === null ? null : bend.peakForcePerLength * length,
      byRule: bend === null ? [] : closedForms(setup, bend),
      range: range === null ? null : range.ok ? range.value : { sentence: range.reason.sentence },
      strip: strip?.ok ? strip.value : null,
      // the shop's own where it has measured with this metal and these tools
      deduction: bend === null ? null : deductionFor(deductions, { metal: metal.id, thickness: setup.thickness, v: setup.v, vConvention: setup.vConvention, tipRadius: setup.tipRadius, bendAngle: bend.bendAngleReleased }, bend),
      reliefHole: bend === null ? null : reliefHole(metal, asked.thickness, bend.insideRadius),
      curve: curve.ok ? curve.value : null,
    },
  };
};

import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { airBendCurve, type AirBendSetup, closedForms, deductionFor, explainV, reliefHole, stockRange, testStripFor } from '../../forming/index.js';
import { bendsInV } from '../../shop/index.js';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import { found } from '../httpError.js';

const mm = z.number().positive().max(12_000);

const askedSchema = z.strictObject({
  metalId: z.string(),
  thickness: mm.max(50),
  /** mm of bend, for the force in all. */
  length: mm,
  /** Degrees, released. */
  bendAngle: z.number().min(1).max(180),
  /** mm, as drawn, and the shortest flange, outside. */
  insideRadius: z.number().min(0).max(500).optional(),
  flange: mm.optional(),
  /** Tools to take in place of the best pair. */
  punchId: z.string().optional(),
  dieId: z.string().optional(),
});

/** V over thickness outside which no die is worth working out. Common practice, no source. */
const V_RANGE = [4, 16] as const;

/** mm: the usual sheet's width, for its thickness tolerance. */
const SHEET_WIDTH = 1250;

/** One bend at the counter: the rack's pairs ranked, one of them worked out, its curve. */
export const bendRoutes = (app: FastifyInstance, { shop }: Context): void => {
  app.post('/api/bend', async (request) => {
    const { metalId, punchId, dieId, length, ...asked } = checked(askedSchema, request.body);
    const { rack, deductions, metals } = await shop.current();
    const metal = found(metals.find(({ id }) => id === metalId), `There is no metal '${metalId}'.`);
    const { insideRadius, flange, ...rest } = asked;
    const question = { metal, ...rest, ...(insideRadius === undefined ? {} : { insideRadius }), ...(flange === undefined ? {} : { flange }) };
    const dies = rack.dies.filter((d) => d.shape === 'V' && d.v >= V_RANGE[0] * asked.thickness && d.v <= V_RANGE[1] * asked.thickness);
    const punches = rack.punches.filter(bendsInV);
    const { ranked, words } = explainV(question, dies, punches);
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
  });
};

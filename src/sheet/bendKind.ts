import type { Assumption, Bend } from './part.js';

/** Inside radius over thickness above which one stroke of a V does not form a bend: it is rolled or bent in many hits. Common practice, no source. */
const ROLLED_RATIO = 10;
/** Degrees of bend angle from which a bend is folded back on itself and is made as a hem. */
const HEM_FROM = 170;

/** How a bend as drawn is made: one function for every way that a part comes in. Bend angle in degrees, radius and thickness in mm. */
export const bendKind = (bendAngle: number, insideRadius: number, thickness: number): Bend['kind'] =>
  insideRadius / thickness > ROLLED_RATIO ? 'rolled' : bendAngle >= HEM_FROM ? 'hem' : 'bend';

/** What is said of the bends that are taken as rolled or bent in many hits, one assumption each. */
export const rolledAssumptions = (bends: readonly Bend[], thickness: number): readonly Assumption[] =>
  bends.filter(({ kind }) => kind === 'rolled').map(({ id, insideRadius }) => ({
    code: 'rolled', plates: [], bends: [id],
    sentence: `Bend ${id} has inside radius ${insideRadius.toFixed(2)} mm, ${(insideRadius / thickness).toFixed(0)} times the thickness: it is rolled or bent in many hits.`,
  }));

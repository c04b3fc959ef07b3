import { z } from 'zod';
import type { MeasuredBend } from '../forming/index.js';
import { type HardeningCurve, measured, type Metal, metalById, metalFromTensileTest, proofStress, tensileOf } from '../metal/index.js';
import type { DataFault, Result } from '../shop/index.js';

/** What sets the ids of the shop's own metals apart from the list's. */
const OWN = 'own-';

/** Test bends that one metal may rest on: a shop bends two or three. */
const MOST_BENDS = 50;

const mpa = z.number().positive().max(10_000);
const mm = z.number().positive().max(12_000);
const angle = z.number().gt(0).lt(180);

export const tensileTestSchema = z.strictObject({
  yield: mpa, tensile: mpa, uniformElongation: z.number().gt(0).max(100),
  reductionOfArea: z.number().gt(0).lt(100).exactOptional(), modulus: z.number().min(1000).max(1_000_000).exactOptional(),
});
/** The tools and the sheet that the bends were made with; the thickness as measured. */
export const bendToolsSchema = z.strictObject({
  thickness: mm, v: mm, vConvention: z.enum(['sharp', 'tangent']), dieAngle: angle, shoulderRadius: mm, tipRadius: mm, friction: z.number().min(0).max(1).exactOptional(),
});
export const bendReadingSchema = z.strictObject({
  depth: mm, bendAngleReleased: angle, bendAngleUnderLoad: angle.exactOptional(), peakForcePerLength: z.number().positive().max(100_000).exactOptional(),
});
export const bendReadingsSchema = z.array(bendReadingSchema).min(2).max(MOST_BENDS);

const curve = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('swift'), k: mpa, n: z.number().gt(0).lt(1), e0: z.number().positive() }),
  z.strictObject({ kind: z.literal('hollomon'), k: mpa, n: z.number().gt(0).lt(1) }),
  z.strictObject({ kind: z.literal('points'), points: z.array(z.tuple([z.number().min(0), mpa]).readonly()).min(2).max(1000).readonly() }),
]);
const head = { id: z.string().startsWith(OWN).max(100), name: z.string().trim().min(1).max(100), like: z.string() };
const schema = z.discriminatedUnion('by', [
  z.strictObject({ ...head, by: z.literal('tensile test'), test: tensileTestSchema }),
  /** The curve is kept as it was found: a later version of the calculation does not change what was planned with. */
  z.strictObject({ ...head, by: z.literal('test bends'), bends: z.array(bendReadingSchema.extend(bendToolsSchema.shape)).min(2).max(MOST_BENDS), curve, words: z.string().max(1000) }),
]);

/** A metal of the shop's own as it is kept: what was measured, and the metal of the list that it is like in all else. */
export type OwnMetalData = z.output<typeof schema>;

export interface OwnMetal {
  readonly id: string;
  readonly name: string;
  readonly demo: boolean;
  readonly metal: Metal;
}

/** A metal of the shop's own, ready to reckon with. */
export const parseOwnMetal = (data: unknown): Result<OwnMetal, DataFault> => {
  const read = schema.safeParse(data);
  if (!read.success) {
    const { path, message } = read.error.issues[0]!;
    return refused('own metal', path.map(String).join('.'), `The shop's own metal, ${path.map(String).join('.')}: ${message}.`);
  }
  const own = read.data;
  const like = metalById(own.like);
  if (like === undefined) return refused(own.id, 'like', `${own.name} is said to be like '${own.like}', which is no metal of the list.`);
  if (own.by === 'tensile test') {
    const made = metalFromTensileTest(own.id, own.name, own.test, like);
    return made.ok ? taken(own, made.metal) : refused(own.id, 'test', made.sentence);
  }
  return taken(own, { ...like, id: own.id, name: own.name, demo: false, ...bent(own.curve, `${own.bends.length} test bends of the shop, like ${like.name}`) });
};

const bent = (found: HardeningCurve, source: string): ReturnType<typeof measured> => measured(found, proofStress(found), tensileOf(found).strength, source);

const taken = ({ id, name }: OwnMetalData, metal: Metal): Result<OwnMetal, DataFault> => ({ ok: true, value: { id, name, demo: false, metal } });

const refused = (entry: string, field: string, sentence: string): Result<OwnMetal, DataFault> => ({ ok: false, fault: { code: 'sense', entry, field, sentence } });

/** The id of a name. @example ownMetalId('Coil 17, 2 mm') // 'own-coil-17-2-mm' */
export const ownMetalId = (name: string): string => `${OWN}${name.trim().toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '')}`;

/** A reading with the tools it was made with, as the calculation takes it. */
export const asMeasuredBend = ({ depth, bendAngleReleased, bendAngleUnderLoad, peakForcePerLength, ...setup }: Extract<OwnMetalData, { by: 'test bends' }>['bends'][number]): MeasuredBend => ({
  setup, depth, bendAngleReleased,
  ...(bendAngleUnderLoad === undefined ? {} : { bendAngleUnderLoad }), ...(peakForcePerLength === undefined ? {} : { peakForcePerLength }),
});

import { z } from 'zod';
import { metalFromBends } from '../forming/index.js';
import { writtenName } from '../intake/index.js';
import { metalById } from '../metal/index.js';
import { type OwnMetal, type OwnMetalData, asMeasuredBend, bendReadingsSchema, bendToolsSchema, ownMetalId, parseOwnMetal, tensileTestSchema } from './ownMetal.js';

export const metalName = writtenName(60);

/** A metal of the shop's own as it is asked for: what was measured, and the metal of the list that it is like. */
export const askedMetalSchema = z.union([
  z.strictObject({ name: metalName, like: z.string(), test: tensileTestSchema }),
  z.strictObject({ name: metalName, like: z.string(), tools: bendToolsSchema, bends: bendReadingsSchema }),
]);

export type Made<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly sentence: string };
/** Bends as they were measured, each with its tools. */
export type MeasuredBends = Extract<OwnMetalData, { by: 'test bends' }>['bends'];

/** From bends that were measured, each with its tools; the curve is found now and kept. */
export const metalDataFromBends = (name: string, likeId: string, bends: MeasuredBends): Made<OwnMetalData> => {
  const like = metalById(likeId);
  if (like === undefined) return { ok: false, sentence: `There is no metal '${likeId}' in the list.` };
  const id = ownMetalId(name);
  const fitted = metalFromBends(bends.map(asMeasuredBend), like, id, name);
  return fitted.ok ? { ok: true, value: { id, name, like: likeId, by: 'test bends', bends, curve: fitted.value.metal.curve, words: fitted.value.words } } : fitted;
};

/** What is kept of a metal that is asked for. */
export const askedMetalData = (asked: z.output<typeof askedMetalSchema>): Made<OwnMetalData> =>
  'test' in asked ? { ok: true, value: { id: ownMetalId(asked.name), name: asked.name, like: asked.like, by: 'tensile test', test: asked.test } }
    : metalDataFromBends(asked.name, asked.like, asked.bends.map((bend) => ({ ...bend, ...asked.tools })));

/** A metal of the shop's own out of a file: as it is asked for, or as it is kept (`data` of a revision). */
export const readOwnMetal = (json: unknown): Made<OwnMetal> => {
  const data = typeof json === 'object' && json !== null && 'data' in json ? json.data : json;
  if (typeof data === 'object' && data !== null && 'by' in data) {
    const kept = parseOwnMetal(data);
    return kept.ok ? kept : { ok: false, sentence: kept.fault.sentence };
  }
  const asked = askedMetalSchema.safeParse(data);
  if (!asked.success) {
    return { ok: false, sentence: `This is no metal of the shop's own: name, like (a metal of the list) and test { yield, tensile, uniformElongation } are wanted, or tools and bends in place of test (docs/api.md).` };
  }
  const made = askedMetalData(asked.data);
  if (!made.ok) return made;
  const own = parseOwnMetal(made.value);
  return own.ok ? own : { ok: false, sentence: own.fault.sentence };
};

import { z } from 'zod';
import { type DxfPartResult, type Intake, dxfReadingSchema, ruleSchema, writtenName } from '../intake/index.js';
import type { Metal } from '../metal/index.js';
import { DEFAULT_K } from '../forming/index.js';
import { asFormed, type Assumption, bendKind, develop, dimensionFault, type DxfReading, type Part, partFromLine, rolledAssumptions, ruleInWords, type StepReading, UNIT_WORDS, withThickness } from '../sheet/index.js';
import { HttpError } from './httpError.js';
import { keptDimensions } from './keptDimensions.js';

const radius = z.number().min(0).max(10_000);
const side = z.enum(['A', 'B']);
const index = z.int().min(0).max(100_000);
const feature = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('face'), plate: index, side }),
  z.strictObject({ kind: z.literal('edge'), plate: index, at: z.tuple([z.number(), z.number()]) }),
  z.strictObject({ kind: z.literal('corner'), plate: index, bend: index }),
]);
const dimension = z.strictObject({
  between: z.tuple([feature, feature]),
  /** mm, plus and minus. */
  tolerance: z.number().positive().max(1000).exactOptional(),
  class: z.enum(['f', 'm', 'c', 'v']).exactOptional(),
});

/** What a new revision changes; null takes a choice back. */
export const changeSchema = z.strictObject({
  /** The revision that the change was made on: when there is a later one by then, it is refused. */
  after: z.int().min(1).optional(),
  name: writtenName(200).optional(),
  /** mm: inside radii by bend id; outside lengths are kept. */
  radii: z.record(z.string(), radius).optional(),
  /** mm: the inside radius of every bend that was drawn sharp. */
  sharpRadius: radius.optional(),
  /** mm: of a solid whose faces lie not all equally far apart; outside lengths are kept. */
  thickness: z.number().min(0.05).max(50).optional(),
  /** Bends told apart otherwise than by their radius: bent in one stroke, or rolled. By bend id. */
  kinds: z.record(z.string(), z.enum(['bend', 'rolled'])).optional(),
  /** mm: how high what is formed into the plates stands, by its place in the part's list. */
  heights: z.record(z.string().regex(/^\d{1,6}$/), z.number().min(0).max(1_000)).optional(),
  /** A solid read again in this unit, whatever its file declares; null as the file declares. */
  unit: z.enum(['mm', 'inch', 'cm', 'm']).nullable().optional(),
  /** A flat drawing read again with all of this told. */
  told: dxfReadingSchema.optional(),
  /** A typed-in profile typed anew. */
  line: z.string().max(2_000).optional(),
  /** The rule of the nominal blank. */
  rule: ruleSchema.optional(),
  metal: z.string().max(60).optional(),
  /** All dimensions of the drawing, in their order; null for those that a drawing carries by default. */
  dimensions: z.array(dimension).max(200).nullable().optional(),
  marks: z.strictObject({ keep: side.nullable().optional(), burr: side.nullable().optional(), rolling: z.number().min(-180).max(180).nullable().optional() }).optional(),
});
type Change = z.output<typeof changeSchema>;

interface Changed {
  readonly part: Part;
  readonly words: string;
}

/** Reads the file that a part came from again: a flat drawing, or the bodies of a solid's file. */
export interface Again {
  readonly drawing: (told: DxfReading) => Promise<DxfPartResult>;
  readonly solid: (told: StepReading) => Promise<Intake>;
}

/** The part with the change made, and the change in words; an HttpError when it cannot be made or changes nothing. */
export const changedPart = async (part: Part, change: Change, metals: readonly Metal[], again: Again): Promise<Changed> => {
  const read = await readAgain(part, change, again);
  const steps = [thicknessTold, withRadii, withKinds, withHeights, withRule, withMetal(metals), withMarks, withDimensions, renamed];
  const words = [read.words];
  let changed = read.part;
  for (const step of steps) {
    const made = step(changed, change);
    changed = made.part;
    words.push(made.words);
  }
  const said = words.filter((it) => it !== '').join(', ');
  if (said === '') throw new HttpError(400, 'Nothing changes: give a name, a thickness, radii or kinds of bends, heights, a rule, a metal, marks, dimensions, a unit, or what is told of a drawing or a profile.');
  return { part: changed, words: said };
};

const same = (part: Part): Changed => ({ part, words: '' });

/** What the user chose beside the reading stays with a part that is read again. */
const keeping = (read: Part, { name, metal, marks }: Part): Part => ({ ...read, name, ...(metal === undefined ? {} : { metal }), ...(marks === undefined ? {} : { marks }) });

const readAgain = async (part: Part, { told, line, unit, dimensions }: Change, { drawing, solid }: Again): Promise<Changed> => {
  if (told !== undefined || line !== undefined) {
    const made = told !== undefined ? await drawnAgain(part, told, drawing) : typedAnew(part, line!);
    // where all of them are told with it, none is lost
    if (made.part === part || dimensions !== undefined) return made;
    const kept = keptDimensions(made.part, part);
    return { part: kept.part, words: [made.words, kept.words].filter((it) => it !== '').join(', ') };
  }
  return unit === undefined ? same(part) : inUnit(part, unit, solid);
};

/** A solid read again in another unit: thickness, radii and outlines come scaled, and curves are cut into chords at their new size. */
const inUnit = async (part: Part, unit: Part['unit'] | null, read: Again['solid']): Promise<Changed> => {
  const { reading } = part;
  if (reading?.from === 'dxf') throw new HttpError(422, "The unit of a flat drawing is told with the drawing ('told').");
  if (reading?.from !== 'step') throw new HttpError(422, 'This part has no file that could be read in another unit: hand the file in again, or type the profile anew.');
  if (unit === (reading.unit ?? null)) return same(part);
  const { unit: _before, ...rest } = reading;
  const { parts, refused } = await read(unit === null ? rest : { ...rest, unit });
  const found = parts.find(({ index }) => index === reading.body);
  if (found === undefined) throw new HttpError(422, (refused.find(({ index }) => index === reading.body) ?? refused[0])?.sentence ?? 'The file holds no such body any longer.');
  const kept = part.rule === undefined ? {} : { rule: part.rule };
  return { part: { ...keeping(found.part, part), ...kept }, words: `unit ${unit === null ? 'as the file declares' : UNIT_WORDS[unit]}; radii, kinds of bends, heights and dimensions as read` };
};

const drawnAgain = async (part: Part, told: DxfReading, read: Again['drawing']): Promise<Changed> => {
  if (part.reading?.from !== 'dxf') throw new HttpError(422, 'This part was not read from a flat drawing.');
  const result = await read(told);
  if (!result.ok) throw new HttpError(422, result.failure.sentence, { failure: result.failure, layers: result.seen.layers, unit: result.seen.unit });
  return { part: keeping(result.value.part, part), words: toldInWords(part.reading, told) };
};

const typedAnew = (part: Part, line: string): Changed => {
  if (part.reading?.from !== 'profile') throw new HttpError(422, 'This part is no typed-in profile.');
  const typed = partFromLine(line, part.name);
  if (!typed.ok) throw new HttpError(422, typed.fault.sentence);
  return line === part.reading.line ? same(part) : { part: { ...keeping(typed.value, part), ...(part.rule === undefined ? {} : { rule: part.rule }) }, words: `typed anew: ${line}` };
};

/** What is told otherwise than before. */
const toldInWords = (before: DxfReading, now: DxfReading): string => {
  const differs = (a: unknown, b: unknown): boolean => JSON.stringify(a) !== JSON.stringify(b);
  const words: string[] = [];
  if (differs(before.unit, now.unit)) words.push(`unit ${now.unit ?? 'as the file says'}`);
  if (differs(before.thickness, now.thickness)) words.push(`thickness ${now.thickness ?? 'as the drawing notes'}${now.thickness === undefined ? '' : ' mm'}`);
  if (differs(before.rule, now.rule)) words.push(`rule ${now.rule === undefined ? 'as the drawing notes' : ruleInWords(now.rule)}`);
  if (differs(before.gap, now.gap)) words.push(`gaps up to ${now.gap ?? 0.05} mm`);
  for (const key of Object.keys({ ...before.roles, ...now.roles })) if (differs(before.roles?.[key], now.roles?.[key])) words.push(`layer ${key}: ${now.roles?.[key] ?? 'as guessed'}`);
  if (differs(before.bend, now.bend)) words.push('what holds for all bends');
  for (const id of Object.keys({ ...before.bends, ...now.bends })) {
    const [was, is] = [before.bends?.[id], now.bends?.[id]];
    if (!differs(was, is)) continue;
    const of = [is?.bendAngle !== undefined && `bend angle ${is.bendAngle}`, is?.direction !== undefined && `towards ${is.direction}`, is?.insideRadius !== undefined && `inside radius ${is.insideRadius} mm`].filter((it) => it !== false);
    words.push(`${id}: ${of.join(', ') || 'as read'}`);
  }
  return words.length === 0 ? '' : `read again: ${words.join('; ')}`;
};

const withRadii = (part: Part, change: Change): Changed => {
  const sharp = new Set(part.assumptions.filter(({ code }) => code === 'sharp bend').flatMap(({ bends }) => bends));
  if (change.sharpRadius !== undefined && sharp.size === 0) throw new HttpError(422, 'No bend of this part was drawn sharp.');
  const radii = new Map([
    ...[...sharp].flatMap((id) => (change.sharpRadius === undefined ? [] : [[id, change.sharpRadius] as const])),
    ...Object.entries(change.radii ?? {}),
  ]);
  for (const id of radii.keys()) if (!part.bends.some((bend) => bend.id === id)) throw new HttpError(422, `The part has no bend '${id}'.`);
  if (radii.size === 0) return same(part);
  const formed = asFormed(part, part.bends.map(({ id, insideRadius }) => ({ insideRadius: radii.get(id) ?? insideRadius })));
  if (!formed.ok) throw new HttpError(422, formed.failure.sentence);
  // another radius may be another way to make the bend; what was told of the bends that keep theirs stays
  const bends = formed.value.bends.map((bend) => (radii.has(bend.id) ? { ...bend, kind: bendKind(bend.bendAngle, bend.insideRadius, part.thickness) } : bend));
  const others = part.assumptions.filter(({ code, bends: [id] }) => code !== 'rolled' || id === undefined || !radii.has(id));
  const rolled = rolledAssumptions(bends.filter(({ id }) => radii.has(id)), part.thickness);
  return {
    part: { ...formed.value, bends, assumptions: [...withChosen(others, radii), ...rolled] },
    words: [...radii].map(([id, value]) => `inside radius of ${id} ${value} mm`).join(', '),
  };
};

const thicknessTold = (part: Part, { thickness }: Change): Changed => {
  if (thickness === undefined || thickness === part.thickness) return same(part);
  if (!part.assumptions.some(({ code }) => code === 'thickness varies')) throw new HttpError(422, `The faces of this part all lie ${part.thickness.toFixed(2)} mm apart: its thickness was read, not assumed.`);
  const made = withThickness(part, thickness);
  if (!made.ok) throw new HttpError(422, made.failure.sentence);
  return { part: made.value, words: `thickness ${thickness} mm` };
};

const withKinds = (part: Part, { kinds = {} }: Change): Changed => {
  const words: string[] = [];
  const told = new Map(Object.entries(kinds));
  for (const id of told.keys()) {
    const bend = part.bends.find((it) => it.id === id);
    if (bend === undefined) throw new HttpError(422, `The part has no bend '${id}'.`);
    if (bend.kind === 'hem') throw new HttpError(422, `Bend ${id} is a hem of ${bend.bendAngle} degrees: it is neither rolled nor bent in one stroke.`);
    if (bend.kind !== told.get(id)) words.push(`${id} ${told.get(id) === 'rolled' ? 'rolled' : 'bent in one stroke'}`);
  }
  if (words.length === 0) return same(part);
  return { part: { ...part, bends: part.bends.map((bend) => ({ ...bend, kind: told.get(bend.id) ?? bend.kind })) }, words: words.join(', ') };
};

const withHeights = (part: Part, { heights = {} }: Change): Changed => {
  const words: string[] = [];
  const told = new Map(Object.entries(heights).map(([key, height]) => [Number(key), height]));
  for (const [place, height] of told) {
    const it = part.formed?.[place];
    if (it === undefined) throw new HttpError(422, `The part has no formed feature ${place}: it has ${part.formed?.length ?? 0}, the first is 0.`);
    if (it.height !== height) words.push(`${it.kind} on plate ${it.plate + 1} ${height} mm high`);
  }
  if (words.length === 0) return same(part);
  return { part: { ...part, formed: part.formed!.map((it, i) => ({ ...it, height: told.get(i) ?? it.height })) }, words: words.slice(0, 3).join(', ') + (words.length > 3 ? ` and ${words.length - 3} more` : '') };
};

const withRule = (part: Part, { rule }: Change): Changed => {
  if (rule === undefined || JSON.stringify(rule) === JSON.stringify(part.rule)) return same(part);
  if (part.reading?.from === 'dxf') throw new HttpError(422, "The rule of a flat drawing says how wide its bends' strips are: tell it with the drawing ('told').");
  return { part: { ...part, rule }, words: `blank by rule ${ruleInWords(rule)}` };
};

const withMetal = (metals: readonly Metal[]) => (part: Part, { metal }: Change): Changed => {
  if (metal === undefined || metal === part.metal) return same(part);
  const found = metals.find(({ id }) => id === metal);
  if (found === undefined) throw new HttpError(422, `There is no metal '${metal}'.`);
  return { part: { ...part, metal }, words: `metal ${found.name}` };
};

const withMarks = (part: Part, { marks }: Change): Changed => {
  if (marks === undefined) return same(part);
  const now = Object.fromEntries(Object.entries({ ...part.marks, ...marks }).filter(([, value]) => value !== null && value !== undefined));
  if (JSON.stringify(now) === JSON.stringify(part.marks ?? {})) return same(part);
  const { keep, burr, rolling } = now as NonNullable<Part['marks']>;
  const words = [keep === undefined ? 'no face to be kept from marks' : `the ${keep} side must not be marked`, ...(burr === undefined ? [] : [`burr on the ${burr} side`]), ...(rolling === undefined ? [] : [`rolled at ${rolling} degrees`])];
  return { part: { ...part, marks: now }, words: words.join(', ') };
};

const withDimensions = (part: Part, { dimensions }: Change): Changed => {
  if (dimensions === undefined) return same(part);
  const { dimensions: before, ...rest } = part;
  if (dimensions === null) return before === undefined ? same(part) : { part: rest, words: 'dimensions as by default' };
  const named = dimensions.map((it, i) => ({ id: `d${i + 1}`, ...it }));
  if (JSON.stringify(named) === JSON.stringify(before)) return same(part);
  const sheet = develop(part, part.rule ?? { name: 'K-factor', k: DEFAULT_K });
  for (const it of named) {
    const fault = dimensionFault(sheet, it);
    if (fault !== null) throw new HttpError(422, `${it.id}: ${fault}`);
  }
  const [held, classed] = [named.filter((it) => it.tolerance !== undefined).length, named.filter((it) => it.tolerance === undefined && it.class !== undefined).length];
  return { part: { ...rest, dimensions: named }, words: `${named.length === 1 ? '1 dimension' : `${named.length} dimensions`}, ${held} with a tolerance, ${classed} by a class` };
};

const renamed = (part: Part, { name }: Change): Changed => (name === undefined || name === part.name ? same(part) : { part: { ...part, name }, words: 'renamed' });

/** A radius that the user chose is no longer the program's own assumption. */
const withChosen = (assumptions: readonly Assumption[], radii: ReadonlyMap<string, number>): Assumption[] =>
  assumptions.flatMap((assumption) => {
    const chosen = assumption.bends.filter((id) => radii.has(id));
    if (assumption.code !== 'sharp bend' || chosen.length === 0) return [assumption];
    const left = assumption.bends.filter((id) => !radii.has(id));
    const each = chosen.map((id) => `${id} ${radii.get(id)} mm`).join(', ');
    const sentence = `Drawn sharp; the inside radius was chosen by the user: ${each}.`;
    return [{ ...assumption, sentence, bends: chosen }, ...(left.length === 0 ? [] : [{ ...assumption, bends: left }])];
  });

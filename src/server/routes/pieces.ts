import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { type ExpectedFigure, expectedFigures, measuredDeductions, type PieceEntry, pieceDifferences, stripFault } from '../../fit/index.js';
import { deductionsToCsv } from '../../forming/index.js';
import type { Trial } from '../../trial/index.js';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import { whoAsks } from '../guard.js';
import { found, HttpError } from '../httpError.js';

interface ById { readonly Params: { readonly id: string } }

/** Characters of what is typed on a line, and of a note. */
const line = 80;
const note = 1000;
/** mm beyond which no flange of a press brake's part lies. */
const longest = 20_000;

const words = { serial: z.string().trim().min(1).max(line), batch: z.string().trim().max(line), instrument: z.string().trim().max(line).default(''), note: z.string().trim().max(note).default('') };
const corrects = z.string().nullable().default(null);
const pieceSchema = z.strictObject({
  kind: z.literal('piece'), ...words, tools: z.string().trim().max(note).optional(), corrects,
  measured: z.array(z.strictObject({ id: z.string(), value: z.number().min(0).max(longest) })).min(1).max(500),
});
const stripSchema = z.strictObject({
  kind: z.literal('strip'), ...words, corrects, station: z.string(), bendAngle: z.number().gt(0).lt(180),
  cut: z.number().gt(0).max(longest), legs: z.tuple([z.number().gt(0).max(longest), z.number().gt(0).max(longest)]), thickness: z.number().gt(0).max(100),
  depth: z.number().gt(0).max(longest).exactOptional(), underLoad: z.number().gt(0).lt(180).exactOptional(), force: z.number().gt(0).max(100_000).exactOptional(),
});
const askedSchema = z.discriminatedUnion('kind', [pieceSchema, stripSchema]);

/** The tools of the trial's stations in words: what is taken for the piece's tools unless others are named. */
const toolsInWords = ({ stations, punches, dies }: Trial): string => stations.map(({ id, punch, die }) =>
  `${id}: ${punches.find((t) => t.id === punch)?.name ?? punch} over ${dies.find((t) => t.id === die)?.name ?? die}`).join('; ');

const entryOf = (asked: z.output<typeof askedSchema>, trial: Trial): PieceEntry => {
  if (asked.kind === 'strip') {
    const { corrects: _, ...strip } = asked;
    if (!trial.stations.some(({ id }) => id === strip.station)) throw new HttpError(422, `The trial has no station '${strip.station}'.`);
    const fault = stripFault(trial, strip);
    if (fault !== null) throw new HttpError(422, fault);
    return strip;
  }
  const expected = new Map(expectedFigures(trial).map((figure) => [figure.id, figure]));
  const figures = asked.measured.map(({ id, value }) => {
    const figure = expected.get(id);
    if (figure === undefined) throw new HttpError(422, `The trial predicts no figure '${id}'; there are ${[...expected.keys()].join(', ')}.`);
    const { askedBy: _, spread: __, ...what }: ExpectedFigure = figure;
    return { ...what, measured: value };
  });
  if (new Set(figures.map(({ id }) => id)).size < figures.length) throw new HttpError(422, 'One figure is measured twice in the same entry.');
  const { serial, batch, instrument, note: said } = asked;
  return { kind: 'piece', serial, batch, tools: asked.tools ?? toolsInWords(trial), instrument, figures, note: said };
};

/** Pieces made and strips bent for a trial: written down once, corrected by another entry. */
export const pieceRoutes = (app: FastifyInstance, { store }: Context): void => {
  const trialOf = async (id: string): Promise<Trial> => found(await store.trial(id), 'There is no such trial.').trial;

  app.get<ById>('/api/trials/:id/pieces', async ({ params }) => {
    const trial = await trialOf(params.id);
    const records = await store.pieces(params.id);
    return { expected: expectedFigures(trial), tools: toolsInWords(trial), records, differences: pieceDifferences(records), deductions: measuredDeductions(trial, records) };
  });

  app.post<ById>('/api/trials/:id/pieces', async (request, reply) => {
    const asked = checked(askedSchema, request.body);
    const trial = await trialOf(request.params.id);
    if (trial.steps.length === 0) throw new HttpError(409, 'This trial has no plan, so no piece was made by it.');
    const kept = await store.addPiece(request.params.id, entryOf(asked, trial), asked.corrects, whoAsks(request));
    if (kept.ok) return reply.code(201).send(kept.record);
    if (kept.why === 'corrected already') throw new HttpError(409, 'This entry was corrected already: correct the correction.');
    throw new HttpError(404, kept.why === 'no trial' ? 'There is no such trial.' : 'The trial has no such entry of this kind to correct.');
  });

  app.get<ById>('/api/trials/:id/deductions.csv', async ({ params }, reply) => {
    const rows = measuredDeductions(await trialOf(params.id), await store.pieces(params.id));
    if (rows.length === 0) throw new HttpError(404, 'No test strip has been written down for this trial.');
    return reply.type('text/csv').header('content-disposition', `attachment; filename="deductions-${params.id}.csv"`).send(deductionsToCsv(rows));
  });
};

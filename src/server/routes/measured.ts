import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { measuredDeductions, withStripRows } from '../../fit/index.js';
import { deductionsFromCsv, deductionsToCsv, fittedByTools, type MeasuredDeduction } from '../../forming/index.js';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import { whoAsks } from '../guard.js';
import { found, HttpError } from '../httpError.js';
import { tableBodyLimit, tableLimit } from '../limits.js';
import { MEASURED_ID, parseMeasured } from '../measuredTable.js';
import { revisionOf } from './rule.js';

const askedSchema = z.union([
  /** 'add': rows of the same tools, bend angle and note are replaced, all others stay; 'replace': the table is this one. */
  z.strictObject({ csv: z.string().max(tableLimit), mode: z.enum(['add', 'replace']) }),
  /** The test strips written down for this trial. */
  z.strictObject({ trialId: z.string() }),
]);

/** The shop's own measured deductions: looked at, taken in, kept as revisions. Trials and fits take them in place of the calculation. */
export const measuredRoutes = (app: FastifyInstance, { store, shop }: Context): void => {
  const tableOf = async (revision?: number): Promise<{ readonly revision: number; readonly rows: readonly MeasuredDeduction[] } | null> => {
    const entry = await store.shopEntry('deductions', MEASURED_ID, revision);
    const read = entry === undefined ? undefined : parseMeasured(entry.data);
    if (read?.ok === false) throw new HttpError(422, read.fault.sentence);
    return entry === undefined || read === undefined ? null : { revision: entry.revision, rows: read.value.rows };
  };

  app.get<{ readonly Querystring: { readonly revision?: string } }>('/api/deductions', async ({ query }) => {
    const table = await tableOf(revisionOf(query.revision));
    if (table === null && query.revision !== undefined) throw new HttpError(404, `The table of measured deductions has no revision ${query.revision}.`);
    const { metals } = await shop.current();
    const tools = fittedByTools(table?.rows ?? [], (id) => metals.find((metal) => metal.id === id));
    return { revision: table?.revision ?? null, rows: table?.rows ?? [], tools, revisions: await store.shopRevisions('deductions', MEASURED_ID) };
  });

  app.get('/api/deductions.csv', async (_, reply) =>
    reply.type('text/csv; charset=utf-8').header('content-disposition', 'attachment; filename="deductions.csv"').send(deductionsToCsv((await tableOf())?.rows ?? [])));

  app.post('/api/deductions', { bodyLimit: tableBodyLimit }, async (request, reply) => {
    const asked = checked(askedSchema, request.body);
    const before = await tableOf();
    const kept = (rows: readonly MeasuredDeduction[], change: string) => shop.keep('deductions', { rows }, before?.revision ?? 0, change, whoAsks(request));
    if ('trialId' in asked) {
      const { trial } = found(await store.trial(asked.trialId), 'There is no such trial.');
      const rows = measuredDeductions(trial, await store.pieces(asked.trialId));
      if (rows.length === 0) throw new HttpError(409, 'No test strip has been written down for this trial.');
      return reply.code(201).send(await kept(withStripRows(before?.rows ?? [], rows), `${count(rows)} from the test strips of trial ${asked.trialId}`));
    }
    const read = deductionsFromCsv(asked.csv);
    if (!read.ok) throw new HttpError(422, read.sentence, { line: read.line });
    const whole = asked.mode === 'replace';
    return reply.code(201).send(await kept(whole ? read.rows : withStripRows(before?.rows ?? [], read.rows), `${count(read.rows)} taken in${whole ? ', in place of all before' : ''}`));
  });
};

const count = ({ length }: readonly MeasuredDeduction[]): string => `${length} row${length === 1 ? '' : 's'}`;

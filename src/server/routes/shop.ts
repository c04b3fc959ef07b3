import type { FastifyInstance, FastifyReply } from 'fastify';
import { z } from 'zod';
import { asDrawn, conditionFigures, machinesFromCsv, machinesToCsv, parseCondition, parseFloor, parseRack, type RackData, type Result, sameData, stateOf, toolsFromCsv, toolsToCsv, underKey, withTools } from '../../shop/index.js';
import type { ShopKind, ShopRevision, StoredShopEntry } from '../../store/index.js';
import { checked } from '../checked.js';
import type { Context } from '../context.js';
import { disposition } from '../disposition.js';
import { whoAsks } from '../guard.js';
import { found, HttpError } from '../httpError.js';
import { tableBodyLimit, tableLimit } from '../limits.js';
import type { ShopChange } from '../shopKeeper.js';
import { revisionOf } from './rule.js';

interface ById { readonly Params: { readonly id: string } }
interface ByRevision { readonly Querystring: { readonly revision?: string; readonly length?: string } }

const keepSchema = z.strictObject({
  data: z.unknown(),
  /** The revision that this one follows; 0 for a new entry. */
  after: z.int().min(0).optional(),
  change: z.string().trim().min(1).max(200).optional(),
});

const csv = z.string().max(tableLimit);
const floorCsvSchema = z.strictObject({ csv });
const csvSchema = z.strictObject({
  csv,
  /** 'add': tools of the same id are replaced, all others stay; 'replace': the rack is the table. */
  mode: z.enum(['add', 'replace']),
});

/** mm of work that a condition's figures speak of where none is named. */
const USUAL_LENGTH = 1000;

/** Floor, racks and condition records: read, changed by revisions, handed out and taken in whole. */
export const shopRoutes = (app: FastifyInstance, { store, shop, desk }: Context): void => {
  const entryOf = async (kind: ShopKind, id: string, revision: string | undefined, what: string): Promise<StoredShopEntry> =>
    found(await store.shopEntry(kind, id, revisionOf(revision)), revision === undefined ? `There is no ${what} '${id}'.` : `The ${what} '${id}' has no revision ${revision}, or was taken off with it.`);

  app.get('/api/machines', async () => {
    const { machines, unreadable, madeWith } = await shop.current();
    return { machines, unreadable, revisions: Object.fromEntries(machines.map(({ id }) => {
      const { machineRevision, conditionRevision } = madeWith(id);
      return [id, { machine: machineRevision, condition: conditionRevision }];
    })) };
  });

  app.get<ById & ByRevision>('/api/machines/:id', async ({ params, query }) => {
    const { data, ...entry } = await entryOf('machine', params.id, query.revision, 'machine');
    const read = parseFloor([data]);
    return { ...entry, data, machine: read.ok ? read.value[0] : null, revisions: await store.shopRevisions('machine', params.id), condition: (await store.shopRevisions('condition', params.id)).at(-1) ?? null };
  });

  app.post('/api/machines', async (request, reply) => {
    const { data, after = 0, change } = checked(keepSchema, request.body);
    return reply.code(201).send(await shop.keep('machine', asDrawn(data), after, change, whoAsks(request)));
  });

  app.delete<ById>('/api/machines/:id', async (request) => shop.takeOff('machine', request.params.id, whoAsks(request)));

  app.get('/api/floor.json', async (_, reply) =>
    attached(reply, 'floor.json').send({ machines: (await store.shopEntries('machine')).map(({ data }) => data) }));

  app.get('/api/floor.csv', async (_, reply) => {
    const entries = await store.shopEntries('machine');
    for (const { id, data } of entries) {
      const read = parseFloor([data]);
      if (!read.ok) throw new HttpError(409, `The machine '${id}' can no longer be read, so a table cannot hold it; take the floor as JSON. ${read.fault.sentence}`);
    }
    return csvAttached(reply, 'floor.csv', machinesToCsv(entries.map(({ data }) => data)));
  });

  app.post('/api/floor', { bodyLimit: tableBodyLimit }, async (request, reply) => {
    const data = floorOf(request.body);
    return reply.code(201).send(await takeIn('machine', data as readonly { readonly id: string }[], whoAsks(request)));
  });

  app.get('/api/tools', async () => {
    const { rack, madeWith } = await shop.current();
    return { rack, revision: madeWith('').rackRevision };
  });

  app.get('/api/racks', async () => ({ racks: (await store.shopEntries('rack')).map(({ data: _, ...entry }) => entry) }));

  app.get<ById & ByRevision>('/api/racks/:id', async ({ params, query }) => {
    const { data, ...entry } = await entryOf('rack', params.id, query.revision, 'rack');
    const read = parseRack(data);
    return { ...entry, data, rack: read.ok ? read.value : null, revisions: await store.shopRevisions('rack', params.id) };
  });

  app.post('/api/racks', async (request, reply) => {
    const { data, after = 0, change } = checked(keepSchema, request.body);
    return reply.code(201).send(await shop.keep('rack', underKey('rack', asDrawn(data)), after, change, whoAsks(request)));
  });

  app.delete<ById>('/api/racks/:id', async (request) => shop.takeOff('rack', request.params.id, whoAsks(request)));

  app.get<ById>('/api/racks/:id/rack.json', async ({ params }, reply) =>
    attached(reply, 'rack.json').send((await entryOf('rack', params.id, undefined, 'rack')).data));

  app.get<ById>('/api/racks/:id/tools.csv', async ({ params }, reply) =>
    csvAttached(reply, 'tools.csv', toolsToCsv((await entryOf('rack', params.id, undefined, 'rack')).data as RackData)));

  app.post<ById>('/api/racks/:id/tools', { bodyLimit: tableBodyLimit }, async (request, reply) => {
    const { csv, mode } = checked(csvSchema, request.body);
    const { data, revision } = await entryOf('rack', request.params.id, undefined, 'rack');
    const read = toolsFromCsv(csv);
    if (!read.ok) throw new HttpError(422, read.fault);
    const rack: Result<object, string> = mode === 'replace' ? { ok: true, value: { ...(data as object), ...read.value } } : withTools(data as RackData, read.value);
    if (!rack.ok) throw new HttpError(422, rack.fault);
    return reply.code(201).send(await shop.keep('rack', rack.value, revision, undefined, whoAsks(request)));
  });

  app.get<ById & ByRevision>('/api/machines/:id/condition', async ({ params, query }) => {
    const { data, ...entry } = await entryOf('condition', params.id, query.revision, 'condition record of a machine');
    const machine = parseFloor([(await entryOf('machine', params.id, undefined, 'machine')).data]);
    const record = parseCondition(data);
    return {
      ...entry, data, revisions: await store.shopRevisions('condition', params.id),
      figures: machine.ok && record.ok ? conditionFigures(machine.value[0]!, record.value, lengthOf(query.length)) : null,
    };
  });

  app.get<ById & ByRevision & { readonly Querystring: { readonly blank?: string } }>('/api/machines/:id/check-sheet.pdf', async (request, reply) => {
    const { params: { id }, query } = request;
    const read = parseFloor([(await entryOf('machine', id, undefined, 'machine')).data]);
    if (!read.ok) throw new HttpError(422, read.fault.sentence);
    const machine = read.value[0]!;
    const blank = query.blank === 'true';
    const entry = blank ? undefined : await entryOf('condition', id, query.revision, 'condition record of a machine');
    const record = entry && parseCondition(entry.data);
    if (record?.ok === false) throw new HttpError(422, record.fault.sentence);
    const filled = record ? { record: record.value, figures: conditionFigures(machine, record.value, lengthOf(query.length)) } : null;
    const rests = record && stateOf(record.value);
    const options = entry && rests ? { date: rests.date, who: rests.by, revision: String(entry.revision) } : {};
    const pdf = await desk.make(`check sheet/${JSON.stringify([machine, filled, options])}`, { kind: 'check sheet', machine, filled, options });
    return reply.type('application/pdf').header('content-disposition', disposition('inline', `${machine.name} check sheet${blank ? ', blank' : ''}.pdf`))
      .send(Buffer.from(pdf as Uint8Array));
  });

  app.post<ById>('/api/machines/:id/condition', async (request, reply) => {
    const { id } = request.params;
    await entryOf('machine', id, undefined, 'machine');
    const { data, after = 0, change } = checked(keepSchema, request.body);
    const read = parseCondition(data);
    if (read.ok && read.value.machineId !== id) throw new HttpError(422, `The record is of the machine '${read.value.machineId}', not of '${id}'.`);
    return reply.code(201).send(await shop.keep('condition', data, after, change, whoAsks(request)));
  });

  /** Each entry of a list as a new one or as the next revision of the one of its id; those that say nothing new are left. */
  const takeIn = async (kind: 'machine', list: readonly { readonly id: string }[], by: string): Promise<{ readonly kept: readonly ShopRevision[]; readonly same: readonly string[] }> => {
    const changes: ShopChange[] = [];
    const same: string[] = [];
    for (const data of list) {
      const before = await store.shopEntry(kind, data.id);
      if (before !== undefined && sameData(before.data, data)) same.push(data.id);
      else changes.push({ kind, data, after: before?.revision ?? 0 });
    }
    return { kept: changes.length === 0 ? [] : await shop.keepAll(changes, by), same };
  };
};

const lengthOf = (text: string | undefined): number => {
  const length = text === undefined ? USUAL_LENGTH : Number(text);
  if (!(length > 0 && length <= 12_000)) throw new HttpError(400, `'length' is a length of work along the bed in mm, from 0 to 12000, not '${text}'.`);
  return length;
};

const attached = (reply: FastifyReply, name: string): FastifyReply =>
  reply.type('application/json').header('content-disposition', `attachment; filename="${name}"`);

const csvAttached = (reply: FastifyReply, name: string, csvText: string): FastifyReply =>
  reply.type('text/csv; charset=utf-8').header('content-disposition', `attachment; filename="${name}"`).send(csvText);

/** The machines of a floor as it is handed in, JSON or a table, each as the parser takes it. */
const floorOf = (body: unknown): unknown => {
  if (typeof body === 'object' && body !== null && 'csv' in body) {
    const table = machinesFromCsv(checked(floorCsvSchema, body).csv);
    if (!table.ok) throw new HttpError(422, table.fault);
    return table.value;
  }
  const data = underKey('machines', asDrawn(body));
  const read = parseFloor(data);
  if (!read.ok) throw new HttpError(422, read.fault.sentence, { fault: read.fault });
  return data;
};

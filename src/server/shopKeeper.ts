import { type ConditionRecord, type DataFault, type Machine, type Rack, type Result, changeWords, demoShopData, parseCondition, parseFloor, parseRack, withCondition } from '../shop/index.js';
import type { MadeWith, NewShopRevision, ShopKind, ShopRevision, Store, StoredShopEntry } from '../store/index.js';
import type { MeasuredDeduction } from '../forming/index.js';
import { HttpError } from './httpError.js';
import { type Metal, metals as listed } from '../metal/index.js';
import { MEASURED_ID, parseMeasured } from './measuredTable.js';
import { parseOwnMetal } from './ownMetal.js';

/** What there is to plan with at this moment. */
export interface Shop {
  /** As their condition records let them be promised on. */
  readonly machines: readonly Machine[];
  /** The tools at hand: the first rack. */
  readonly rack: Rack;
  readonly racks: readonly Rack[];
  /** The shop's own measured deductions: they override the calculation. */
  readonly deductions: readonly MeasuredDeduction[];
  /** The list's metals, then the shop's own. */
  readonly metals: readonly Metal[];
  /** The revisions behind a machine, a rack and a metal. */
  readonly madeWith: (machineId: string, rackId?: string, metalId?: string) => MadeWith;
  /** One sentence for each entry that the store holds and that can no longer be read. */
  readonly unreadable: readonly string[];
}

/** The reader of one kind of entry. */
const READERS = {
  machine: (data: unknown): Result<{ readonly id: string; readonly name: string; readonly demo: boolean }, DataFault> => {
    const read = parseFloor([data]);
    return read.ok ? { ok: true, value: read.value[0]! } : read;
  },
  rack: (data: unknown): Result<{ readonly id: string; readonly name: string; readonly demo: boolean }, DataFault> => parseRack(data),
  condition: (data: unknown): Result<{ readonly id: string; readonly name: string; readonly demo: boolean }, DataFault> => {
    const read = parseCondition(data);
    return read.ok ? { ok: true, value: { id: read.value.machineId, name: `Condition of ${read.value.machineId}`, demo: read.value.demo } } : read;
  },
  deductions: parseMeasured,
  metal: parseOwnMetal,
} as const;

const NAMES: Readonly<Record<ShopKind, string>> = { machine: 'machine', rack: 'rack', condition: 'condition record of a machine', deductions: 'table of measured deductions', metal: 'metal of the shop\'s own' };

/** A revision to be kept; `after` is the one that it follows, 0 for a new entry. Without `change` it is said in words what differs. */
export interface ShopChange {
  readonly kind: ShopKind;
  readonly data: unknown;
  readonly after: number;
  readonly change?: string | undefined;
}

type Entries = readonly StoredShopEntry[];

/** Machines, racks, condition records, measured deductions and own metals of the store: read, checked, kept as revisions, and held ready for planning. */
export class ShopKeeper {
  private held: Promise<Shop> | undefined;

  constructor(private readonly store: Store) {}

  /** A store without a floor or without a rack gets the demonstration ones, marked as such, as first revisions. */
  async firstStart(): Promise<void> {
    const { machines, rack, conditions } = demoShopData();
    if ((await this.store.shopEntries('machine')).length === 0 && !(await this.touched('machine', machines.map(({ id }) => id)))) {
      for (const data of machines) await this.keep('machine', data, 0, 'demonstration data', 'program');
      for (const data of conditions) await this.keep('condition', data, 0, 'demonstration data', 'program');
    }
    if ((await this.store.shopEntries('rack')).length === 0 && !(await this.touched('rack', ['demo-rack']))) await this.keep('rack', rack, 0, 'demonstration data', 'program');
  }

  current(): Promise<Shop> {
    return (this.held ??= this.read());
  }

  /** Checks and keeps the next revision; an HttpError with the fault when the data are not as they should be, or somebody else was quicker. */
  async keep(kind: ShopKind, data: unknown, after: number, change: string | undefined, by: string): Promise<ShopRevision> {
    return (await this.keepAll([{ kind, data, after, change }], by))[0]!;
  }

  /** The same of several that belong together: all of them or none. */
  async keepAll(changes: readonly ShopChange[], by: string): Promise<readonly ShopRevision[]> {
    const entries = [];
    for (const change of changes) entries.push(await this.entryOf(change));
    const kept = await this.store.addShopRevisions(entries, by);
    if (kept === undefined) {
      let stale = 0;
      for (const [i, { kind, id, after }] of entries.entries()) if ((await this.store.shopRevisions(kind, id)).length !== after) stale = i;
      throw await this.overtaken(entries[stale]!.kind, entries[stale]!.id, changes[stale]!.after);
    }
    this.held = undefined;
    return kept;
  }

  private async entryOf({ kind, data, after, change }: ShopChange): Promise<NewShopRevision> {
    const read = READERS[kind](data);
    if (!read.ok) throw new HttpError(422, read.fault.sentence, { fault: read.fault });
    const { id, name, demo } = read.value;
    const last = (await this.store.shopRevisions(kind, id)).at(-1);
    // what was taken off may come back as if it were new
    const follows = after === 0 && last?.takenOff === true ? last.revision : after;
    const before = after === 0 ? undefined : await this.store.shopEntry(kind, id, after);
    const words = change ?? (before === undefined ? 'new' : changeWords(before.data, data));
    if (words === '') throw new HttpError(400, `Nothing changes: this is what revision ${after} of ${id} says already.`);
    return { kind, id, name, demo, data, change: words, after: follows };
  }

  async takeOff(kind: 'machine' | 'rack' | 'metal', id: string, by: string): Promise<ShopRevision> {
    const entry = await this.store.shopEntry(kind, id);
    if (kind === 'rack' && (await this.store.shopEntries('rack')).length < 2) throw new HttpError(409, 'This is the only rack of tools: hand in another one before it is taken off.');
    if (entry === undefined) throw new HttpError(404, `There is no ${NAMES[kind]} '${id}'.`);
    const [kept] = await this.store.addShopRevisions([{ kind, id, name: entry.name, demo: entry.demo, data: null, change: 'taken off', after: entry.revision }], by) ?? [];
    if (kept === undefined) throw await this.overtaken(kind, id, entry.revision);
    this.held = undefined;
    return kept;
  }

  private async overtaken(kind: ShopKind, id: string, after: number): Promise<HttpError> {
    const last = (await this.store.shopRevisions(kind, id)).at(-1);
    if (last?.takenOff) return new HttpError(409, `The ${NAMES[kind]} '${id}' was taken off with revision ${last.revision} (${last.by}): kept as a new one (after 0) it comes back.`);
    if (last !== undefined && after === 0) return new HttpError(409, `There is a ${NAMES[kind]} '${id}' already, at revision ${last.revision} (${last.by}: ${last.change}): ${kind === 'condition' ? '' : 'choose another id, or '}change that one.`);
    return last === undefined
      ? new HttpError(409, `There is no revision ${after} of the ${NAMES[kind]} '${id}' to follow: send it as a new one, after 0.`)
      : new HttpError(409, `The ${NAMES[kind]} '${id}' stands at revision ${last.revision} (${last.by}: ${last.change}), not at ${after}, on which this was changed: nothing of it is kept.`);
  }

  private async touched(kind: ShopKind, ids: readonly string[]): Promise<boolean> {
    for (const id of ids) if ((await this.store.shopRevisions(kind, id)).length > 0) return true;
    return false;
  }

  private async read(): Promise<Shop> {
    const [machines, racks, conditions, tables, metals] = await Promise.all((['machine', 'rack', 'condition', 'deductions', 'metal'] as const).map((kind) => this.store.shopEntries(kind))) as [Entries, Entries, Entries, Entries, Entries];
    const unreadable: string[] = [];
    const readable = <T>(entry: StoredShopEntry, read: Result<T, DataFault>): readonly T[] => {
      if (read.ok) return [read.value];
      unreadable.push(`Revision ${entry.revision} of the ${NAMES[entry.kind]} '${entry.id}' can no longer be read: ${read.fault.sentence}`);
      return [];
    };
    const records = new Map<string, ConditionRecord>();
    for (const entry of conditions) for (const record of readable(entry, parseCondition(entry.data))) records.set(entry.id, record);
    const floor = machines.flatMap((entry) => readable(entry, parseFloor([entry.data])).flatMap((list) => list)).map((machine): Machine => {
      const record = records.get(machine.id);
      return record === undefined ? machine : withCondition(machine, record);
    });
    const stands = racks.flatMap((entry) => readable(entry, parseRack(entry.data)));
    const numberOf = (entries: readonly StoredShopEntry[], id: string | undefined): number | null => entries.find((entry) => entry.id === id)?.revision ?? null;
    const [rack] = stands;
    if (rack === undefined) throw new HttpError(409, unreadable[0] ?? 'There is no rack of tools: hand one in first.');
    return {
      machines: floor, rack, racks: stands, unreadable, deductions: tables.flatMap((entry) => readable(entry, parseMeasured(entry.data))).flatMap(({ rows }) => rows),
      metals: [...listed, ...metals.flatMap((entry) => readable(entry, parseOwnMetal(entry.data))).map(({ metal }) => metal)],
      madeWith: (machineId, rackId = rack.id, metalId) => ({
        machineRevision: numberOf(machines, machineId), conditionRevision: records.has(machineId) ? numberOf(conditions, machineId) : null,
        rackId, rackRevision: numberOf(racks, rackId), deductionsRevision: numberOf(tables, MEASURED_ID), metalRevision: numberOf(metals, metalId),
      }),
    };
  }
}

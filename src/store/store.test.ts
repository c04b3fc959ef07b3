import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import sqlite from 'node-sqlite3-wasm';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { PieceEntry } from '../fit/index.js';
import type { Part } from '../sheet/index.js';
import type { Trial } from '../trial/index.js';
import { databaseName, type NewTrial, openStore, type Store } from './index.js';
import { lockName } from './lock.js';
import { migrations } from './migrations.js';

let dir: string;
let store: Store;

beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'brakewright-store-'));
  store = opened();
});

afterEach(async () => {
  await store.close().catch(() => undefined);
  rmSync(dir, { recursive: true, force: true });
});

describe('parts', () => {
  test('a file and its parts are kept together and survive closing', async () => {
    const bytes = new TextEncoder().encode('ISO-10303-21; a file');
    const [first, second] = await store.addReading({
      file: { name: 'two solids.step', bytes }, parts: [flat('lid', 1.5), flat('base', 2)],
      refused: [{ index: 2, code: 'cone', sentence: 'Solid 3 has a cone.' }],
    }, 'ann');
    await store.close();
    store = opened();

    expect((await store.parts()).map((part) => [part.name, part.thickness, part.bends, part.revision, part.demo, part.by]))
      .toEqual([['base', 2, 0, 1, false, 'ann'], ['lid', 1.5, 0, 1, false, 'ann']]);
    const kept = (await store.part(first!.id))!;
    expect(kept.part).toEqual(flat('lid', 1.5));
    expect(kept.refused).toEqual([{ index: 2, code: 'cone', sentence: 'Solid 3 has a cone.' }]);
    // The digest from the system's own hash, not from the store.
    expect(kept.source).toEqual({ fileName: 'two solids.step', sha256: createHash('sha256').update(bytes).digest('hex'), size: 20 });
    expect(Buffer.from((await store.originalFile(second!.id))!.bytes)).toEqual(Buffer.from(bytes));
    expect(await store.siblings(first!.id)).toEqual([first!.id, second!.id].sort());
  });

  test('a change makes a revision and leaves the former one', async () => {
    const { id } = await store.addPart(flat('lid', 1.5), 'ann');
    const second = await store.addRevision(id, flat('cover', 1.5), 'renamed', 'ben');
    expect([second!.revision, second!.name, second!.change]).toEqual([2, 'cover', 'renamed']);
    expect((await store.part(id))!.part.name).toBe('cover');
    expect((await store.part(id, 1))!.part.name).toBe('lid');
    expect((await store.revisions(id)).map((r) => [r.revision, r.name, r.by])).toEqual([[1, 'lid', 'ann'], [2, 'cover', 'ben']]);
    expect((await store.parts()).map((r) => r.revision)).toEqual([2]);
    expect(await store.addRevision('p-none', flat('x', 1), 'renamed', 'ben')).toBeUndefined();
  });

  test('nothing overwrites a revision, a trial or the audit record, not even by hand', async () => {
    const { id } = await store.addPart(flat('lid', 1.5), 'ann');
    await store.addTrial({ partId: id, partRevision: 1, metalId: 'm', ...trialOf('lid') }, 'ann');
    await store.close();
    const db = new sqlite.Database(join(dir, databaseName));
    db.exec('pragma locking_mode = exclusive');
    for (const [sql, says] of [
      [`update part_revisions set name = 'x'`, /never overwritten/], ['delete from part_revisions', /only with a purge/],
      [`update trials set verdict = 'makes'`, /never overwritten/], ['delete from trials', /only with a purge/],
      [`update events set by = 'x'`, /never changed/], ['delete from events', /never removed/],
    ] as const) expect(() => db.run(sql), sql).toThrow(says);
    db.close();
    store = opened();
  });
});

describe('purge', () => {
  test('removes every byte of the part from the folder and leaves the record', async () => {
    const secret = 'CONFIDENTIAL-BRACKET-77';
    const [read] = await store.addReading({
      file: { name: `${secret}.step`, bytes: new TextEncoder().encode(`${secret} `.repeat(3000)) }, parts: [flat(secret, 1)], refused: [],
    }, 'ann');
    const other = await store.addPart(flat('another', 1), 'ann');
    await store.addTrial({ partId: read!.id, partRevision: 1, metalId: 'm', ...trialOf(secret), defect: secret }, 'ann');
    expect(folderHolds(secret)).toBe(true);

    const purge = await store.purgePart(read!.id, 'ben');
    expect(purge).toMatchObject({ partId: read!.id, revisions: 1, trials: 1, filesRemoved: 1, filesKept: 0, by: 'ben' });
    expect(folderHolds(secret)).toBe(false);
    expect(await store.part(read!.id)).toBeUndefined();
    expect(await store.trials({ partId: read!.id })).toEqual([]);
    expect((await store.parts()).map((part) => part.id)).toEqual([other.id]);

    await store.close();
    store = opened();
    expect(await store.purge(read!.id)).toEqual(purge);
    expect((await store.events(0, 100)).map((event) => [event.what, event.subject, event.by])).toContainEqual(['part purged', read!.id, 'ben']);
    expect(await store.purgePart(read!.id, 'ben')).toBeUndefined();
  });

  test('a file from which another part comes stays until that part is purged too', async () => {
    const [one, two] = await store.addReading(
      { file: { name: 'two.step', bytes: new Uint8Array([1, 2, 3]) }, parts: [flat('one', 1), flat('two', 1)], refused: [] }, 'ann');
    expect(await store.purgePart(one!.id, 'ann')).toMatchObject({ filesRemoved: 0, filesKept: 1 });
    expect((await store.originalFile(two!.id))!.bytes).toHaveLength(3);
    expect(await store.purgePart(two!.id, 'ann')).toMatchObject({ filesRemoved: 1, filesKept: 0 });
  });

  test('a trial planned meanwhile is not kept', async () => {
    const { id } = await store.addPart(flat('lid', 1.5), 'ann');
    await store.purgePart(id, 'ann');
    expect(await store.addTrial({ partId: id, partRevision: 1, metalId: 'm', ...trialOf('lid') }, 'ann')).toBeUndefined();
  });
});

describe('trials and jobs', () => {
  test('a trial comes back whole, with its summary and its defect file', async () => {
    const { id } = await store.addPart(flat('lid', 1.5), 'ann');
    const record = (await store.addTrial({ partId: id, partRevision: 1, metalId: 'm', ...trialOf('lid'), defect: '{"a":1}' }, 'ann'))!;
    expect(record.summary).toEqual(trialOf('lid').summary);
    const kept = (await store.trial(record.id))!;
    expect(kept.trial).toEqual(trialOf('lid').trial);
    expect([kept.partName, kept.machineName, kept.verdict, kept.quantity]).toEqual(['lid', 'Demo machine', 'not decided', 10]);
    expect([kept.whose, kept.option, kept.asked]).toEqual(['ours', null, { toleranceClass: null, scribedLine: 'allowed', measured: 'taken' }]);
    expect(await store.defect(record.id)).toBe('{"a":1}');
    expect(await store.trials({ partId: 'p-none' })).toEqual([]);
  });

  test('jobs left over from a former run are marked', async () => {
    const { id } = await store.addPart(flat('lid', 1.5), 'ann');
    const asked = { partId: id, partRevision: 1, machineId: 'a', metalId: 'm', quantity: 1 };
    const [queued, running, done] = await store.addJobs([asked, asked, asked], 'ann');
    await store.jobStarted(running!.id);
    await store.jobStarted(done!.id);
    await store.jobEnded(done!.id, { state: 'done', trialId: 't-1' });
    await store.close();
    store = opened();
    expect(await store.stopLeftoverJobs('stopped by restart')).toBe(2);
    expect((await store.job(queued!.id))!).toMatchObject({ state: 'stopped', why: 'stopped by restart' });
    expect((await store.job(running!.id))!).toMatchObject({ state: 'stopped', why: 'stopped by restart' });
    expect((await store.job(done!.id))!).toMatchObject({ state: 'done', trialId: 't-1', why: null });
    expect((await store.jobs(2)).map((job) => job.id)).toEqual([done!.id, running!.id]);
  });
});

describe('pieces made', () => {
  const piece = (serial: string, measured: number): PieceEntry => ({
    kind: 'piece', serial, batch: 'B7', tools: '', instrument: 'calliper', note: '',
    figures: [{ id: 'd1', kind: 'length', what: 'over all', unit: 'mm', predicted: 80, tolerance: 0.5, measured }],
  });

  test('are kept as entries; a correction is another one, and only one, of the same trial', async () => {
    const { id } = await store.addPart(flat('lid', 1.5), 'ann');
    const trial = (await store.addTrial({ partId: id, partRevision: 1, metalId: 'm', ...trialOf('lid') }, 'ann'))!;
    const other = (await store.addTrial({ partId: id, partRevision: 1, metalId: 'm', ...trialOf('lid') }, 'ann'))!;
    const first = await store.addPiece(trial.id, piece('1', 81), null, 'ann');
    if (!first.ok) throw new Error(first.why);
    expect(await store.addPiece(other.id, piece('1', 80.1), first.record.id, 'ben')).toEqual({ ok: false, why: 'no such entry' });
    const second = await store.addPiece(trial.id, piece('1', 80.1), first.record.id, 'ben');
    expect(second).toMatchObject({ ok: true, record: { corrects: first.record.id, by: 'ben', trialId: trial.id } });
    expect(await store.addPiece(trial.id, piece('1', 80.2), first.record.id, 'ben')).toEqual({ ok: false, why: 'corrected already' });
    expect(await store.addPiece('t-none', piece('1', 80), null, 'ann')).toEqual({ ok: false, why: 'no trial' });
    await store.close();
    store = opened();
    const kept = await store.pieces(trial.id);
    expect(kept.map(({ entry, corrects }) => [entry, corrects])).toEqual([[piece('1', 81), null], [piece('1', 80.1), first.record.id]]);
    await store.close();
    const db = new sqlite.Database(join(dir, databaseName));
    db.exec('pragma locking_mode = exclusive');
    expect(() => db.run("update pieces set by = 'x'")).toThrow('never overwritten');
    expect(() => db.run('delete from pieces')).toThrow('only with a purge');
    db.close();
    store = opened();
    expect(await store.purgePart(id, 'ann')).toMatchObject({ trials: 2 });
    expect(await store.pieces(trial.id)).toEqual([]);
  });
});

describe('opening', () => {
  test('a store in use is refused with a sentence, and free again once closed', async () => {
    const second = openStore(dir);
    expect(second).toMatchObject({ ok: false, code: 'in use' });
    expect(second.ok ? '' : second.sentence).toContain(`in use by another running program (process ${process.pid})`);
    await store.close();
    store = opened();
  });

  test('the lock of a process that no longer runs is taken over, that of another computer is not', async () => {
    await store.close();
    // Linux numbers processes up to 2^22; this one cannot exist.
    const dead = { token: 'x', pid: 2 ** 22 + 1, host: hostname(), started: '1' };
    writeFileSync(join(dir, lockName), JSON.stringify(dead));
    store = opened();
    await store.close();
    writeFileSync(join(dir, lockName), JSON.stringify({ ...dead, pid: process.pid, started: 'an earlier start' }));
    if (process.platform === 'linux') {
      store = opened();
      await store.close();
    }
    writeFileSync(join(dir, lockName), JSON.stringify({ ...dead, host: 'elsewhere' }));
    const refused = openStore(dir);
    expect(refused.ok ? '' : refused.sentence).toContain('held by a program on the computer elsewhere');
    writeFileSync(join(dir, lockName), '');
    store = opened();
    expect(readdirSync(dir).filter((name) => name.startsWith(lockName))).toEqual([lockName]);
  });

  test('of trials made before it was kept in which column they stand, a job\'s is ours as it stands, a fit\'s is not known', async () => {
    await store.close();
    rmSync(join(dir, databaseName));
    const before = 7;
    const db = new sqlite.Database(join(dir, databaseName));
    db.exec('pragma locking_mode = exclusive');
    for (const step of migrations.slice(0, before)) db.exec(step);
    db.exec(`pragma user_version = ${before};
      insert into parts values ('p', 0, ''); insert into part_revisions values ('p', 1, 'lid', 1, 0, null, null, '{}', '[]', '', '', '');`);
    for (const id of ['t-job', 't-fit']) {
      db.run(`insert into trials (id, part_id, part_revision, part_name, machine_id, machine_name, metal_id, metal_name, quantity, verdict, summary_json, trial_json, created_at, by)
        values (?, 'p', 1, 'lid', 'a', 'A', 'm', 'M', 1, 'makes', '{}', '{}', '', '')`, [id]);
    }
    db.exec("insert into jobs values ('j', 'p', 1, 'a', 'm', 1, 'done', null, 't-job', '', '', '')");
    db.close();
    store = opened();
    expect((await store.trials()).map(({ id, whose, option, asked }) => [id, whose, option, asked])).toEqual([['t-fit', null, null, null], ['t-job', 'ours', null, null]]);
  });

  test('a newer schema and a file that is no database are refused', async () => {
    await store.close();
    const db = new sqlite.Database(join(dir, databaseName));
    db.exec('pragma locking_mode = exclusive');
    db.exec('pragma user_version = 99');
    db.close();
    expect(openStore(dir)).toMatchObject({ ok: false, code: 'newer' });
    writeFileSync(join(dir, databaseName), 'not a database at all '.repeat(500));
    expect(openStore(dir)).toMatchObject({ ok: false, code: 'damaged' });
  });
});

function opened(): Store {
  const result = openStore(dir);
  if (!result.ok) throw new Error(result.sentence);
  return result.store;
}

function folderHolds(text: string): boolean {
  return readdirSync(dir).some((name) => name.startsWith(databaseName) && !name.endsWith('.lock') && readFileSync(join(dir, name)).includes(text));
}

function flat(name: string, thickness: number): Part {
  return { name, thickness, plates: [], bends: [], assumptions: [], unit: 'mm' };
}

/** Only what the store reads of a machine is filled in; the store keeps the rest as it comes. */
function trialOf(name: string): Pick<NewTrial, 'trial' | 'summary' | 'column' | 'asked'> {
  const trial: Trial = {
    format: 'brakewright trial 1', verdict: 'not decided', sheet: { part: flat(name, 1), allowances: [] },
    metal: { id: 'm', name: 'Demo metal' }, quantity: 10, machine: { id: 'a', name: 'Demo machine' } as Trial['machine'],
    punches: [], dies: [], risers: [], stations: [], steps: [], seconds: 0, timeModel: [], computeSeconds: 0, bound: 0, proven: false,
    model: 'none', reasons: [{ code: 'nothing to bend', sentence: 'Nothing to bend.', bends: [] }], remedies: [],
    proof: { checked: false, passed: false, smallestClearance: null, largestMotion: null, findings: [] }, counts: {}, warnings: [], assumptions: [],
  };
  const summary = {
    steps: 0, stations: 0, seconds: 0, bound: 0, proven: false, proof: { checked: false, passed: false }, clearance: null,
    reason: 'Nothing to bend.', remedy: null, tightest: null, defect: false,
  };
  return { trial, summary, column: { whose: 'ours', option: null }, asked: { toleranceClass: null, scribedLine: 'allowed', measured: 'taken' } };
}

describe('machines, racks and condition records', () => {
  const entry = { kind: 'machine', id: 'm', name: 'M', demo: false, data: { id: 'm', throat: 1 }, change: 'new', after: 0 } as const;

  test('a change is the next revision, and only of the one that it follows', async () => {
    expect(await store.addShopRevisions([entry], 'ann')).toMatchObject([{ revision: 1, takenOff: false }]);
    expect(await store.addShopRevisions([{ ...entry, data: { id: 'm', throat: 2 }, change: 'throat', after: 1 }], 'ben')).toMatchObject([{ revision: 2 }]);
    expect(await store.addShopRevisions([{ ...entry, after: 1 }], 'cy')).toBeUndefined();
    // of several all are kept or none
    expect(await store.addShopRevisions([{ ...entry, kind: 'rack' }, { ...entry, after: 1 }], 'cy')).toBeUndefined();
    expect(await store.shopEntry('rack', 'm')).toBeUndefined();
    expect((await store.shopEntry('machine', 'm', 1))!.data).toEqual({ id: 'm', throat: 1 });
    expect((await store.shopEntries('machine')).map(({ revision, data }) => [revision, data])).toEqual([[2, { id: 'm', throat: 2 }]]);
    expect((await store.shopRevisions('machine', 'm')).map(({ revision, by, change }) => [revision, by, change])).toEqual([[1, 'ann', 'new'], [2, 'ben', 'throat']]);
    await store.addShopRevisions([{ ...entry, data: null, change: 'taken off', after: 2 }], 'ann');
    expect(await store.shopEntries('machine')).toEqual([]);
    expect(await store.shopEntry('machine', 'm')).toBeUndefined();
    expect(await store.shopEntries('rack')).toEqual([]);
  });

  test('nothing overwrites or removes one, not even by hand', async () => {
    await store.addShopRevisions([entry], 'ann');
    await store.close();
    const db = new sqlite.Database(join(dir, databaseName));
    db.exec('pragma locking_mode = exclusive');
    expect(() => db.run("update shop_revisions set change = 'x'")).toThrow('never overwritten');
    expect(() => db.run('delete from shop_revisions')).toThrow('never removed');
    db.close();
    store = opened();
  });
});

import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openStore } from '../src/store/index.js';

/**
 * How the writer dies. 'clock': kill -9 from outside after a random time. 'operation': by its own kill -9 at a random file
 * operation, half-way through a write. 'power cut': the same, and only what had been flushed to the disk is left.
 */
export type Death = 'clock' | 'operation' | 'power cut';

export interface KillReport {
  readonly rounds: number;
  readonly acknowledged: number;
  /** What was acknowledged and is not there, half-done changes, refusals to open: one sentence each. */
  readonly losses: readonly string[];
}

// A benchmark runs compiled, from dist/bench/; the writer stays where it is.
const writer = fileURLToPath(new URL('./kill-writer.mjs', import.meta.url.replace('/dist/bench/', '/')));
/** ms after its first acknowledged change within which a writer of the 'clock' kind is killed. */
const longestLife = 400;
/** File operations after its first word within which a writer of the other kinds dies: some 40 changes. */
const mostOperations = 900;

interface Spoken {
  readonly kept: Map<string, { readonly sha256: string; readonly ids: readonly string[] }>;
  readonly tried: Map<string, number>;
  readonly revised: Map<string, string>;
  readonly purging: Set<string>;
  readonly purged: Set<string>;
}

/** Rounds of writing, dying and opening again, all on one store per kind, so that each recovery rests on the one before. */
export async function killRounds(death: Death, rounds: number, seed: number): Promise<KillReport> {
  const root = mkdtempSync(join(tmpdir(), 'brakewright-kill-'));
  const spoken: Spoken = { kept: new Map(), tried: new Map(), revised: new Map(), purging: new Set(), purged: new Set() };
  const losses: string[] = [];
  let dir = join(root, '0');
  mkdirSync(dir);
  try {
    for (let round = 0; round < rounds && losses.length === 0; round++) {
      const random = fraction(seed, round);
      const shadow = join(root, String(round + 1));
      // The check before has closed the store, so what lies in the folder now is what the disk holds.
      if (death === 'power cut') cpSync(dir, shadow, { recursive: true });
      await live(dir, seed * 1000 + round, death, random, shadow, spoken, losses);
      if (death === 'power cut') dir = shadow;
      const where = `${death}, seed ${seed}, round ${round}`;
      await check(dir, spoken, losses, where).catch((error: Error) => losses.push(`${where}: the store cannot be read: ${error.message}`));
    }
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
  return { rounds, acknowledged: spoken.kept.size + spoken.revised.size + spoken.purged.size, losses };
}

function live(
  dir: string, seed: number, death: Death, random: number, shadow: string, spoken: Spoken, losses: string[],
): Promise<void> {
  const dieAt = death === 'clock' ? 0 : 1 + Math.floor(random * mostOperations);
  const child = spawn(process.execPath, [writer, dir, String(seed), String(dieAt), ...(death === 'power cut' ? [shadow] : [])],
    { stdio: ['ignore', 'pipe', 'pipe'] });
  let rest = '';
  let complaint = '';
  let doomed: NodeJS.Timeout | undefined;
  child.stderr.on('data', (data: Buffer) => (complaint += data.toString()));
  child.stdout.on('data', (data: Buffer) => {
    const lines = (rest + data.toString()).split('\n');
    rest = lines.pop()!;
    for (const line of lines) {
      if (line.startsWith('kept ') && death === 'clock') doomed ??= setTimeout(() => child.kill('SIGKILL'), random * longestLife);
      hear(line, spoken, losses);
    }
  });
  return new Promise((resolve) => {
    child.on('close', (_code, signal) => {
      if (signal !== 'SIGKILL') losses.push(`The writer ended by itself: ${complaint.slice(0, 500)}`);
      resolve();
    });
  });
}

function hear(line: string, spoken: Spoken, losses: string[]): void {
  const [word, a, b, c] = line.split(' ');
  if (word === 'trying') spoken.tried.set(a!, Number(b));
  else if (word === 'kept') spoken.kept.set(a!, { sha256: b!, ids: c!.split(',') });
  else if (word === 'revised') spoken.revised.set(a!, line.slice(`revised ${a} `.length));
  else if (word === 'purging') spoken.purging.add(a!);
  else if (word === 'purged') spoken.purged.add(a!);
  else if (word !== 'ready') losses.push(line);
}

/** Everything acknowledged is there, everything tried is there as a whole or not at all, everything purged is gone. */
async function check(dir: string, spoken: Spoken, losses: string[], where: string): Promise<void> {
  const opened = openStore(dir);
  if (!opened.ok) {
    losses.push(`${where}: ${opened.sentence}`);
    return;
  }
  const { store } = opened;
  const parts = await store.parts();
  const byTag = new Map<string, number>();
  for (const part of parts) {
    const tag = part.source!.fileName.replace('.step', '');
    byTag.set(tag, (byTag.get(tag) ?? 0) + 1);
  }
  for (const [tag, { sha256, ids }] of spoken.kept) {
    for (const id of ids) {
      const part = await store.part(id);
      const purge = await store.purge(id);
      if (spoken.purged.has(id) ? purge === undefined || part !== undefined : part === undefined && !(spoken.purging.has(id) && purge !== undefined)) {
        losses.push(`${where}: part ${id} of ${tag} ${spoken.purged.has(id) ? 'was purged and is back' : 'is lost'}`);
      }
      if (part === undefined) continue;
      const name = spoken.revised.get(id);
      if (name !== undefined && part.part.name !== name) losses.push(`${where}: the revision of ${id} is lost`);
      const file = await store.originalFile(id);
      if (file === undefined || createHash('sha256').update(file.bytes).digest('hex') !== sha256) {
        losses.push(`${where}: the file of ${tag} is lost or damaged`);
      }
    }
  }
  for (const [tag, count] of spoken.tried) {
    const found = byTag.get(tag) ?? 0;
    if (!spoken.kept.has(tag) && found !== 0 && found !== count) losses.push(`${where}: ${tag} was kept by half: ${found} of ${count} parts`);
  }
  const intact = await store.intact();
  if (intact !== 'ok') losses.push(`${where}: the database says ${intact}`);
  await store.close();
}

/** A seeded number between 0 and 1, by hashing. */
function fraction(seed: number, round: number): number {
  return createHash('sha256').update(`${seed}/${round}`).digest().readUInt32BE(0) / 2 ** 32;
}

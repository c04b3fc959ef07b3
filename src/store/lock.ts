import { randomUUID } from 'node:crypto';
import { linkSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';

export type Lock = { readonly ok: true; release(): void } | { readonly ok: false; readonly sentence: string };

interface Owner {
  readonly token: string;
  readonly pid: number;
  readonly host: string;
  /** When the process began, in the kernel's own count; null where the system does not tell. */
  readonly started: string | null;
}

export const lockName = 'store.lock';
/** A dead owner's lock is taken over; more rounds than this means that others do the same at this moment. */
const maxRounds = 5;

/**
 * Keeps a second program off a store. Node has no file lock that dies with its process, so the lock is a file that names
 * its owner, put in place by one atomic link; an owner that no longer runs loses it.
 */
export function takeLock(dir: string): Lock {
  const path = join(dir, lockName);
  const me: Owner = { token: randomUUID(), pid: process.pid, host: hostname(), started: processStart(process.pid) };
  const draft = `${path}.${me.token}`;
  writeFileSync(draft, JSON.stringify(me));
  try {
    for (let round = 0; round < maxRounds; round++) {
      if (linked(draft, path)) return { ok: true, release: () => release(path, me.token) };
      const owner = readOwner(path);
      if (owner === undefined) continue;
      if (owner !== 'unreadable' && mayRun(owner)) return { ok: false, sentence: refusal(dir, owner) };
      moveAside(path, `${draft}.old`, owner);
    }
    return { ok: false, sentence: `The store in ${dir} is being opened by another program at this moment; try again.` };
  } finally {
    rmSync(draft, { force: true });
  }
}

function refusal(dir: string, owner: Owner): string {
  return owner.host === hostname()
    ? `The store in ${dir} is in use by another running program (process ${owner.pid}); stop that one first or choose another folder.`
    : `The store in ${dir} is held by a program on the computer ${owner.host}; stop that one first, or remove ${lockName} if it no longer runs.`;
}

function linked(draft: string, path: string): boolean {
  try {
    linkSync(draft, path);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}

/** Undefined when the file has just gone; 'unreadable' when a crash left it empty or torn. */
function readOwner(path: string): Owner | 'unreadable' | undefined {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
  try {
    return JSON.parse(text) as Owner;
  } catch {
    return 'unreadable';
  }
}

/** Another computer's processes cannot be asked, so its lock stands. A reused process number shows by its start. */
function mayRun(owner: Owner): boolean {
  if (owner.host !== hostname()) return true;
  try {
    process.kill(owner.pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
  const started = processStart(owner.pid);
  return started === null || owner.started === null || started === owner.started;
}

function processStart(pid: number): string | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // proc(5): the name in brackets may hold blanks, so count fields after the last bracket; field 22 is the start.
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? null;
  } catch {
    return null;
  }
}

/** Moves a dead owner's lock away. If a live one slipped in between, it gets its place back. */
function moveAside(path: string, aside: string, dead: Owner | 'unreadable'): void {
  try {
    renameSync(path, aside);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return;
    throw error;
  }
  const moved = readOwner(aside);
  const same = dead === 'unreadable' ? moved === 'unreadable' : typeof moved === 'object' && moved.token === dead.token;
  if (!same) linked(aside, path);
  rmSync(aside, { force: true });
}

function release(path: string, token: string): void {
  const owner = readOwner(path);
  if (typeof owner === 'object' && owner.token === token) rmSync(path, { force: true });
}

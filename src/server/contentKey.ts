import { createHash } from 'node:crypto';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { FitAsked } from '../fit/index.js';
import type { TrialInput } from '../trial/index.js';
import { workerFile } from './workerFile.js';

const hash = (text: string | Uint8Array): string => createHash('sha256').update(text).digest('hex');

/** Keys in order, so that the same data always reads the same. */
const ordered = (_: string, value: unknown): unknown =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))) : value;

/** Racks and machines are asked about a thousand times over: each is read once. */
const known = new WeakMap<object, string>();
const contentOf = (data: object): string => {
  const before = known.get(data);
  if (before !== undefined) return before;
  const made = hash(JSON.stringify(data, ordered));
  known.set(data, made);
  return made;
};

/** The rooms whose code decides what a trial says. */
const ROOMS = ['geometry', 'metal', 'forming', 'sheet', 'shop', 'trial', 'proof', 'fit'];
let version: string | undefined;

/** Of the compiled code that the workers run. */
const codeVersion = (): string => {
  if (version !== undefined) return version;
  const dist = fileURLToPath(new URL('../', workerFile(import.meta.url, 'trialWorker')));
  const files = ROOMS.flatMap((room) => readdirSync(join(dist, room), { recursive: true, encoding: 'utf8' }).filter((f) => f.endsWith('.js')).sort().map((f) => join(room, f)));
  return (version = hash(files.map((f) => `${f} ${hash(readFileSync(join(dist, f)))}`).join('\n')));
};

const NONE: NonNullable<TrialInput['deductions']> = [];

/** What a cell of the fit board depends on, as one short name: part, machine, rack, metal, quantity, limits, wishes, measured deductions, what is asked, from which machine's name (that the cell tells) a way is carried over, and the code. */
export const contentKey = ({ part, machine, rack, metal, quantity, limits, wishes, deductions = NONE }: TrialInput, asked: FitAsked, from?: string): string =>
  hash([contentOf(part), contentOf(machine), contentOf(rack), contentOf(metal), quantity, JSON.stringify([limits ?? null, wishes ?? null], ordered), contentOf(deductions), JSON.stringify([asked, from ?? null], ordered), codeVersion()].join(' '));

import type { Trial } from '../trial/index.js';
import { Fault } from './fault.js';
import { readBytes } from './readFile.js';
import { trialSchema } from './trialSchema.js';

/** What a trial speaks of by name or number and does not hold: the first such thing, or null. */
const dangling = (trial: Trial): string | null => {
  const { part, allowances } = trial.sheet;
  const bends = new Set(part.bends.map(({ id }) => id));
  const stations = new Map(trial.stations.map((station) => [station.id, station]));
  const punches = new Set(trial.punches.map(({ id }) => id));
  const dies = new Set(trial.dies.map(({ id }) => id));
  const noPlate = (plate: number): boolean => !Number.isInteger(plate) || part.plates[plate] === undefined;
  if (allowances.length !== part.bends.length) return `${allowances.length} flat lengths for ${part.bends.length} bends`;
  const loose = part.bends.find(({ sides }) => sides.some(({ plate }) => noPlate(plate)));
  if (loose) return `bend ${loose.id} joins a plate that is not there`;
  for (const station of trial.stations) {
    if (!punches.has(station.punch)) return `station ${station.id} holds punch '${station.punch}', which is not there`;
    if (!dies.has(station.die)) return `station ${station.id} holds die '${station.die}', which is not there`;
  }
  for (const step of trial.steps) {
    const lost = step.bends.find((id) => !bends.has(id));
    if (lost !== undefined || step.bends.length === 0) return `step ${step.number} bends '${lost ?? ''}', which is not there`;
    if (!stations.has(step.station)) return `step ${step.number} stands in station '${step.station}', which is not there`;
    if (!punches.has(step.punch)) return `step ${step.number} takes punch '${step.punch}', which is not there`;
    if (!dies.has(step.die)) return `step ${step.number} takes die '${step.die}', which is not there`;
    if (step.stop.kind !== 'none' && noPlate(step.stop.plate)) return `step ${step.number} stops at plate ${step.stop.plate}, which is not there`;
  }
  return null;
};

const parsed = (path: string, bytes: Uint8Array): unknown => {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    throw new Fault(`${path}: this is no JSON, so no trial.`);
  }
};

/** The trial that a file holds, whole and consistent. */
export const readTrial = async (path: string): Promise<Trial> => {
  const checked = trialSchema.safeParse(parsed(path, await readBytes(path)));
  if (!checked.success) {
    const issue = checked.error.issues[0]!;
    const where = issue.path.length === 0 ? 'the whole' : issue.path.join('.');
    throw new Fault(`${path}: this is no trial of the format 'brakewright trial 1' (${where}: ${issue.message}).`);
  }
  const fault = dangling(checked.data);
  if (fault !== null) throw new Fault(`${path}: the trial contradicts itself: ${fault}.`);
  return checked.data;
};

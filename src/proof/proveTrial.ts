import type { Punch, Die } from '../shop/index.js';
import type { ProofSummary, Station, Step, Trial } from '../trial/index.js';
import type { Body } from './body.js';
import { faceHalf } from './closing.js';
import { type Kernel, Pool, loadKernel } from './engine.js';
import { plateNames } from './fold.js';
import { layoutFindings } from './layoutFindings.js';
import { type Metal, makeMetal } from './metal.js';
import type { PhaseName } from './phase.js';
import { dieOf, fingerBodies, pressBodies, punchOf } from './pressBodies.js';
import { ramFindings } from './ramFindings.js';
import { flangeFindings } from './flangeFindings.js';
import { forceFindings, loadFindings } from './forceFindings.js';
import { finalFindings, reachFindings, stepFindings } from './recordFindings.js';
import { replayStep } from './replayStep.js';
import { collinearFindings, coverFindings } from './seatFindings.js';
import { makeSetting } from './setting.js';
import { type StepLog, newLog } from './stepLog.js';
import { offsetPlates } from './stepping.js';
import { offsetFindings } from './offsetFindings.js';
import { stopFindings } from './stopFindings.js';

const RADIANS = Math.PI / 180;

/** What the replay of one step found. */
export interface ProvenStep {
  readonly number: number;
  /** mm: the least distance between things that shall not touch; 20 where nothing came as near as that. */
  readonly smallestClearance: number;
  readonly where: string;
  readonly phase: PhaseName | '';
  /** mm: the furthest that a point moved between two looks at a pair that shall not touch; 0 in a straight phase. */
  readonly largestMotion: number;
}

export interface ProofOptions {
  readonly signal?: AbortSignal;
  /** Called after each phase with the share done, 0 to 1; awaited, so that a caller may let others have their turn. */
  readonly onProgress?: (share: number) => void | Promise<void>;
  /** Numbers of the steps to replay; the others are taken to be done as written. All by default. */
  readonly steps?: readonly number[];
}

/** Phases of a step, about: for the share done. */
const PHASES = 8;

interface Ready {
  readonly station: Station;
  readonly punch: Punch;
  readonly die: Die;
  readonly bends: readonly number[];
}

/** An offset is pressed between two halves of one tool that stand the same way round, made for this sheet, over two opposite bends of one web. */
const offsetFault = ({ sheet }: Trial, step: Step, station: Station, punch: Punch, die: Die, bends: readonly number[]): string | null => {
  const say = (s: string): string => `Step ${step.number}: ${s}`;
  const [p, d] = [punch.offset, die.offset];
  if (!p || !d || p.height !== d.height || p.insideRadius !== d.insideRadius) return say(`an offset is pressed between both halves of one offset tool; station ${station.id} holds ${punch.name} and ${die.name}.`);
  if (station.punchFacing !== station.dieFacing) return say(`the offset punch of station ${station.id} stands ${station.punchFacing}, its die ${station.dieFacing}.`);
  if (sheet.part.thickness < p.leastThickness || sheet.part.thickness > p.mostThickness) return say(`${punch.name} is for ${p.leastThickness} to ${p.mostThickness} mm of sheet; the part has ${sheet.part.thickness} mm.`);
  const plates = offsetPlates(sheet, bends);
  if (plates === null) return say(`${step.bends.join(' and ')} are no offset: two opposite bends of one web.`);
  // the flange beyond the second bend lies on the high land: drawn at the back
  const highAtGauge = sheet.part.bends[bends[0]!]!.sides[step.gaugeSide].plate === plates.web;
  return highAtGauge === (station.dieFacing === 'as drawn') ? null : say(`the flange that comes out higher lies over the low land of ${die.name} as it stands.`);
};

/** The step's station, tools and bends, or what is missing. */
const readyStep = (trial: Trial, step: Step): Ready | string => {
  const station = trial.stations.find((s) => s.id === step.station);
  if (station === undefined) return `Step ${step.number}: there is no station ${step.station}.`;
  const [punch, die] = [punchOf(trial, station), dieOf(trial, station)];
  if (punch === undefined || die === undefined) return `Step ${step.number}: station ${station.id} lacks its punch or die.`;
  const bends = step.bends.map((id) => trial.sheet.part.bends.findIndex((b) => b.id === id));
  if (bends.length === 0 || bends.includes(-1)) return `Step ${step.number}: it names a bend that the part does not have.`;
  const [closes, flat] = [step.kind === 'hem close', punch.shape === 'flattening' && die.shape === 'anvil'];
  if (closes && !flat) return `Step ${step.number}: a hem is closed between a flattening punch and an anvil; station ${station.id} holds ${punch.name} and ${die.name}.`;
  if (step.kind === 'offset bend') return offsetFault(trial, step, station, punch, die, bends) ?? { station, punch, die, bends };
  if (!closes && (punch.shape === 'offset' || punch.shape === 'flattening' || die.shape !== 'V')) return `Step ${step.number}: station ${station.id} with ${punch.name} and ${die.name} bends nothing in a V.`;
  return { station, punch, die, bends };
};

/** mm from the bending plane to the end of the wider of both tools. */
const landHalf = ({ punch, die }: Ready): number => Math.max(...[...punch.profile, ...die.profile].map((v) => Math.abs(v.x)));

const provenStep = (log: StepLog): ProvenStep => ({
  number: log.number,
  smallestClearance: log.smallest,
  where: log.where,
  phase: log.phase,
  largestMotion: log.largestMotion,
});

interface Replay {
  readonly kernel: Kernel;
  readonly metal: Metal;
  readonly trial: Trial;
  readonly press: readonly Body[];
  readonly names: readonly string[];
  readonly fingers: (stop: Step['stop']) => readonly Body[];
}

const proveStep = async (
  replay: Replay,
  step: Step,
  ready: Ready,
  angles: readonly number[],
  pause: () => Promise<void>,
): Promise<StepLog> => {
  const { kernel, metal, trial, press, names } = replay;
  const log = newLog(step.number);
  const inRadians = angles.map((a) => a * RADIANS);
  const setting = makeSetting({ step, machine: trial.machine, sheet: trial.sheet }, ready, ready.bends, metal, inRadians, names);
  log.findings.push(
    ...reachFindings(step, setting.vee, trial.sheet.part.thickness, faceHalf(ready.punch), landHalf(ready)),
    ...offsetFindings(setting),
    ...collinearFindings(setting, metal, inRadians),
    ...coverFindings(setting, metal, inRadians),
    ...flangeFindings(kernel, setting, metal),
    ...loadFindings(setting, metal, inRadians),
    ...stopFindings(kernel, setting),
    ...ramFindings(setting, trial.machine, press),
  );
  // with no stop the gauge has no place in the record: it is taken to be out of the way
  const standing = press.map((b): Body => (b.ears?.state === 'hanging' && b.station === step.station ? { ...b, carrier: 'ears' } : b));
  const bodies =
    step.stop.kind === 'none' ? standing.filter((b) => b.carrier !== 'gauge') : [...standing, ...replay.fingers(step.stop)];
  const dieTops = new Map(trial.stations.map((s) => [s.id, s.dieTop]));
  await replayStep(kernel, metal, setting, bodies, dieTops, inRadians, log, pause);
  return log;
};

/**
 * Replays a finished trial with another engine than the planner's: solids of the part's true geometry and of the press,
 * general booleans and distances, poses composed here from the formulas of docs/kinematics.md. `passed` only when
 * nothing is found. What is checked and what is not: docs/proof.md. Rejects with the signal's reason when it is aborted.
 *
 * @example const { passed, findings } = await proveTrial(trial);
 */
export const proveTrial = async (
  trial: Trial,
  options: ProofOptions = {},
): Promise<ProofSummary & { readonly perStep: readonly ProvenStep[] }> => {
  const kernel = await loadKernel();
  const pool = new Pool();
  const { part } = trial.sheet;
  try {
    const most = part.bends.map((b) =>
      Math.max(b.bendAngle, ...trial.steps.filter((s) => s.bends.includes(b.id)).map((s) => s.bendAngleUnderLoad)) * RADIANS,
    );
    const fingers = new Map<string, readonly Body[]>();
    const replay: Replay = {
      kernel,
      metal: makeMetal(kernel, pool, trial.sheet, most),
      trial,
      press: pressBodies(kernel, pool, trial),
      names: plateNames(trial.sheet),
      fingers: ({ z, skew }) => {
        const key = `${z.join('/')}|${skew ?? 0}`;
        const known = fingers.get(key) ?? fingerBodies(kernel, pool, trial.machine, z, skew);
        fingers.set(key, known);
        return known;
      },
    };
    const findings = layoutFindings(trial);
    const logs: StepLog[] = [];
    const angles = part.bends.map(() => 0);
    let done = 0;
    const pause = async (): Promise<void> => {
      done++;
      await options.onProgress?.(Math.min(1, done / (PHASES * trial.steps.length)));
      options.signal?.throwIfAborted();
    };
    options.signal?.throwIfAborted();
    for (const [i, step] of trial.steps.entries()) {
      done = i * PHASES;
      if (step.number !== i + 1) findings.push(`Step ${step.number} stands in place ${i + 1} of the order.`);
      const ready = readyStep(trial, step);
      if (typeof ready === 'string') {
        findings.push(ready);
        continue;
      }
      const wrong = [...stepFindings(trial, step, ready.station, ready.bends, angles), ...forceFindings(trial, step)];
      findings.push(...wrong);
      if (options.steps === undefined || options.steps.includes(step.number)) {
        const log = await proveStep(replay, step, ready, angles, pause);
        logs.push(log);
        findings.push(...log.findings);
      }
      for (const b of ready.bends) angles[b] = step.bendAngle;
    }
    findings.push(...finalFindings(trial, angles));
    const least = logs.reduce<StepLog | null>((a, b) => (a === null || b.smallest < a.smallest ? b : a), null);
    await options.onProgress?.(1);
    return {
      checked: true,
      passed: findings.length === 0,
      smallestClearance: least?.smallest ?? null,
      ...(least === null ? {} : { where: least.where }),
      largestMotion: logs.length === 0 ? null : Math.max(...logs.map((l) => l.largestMotion)),
      findings,
      perStep: logs.map(provenStep),
    };
  } finally {
    pool.freeAll();
  }
};

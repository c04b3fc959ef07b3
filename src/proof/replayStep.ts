import { type Vec3, apply, compose } from '../geometry/index.js';
import type { Body } from './body.js';
import { cornersOf } from './box.js';
import { type Element, onOwnSide, relOf } from './element.js';
import type { Kernel } from './engine.js';
import type { Metal } from './metal.js';
import { type Question } from './pair.js';
import type { Phase, TurnPhase } from './phase.js';
import { type Ends, phasesOf } from './phases.js';
import { checkGauge } from './pressPairs.js';
import { ruleFor } from './rules.js';
import type { Setting } from './setting.js';
import { type StepLog, mm } from './stepLog.js';
import { Sweeps, checkStraight } from './straight.js';
import { STOP_DEPTH, STOP_PUSH } from './tolerances.js';
import { checkPlates, checkTurn } from './turning.js';

/** Pairs of metal on either side of the running bends, as far as they can meet at all. */
const platePairs = (setting: Setting): (readonly [Element, Element])[] => {
  const { elements, sheet, running } = setting;
  const moving = (e: Element): string => (e.running ? 'zone' : e.wing);
  const joined = (a: Element, b: Element): boolean => {
    const bendOf = (e: Element, other: Element): boolean =>
      e.kind === 'zone' && other.kind === 'plate' && sheet.part.bends[e.index]!.sides.some((s) => s.plate === other.index);
    return bendOf(a, b) || bendOf(b, a);
  };
  /** The two wings of one bend, each on its own side of the line: they only meet when folded flat on each other. */
  const cannotMeet = (a: Element, b: Element): boolean =>
    a.kind === 'plate' &&
    b.kind === 'plate' &&
    [...running].some((i) => {
      const [p, q] = sheet.part.bends[i]!.sides;
      const ofBend = (p.plate === a.index && q.plate === b.index) || (p.plate === b.index && q.plate === a.index);
      return ofBend && onOwnSide(sheet, i, 0) && onOwnSide(sheet, i, 1);
    });
  return elements.flatMap((a, i) =>
    elements
      .slice(i + 1)
      .filter((b) => moving(a) !== moving(b) && !joined(a, b) && !cannotMeet(a, b))
      .map((b) => [a, b] as const),
  );
};

const checkPlatePairs = (setting: Setting, bend: TurnPhase, log: StepLog): void => {
  for (const [a, b] of platePairs(setting)) {
    // the moving one is bounded as seen from the other's wing; of two wings either may be taken
    const mover = a.running ? a : b;
    checkPlates(bend, a, b, (x0, x1) => setting.travel.fromWing(mover, x0, x1), log);
  }
};

/** Where the part is brought in and let go, it must be clear of the press: in front of the tools or beside them. */
const checkEnds = (setting: Setting, ends: Ends, bodies: readonly Body[], log: StepLog): void => {
  const own = bodies.filter((b) => b.station === setting.station.id).flatMap((b) => b.points);
  if (own.length === 0) return;
  const front = Math.min(...own.map((p) => p[1]));
  const [left, right] = [Math.min(...own.map((p) => p[0])), Math.max(...own.map((p) => p[0]))];
  for (const [word, { displaced, x }] of [['way in starts', ends.start], ['way out ends', ends.end]] as const) {
    const places = setting.elements.flatMap((e) => {
      const pose = compose(displaced, compose(setting.root(e.wing, x), relOf(e, x)));
      return cornersOf(e.box(x, 0)).map((p): Vec3 => apply(pose, p));
    });
    const [back, along] = [places.map((p) => p[1]), places.map((p) => p[0])];
    if (Math.max(...back) <= front || Math.max(...along) <= left || Math.min(...along) >= right) continue;
    log.findings.push(
      `Step ${log.number}: the ${word} with the part still between punch and die of station ${setting.station.id}, ` +
        `${mm(Math.max(...back) - front)} mm behind the tools' front.`,
    );
  }
};

/** Ears hang but in the bend itself; those of other stations hang throughout. */
const standsIn = (setting: Setting, body: Body, phase: Phase): boolean => {
  const out = body.station === setting.station.id && (phase.name === 'bend' || phase.name === 'retract');
  return body.ears!.state === (out ? 'out' : 'hanging');
};

const checkPhase = (
  kernel: Kernel,
  setting: Setting,
  phase: Phase,
  bodies: readonly Body[],
  dieTops: ReadonlyMap<string, number>,
  log: StepLog,
): void => {
  const t = setting.sheet.part.thickness;
  const sweeps = phase.kind === 'straight' ? new Sweeps(kernel, phase) : null;
  for (const body of bodies) {
    if (body.ears !== undefined && !standsIn(setting, body, phase)) continue;
    if (phase.kind === 'straight' && phase.sweep[body.carrier] === undefined) continue;
    for (const element of setting.elements) {
      const q: Question = {
        kernel,
        phase,
        element,
        body,
        rule: ruleFor(setting, phase.name, element, body, dieTops),
        reach: setting.step.contactReach,
        stopDepth: phase.kind === 'turn' && phase.name === 'bend' ? STOP_PUSH : STOP_DEPTH,
        own: body.station === setting.station.id,
      };
      if (sweeps !== null) checkStraight(q, sweeps, t, log);
      else checkTurn(q, t, log);
    }
  }
  sweeps?.freeAll();
};

/**
 * Takes the part through one step. Straight phases are swept as a whole; the bend and tilts go pose by pose. `pause` is
 * awaited after each phase.
 */
export const replayStep = async (
  kernel: Kernel,
  metal: Metal,
  setting: Setting,
  bodies: readonly Body[],
  dieTops: ReadonlyMap<string, number>,
  restAngles: readonly number[],
  log: StepLog,
  pause: () => Promise<void>,
): Promise<void> => {
  const { phases, ends } = phasesOf(setting);
  checkEnds(setting, ends, bodies, log);
  checkGauge(kernel, phases, bodies, log);
  for (const phase of phases) {
    checkPhase(kernel, setting, phase, bodies, dieTops, log);
    if (phase.kind === 'turn' && phase.name === 'bend') checkPlatePairs(setting, phase, log);
    metal.forgetZones(restAngles);
    await pause();
  }
};

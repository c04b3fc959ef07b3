import type { Body } from './body.js';
import type { Element } from './element.js';
import type { Rule } from './pair.js';
import type { PhaseName } from './phase.js';
import type { Setting } from './setting.js';
import { SAME_HEIGHT } from './tolerances.js';

/** Plates that share a running bend's line, and the running zones. */
const besideBend = (setting: Setting, e: Element): boolean =>
  e.kind === 'zone' || e.running
    ? e.running
    : [...setting.running].some((i) => setting.sheet.part.bends[i]!.sides.some((s) => s.plate === e.index));

/** Flat metal that carries on a wing; not the curved foot of a bend that rises from it. */
const inPlane = (setting: Setting, e: Element): boolean => {
  if (e.kind === 'plate') return setting.level.has(e);
  const plates = setting.elements.filter((p) => p.kind === 'plate' && setting.level.has(p)).map((p) => p.index);
  return setting.sheet.part.bends[e.index]!.sides.every((s) => plates.includes(s.plate));
};

/** What is asked of a pair in a phase: docs/kinematics.md, 'What may touch', and docs/proof.md. */
export const ruleFor = (
  setting: Setting,
  phase: PhaseName,
  e: Element,
  body: Body,
  dieTops: ReadonlyMap<string, number>,
): Rule => {
  const own = body.station === setting.station.id;
  if (body.kind === 'punch') {
    const stroke = phase === 'close' || phase === 'retract' || phase === 'bend' || phase === 'open';
    if (!own || !stroke) return 'clear';
    if (!setting.level.has(e)) return 'clear';
    if (setting.closes) return e.running || e.wing === 'gauge' ? 'touch' : 'near';
    return besideBend(setting, e) || inPlane(setting, e) ? 'nose' : 'near';
  }
  if (body.kind === 'die') {
    if (own && setting.level.has(e)) return 'touch';
    const notHigher = dieTops.get(body.station!)! <= setting.vee.top + SAME_HEIGHT;
    return notHigher && setting.resting.has(e) ? 'touch' : 'clear';
  }
  if (body.kind === 'finger') {
    const standing = phase === 'way in' || phase === 'close' || phase === 'retract';
    return setting.stopped.has(e) && (standing || setting.step.stop.retract <= 0) ? 'stop' : 'clear';
  }
  return 'clear';
};

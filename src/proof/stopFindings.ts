import { type Rigid, compose } from '../geometry/index.js';
import type { Axis, Machine } from '../shop/index.js';
import { type Element, relOf } from './element.js';
import { type Kernel, boxSolid, matrixOf } from './engine.js';
import { faceOf } from './phases.js';
import type { Setting } from './setting.js';
import { mm } from './stepLog.js';
import { FAR, LEAST_BEARING, RECORD, STOP_DEPTH } from './tolerances.js';

/**
 * How the metal stands in the window of one finger's face: the greatest back of it, and the width that it touches.
 * Null when no metal stands there.
 */
const touchOf = (
  kernel: Kernel,
  setting: Setting,
  e: Element,
  z: number,
  heights: readonly [number, number],
  x: number,
): { readonly back: number; readonly width: number } | null => {
  const half = setting.machine.gauge.finger.width / 2;
  const pose: Rigid = compose(setting.root(e.wing, setting.before), relOf(e, setting.before));
  const placed = e.solid(setting.before, 0, false).transform(matrixOf(pose));
  const window = boxSolid(kernel, [z - half, -FAR, heights[0]], [z + half, FAR, heights[1]]);
  const slice = boxSolid(kernel, [z - half, x - 2 * STOP_DEPTH, heights[0]], [z + half, x + 2 * STOP_DEPTH, heights[1]]);
  const seen = placed.intersect(window);
  const touching = seen.intersect(slice);
  const back = seen.isEmpty() ? null : seen.boundingBox().max[1];
  const { min, max } = touching.boundingBox();
  const width = touching.isEmpty() ? 0 : max[0] - min[0];
  for (const made of [placed, window, slice, seen, touching]) made.delete();
  return back === null ? null : { back, width };
};

const axisFinding = (name: string, axis: Axis, value: number): string | null => {
  const [min, max] = axis.drive === 'fixed' ? [axis.at, axis.at] : [axis.min, axis.max];
  if (value >= min - RECORD && value <= max + RECORD) return null;
  return min === max
    ? `the gauge's ${name} is asked to stand at ${mm(value)} mm; it is fixed at ${mm(min)} mm.`
    : `the gauge's ${name} is asked to stand at ${mm(value)} mm; it reaches from ${mm(min)} to ${mm(max)} mm.`;
};

/** Where the touching faces stand: one X, or one for each of two fingers. */
const backs = ({ x, skew }: Setting['step']['stop']): readonly number[] => (skew === undefined ? [x] : [x, x + skew]);

const gaugeFindings = (setting: Setting, machine: Machine, behind: number): string[] => {
  const { stop } = setting.step;
  const { gauge } = machine;
  const found = [
    ...backs(stop).flatMap((x) => [axisFinding('X', gauge.x, x - behind), stop.retract > 0 ? axisFinding('X, moved back,', gauge.x, x - behind + stop.retract) : null]),
    axisFinding('R', gauge.r, stop.r),
    ...stop.z.map((z) => axisFinding('Z', gauge.z, z)),
  ].filter((s) => s !== null);
  const places = [...stop.z].sort((a, b) => a - b);
  places.slice(1).forEach((z, i) => {
    const apart = z - places[i]!;
    if (apart < gauge.apart - RECORD) found.push(`two fingers stand ${mm(apart)} mm apart; they need ${mm(gauge.apart)} mm.`);
  });
  if (stop.skew !== undefined) {
    if (!gauge.ownX) found.push(`the fingers are asked to stand ${mm(Math.abs(stop.skew))} mm apart in X; they share one X axis.`);
    else if (Math.abs(stop.skew) > gauge.ownX.most + RECORD) found.push(`the fingers are asked to stand ${mm(Math.abs(stop.skew))} mm apart in X; they may differ by ${mm(gauge.ownX.most)} mm.`);
    if (places.length !== 2) found.push(`two X axes serve two fingers; the stop names ${places.length}.`);
  }
  if (places.length > gauge.fingers) found.push(`${places.length} fingers are used; the gauge has ${gauge.fingers}.`);
  return found;
};

/**
 * The stop as it is written against where the metal stands, flat in its seat: in the window of each finger's face the
 * metal of the stop's plate (or of a zone that joins it, for a rounded edge) ends at X, over more than a line.
 */
export const stopFindings = (kernel: Kernel, setting: Setting): string[] => {
  const { step, machine, sheet } = setting;
  const { stop } = step;
  if (stop.kind === 'none') return [];
  const say = (s: string): string => `Step ${step.number}: ${s}`;
  const face = faceOf(setting);
  if (face === undefined) return [say(`the finger has no face called '${stop.face}'.`)];
  if (stop.z.length === 0) return [say('the stop names no finger.')];
  const findings = gaugeFindings(setting, machine, face.behind).map(say);
  if (Math.abs(stop.x - face.behind - stop.axisX) > RECORD) {
    findings.push(say(`the X axis is written at ${mm(stop.axisX)} mm; the face '${face.name}' at ${mm(stop.x)} mm asks for ${mm(stop.x - face.behind)} mm.`));
  }
  const heights = [stop.r + face.from, stop.r + face.to] as const;
  const plate = setting.elements.filter((e) => e.kind === 'plate' && e.index === stop.plate);
  const zones = setting.elements.filter(
    (e) => e.kind === 'zone' && (!e.running || setting.closes) && sheet.part.bends[e.index]!.sides.some((s) => s.plate === stop.plate),
  );
  for (const [i, z] of stop.z.entries()) {
    const x = backs(stop)[i] ?? stop.x;
    const touches = [...plate, ...zones].map((e) => touchOf(kernel, setting, e, z, heights, x)).filter((t) => t !== null);
    if (touches.length === 0) {
      findings.push(say(`the finger at ${mm(z)} mm along the bed meets no metal of ${stop.edge}.`));
      continue;
    }
    // of what stands before the face, the one nearest to X is meant
    const best = touches.reduce((a, b) => (Math.abs(a.back - x) <= Math.abs(b.back - x) ? a : b));
    if (Math.abs(best.back - x) > STOP_DEPTH) {
      findings.push(say(`the stop is written at X ${mm(x)} mm; at the finger at ${mm(z)} mm the metal ends at ${mm(best.back)} mm.`));
    } else if (stop.skew === undefined && best.width < LEAST_BEARING) {
      findings.push(say(`the finger at ${mm(z)} mm along the bed bears on ${mm(best.width)} mm of the edge only.`));
    }
  }
  return findings;
};

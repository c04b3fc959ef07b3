import { apply, compose } from '../geometry/index.js';
import { sideFrame } from './bendShape.js';
import type { Setting } from './setting.js';
import { mm } from './stepLog.js';
import { COLLINEAR, RECORD } from './tolerances.js';

/** mm by which a tool's step may miss the part's: the part is written as the tool forms it within this. */
const STEP = 0.1;

/**
 * An offset as it is written against tool and part: both flanges come out level, the step is the tool's, the ram's place and depth are those of
 * the step, both bends have one angle and begin flat.
 */
export const offsetFindings = (setting: Setting): string[] => {
  const { step, sheet, offset, punch, running, vee, before, after } = setting;
  if (!offset) return [];
  const findings: string[] = [];
  const say = (s: string): void => void findings.push(`Step ${step.number}: ${s}`);
  const { thickness } = sheet.part;
  const { height, insideRadius } = punch.offset!;
  const bends = [...running].map((i) => sheet.part.bends[i]!);
  if (before !== 0) say(`${step.bends.join(' and ')} stand bent before the offset tool comes down.`);
  for (const b of bends) if (Math.abs(b.insideRadius - insideRadius) > RECORD) say(`${b.id} is written with an inside radius of ${mm(b.insideRadius)} mm; ${punch.name} forms ${mm(insideRadius)} mm.`);
  const [high, low] = [offset.high, offset.low].map((plate) => {
    const wing = setting.wings.roots.gauge === plate ? 'gauge' : 'front';
    const bend = bends.find((b) => b.sides.some((s) => s.plate === plate))!;
    return compose(setting.root(wing, after), sideFrame(bend.sides.find((s) => s.plate === plate)!.line));
  });
  const tilt = Math.max(Math.abs(high!.z[0]), Math.abs(high!.z[1]), Math.abs(high!.x[1]), Math.abs(high!.x[2]));
  if (tilt > 1e-3) say(`its outer flanges do not come out parallel to the bed.`);
  const rise = apply(high!, [0, 0, 0])[2] - apply(low!, [0, 0, 0])[2];
  if (Math.abs(rise - height) > STEP) say(`the part's step is ${mm(rise)} mm; ${punch.name} makes ${mm(height)} mm.`);
  const lowest = vee.top + thickness - rise;
  if (Math.abs(step.ramPosition - lowest) > COLLINEAR) say(`the ram is written at ${mm(step.ramPosition)} mm; the step ends at ${mm(lowest)} mm.`);
  if (Math.abs(step.depth - rise) > COLLINEAR) say(`the depth is written as ${mm(step.depth)} mm; the step is ${mm(rise)} mm.`);
  return findings;
};

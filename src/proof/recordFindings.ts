import type { Bend } from '../sheet/index.js';
import type { Station, Step, Trial } from '../trial/index.js';
import type { Vee } from './vee.js';
import { RECORD, RECORD_ANGLE } from './tolerances.js';
import { mm } from './stepLog.js';

/** What a step says of itself against the part, the station and the angles that the bends have before it. Degrees. */
export const stepFindings = (trial: Trial, step: Step, station: Station, bends: readonly number[], before: readonly number[]): string[] => {
  const { part, allowances } = trial.sheet;
  const findings: string[] = [];
  const say = (s: string): void => void findings.push(`Step ${step.number}: ${s}`);
  if (step.punch !== station.punch || step.die !== station.die) say(`it names ${step.punch} and ${step.die}; station ${station.id} holds ${station.punch} and ${station.die}.`);
  if (step.facing !== station.punchFacing) say(`it has the punch ${step.facing}; in station ${station.id} it stands ${station.punchFacing}.`);
  if (Math.abs(180 - step.bendAngle - step.includedAngle) > RECORD_ANGLE) say(`bend angle ${step.bendAngle} and included angle ${step.includedAngle} do not make 180 degrees.`);
  if (step.bendAngleUnderLoad < step.bendAngle - RECORD_ANGLE) say(`the bend angle under load, ${step.bendAngleUnderLoad} degrees, is less than the released one of ${step.bendAngle} degrees.`);
  const first = part.bends[bends[0]!]!;
  const { hem } = first;
  const closes = step.kind === 'hem close';
  const flat = hem ? (closes ? hem.closedLength : hem.preLength) : allowances[bends[0]!]!;
  if (Math.abs(flat - step.allowance) > RECORD) say(`it prints a flat length of ${mm(step.allowance)} mm for ${first.id}; the part has ${mm(flat)} mm.`);
  for (const i of bends) {
    const bend = part.bends[i]!;
    findings.push(...hemFindings(step, bend, before[i]!).map((s) => `Step ${step.number}: ${s}`));
    if ((step.kind !== 'offset bend' || i === bends[0]) && bend.direction !== step.sideUp) say(`side ${step.sideUp} lies up, but ${bend.id} turns towards ${bend.direction}.`);
    if (Math.abs(before[i]! - before[bends[0]!]!) > RECORD_ANGLE) say(`${bend.id} stands at another bend angle than ${first.id} before the stroke.`);
    if (before[i]! > bend.bendAngle - RECORD_ANGLE) say(`${bend.id} is bent already.`);
    else if (before[i]! > step.bendAngle - RECORD_ANGLE) say(`the stroke would open ${bend.id}, which stands at ${before[i]!} degrees of bend angle.`);
    if (step.bendAngle > bend.bendAngle + RECORD_ANGLE) say(`${bend.id} is bent to ${step.bendAngle} degrees of bend angle; the part asks ${bend.bendAngle}.`);
  }
  return findings;
};

/** A hem is pre-bent in a V to the angle that its arc is written for, and only then closed, between flat tools. */
const hemFindings = (step: Step, bend: Bend, before: number): string[] => {
  const closes = step.kind === 'hem close';
  if (bend.hem === undefined) return closes ? [`${bend.id} is no hem: it is not closed flat.`] : [];
  const { preBendAngle, preBendAngleUnderLoad } = bend.hem;
  if (closes) {
    if (Math.abs(before - preBendAngle) > RECORD_ANGLE) return [`hem ${bend.id} is closed from ${before} degrees of bend angle; its pre-bend is ${preBendAngle} degrees.`];
    return step.bendAngle < bend.bendAngle - RECORD_ANGLE ? [`hem ${bend.id} is closed to ${step.bendAngle} degrees of bend angle only; the part asks ${bend.bendAngle}.`] : [];
  }
  if (before !== 0) return [`hem ${bend.id} is pre-bent already.`];
  const off = Math.max(Math.abs(step.bendAngle - preBendAngle), Math.abs(step.bendAngleUnderLoad - preBendAngleUnderLoad));
  return off > RECORD_ANGLE ? [`hem ${bend.id} is pre-bent to ${step.bendAngle} degrees of bend angle, ${step.bendAngleUnderLoad} under load; its arc is written for ${preBendAngle} and ${preBendAngleUnderLoad}.`] : [];
};

/** mm: rounding of the reach as it is written. */
const REACH_ROUNDING = 0.01;

/**
 * Contact is the purpose of the stroke out to where the shoulder arcs meet the die's top, and by the shoulder radius and
 * the sheet's thickness past it at most: a longer reach would excuse what it should not.
 */
export const reachFindings = (step: Step, vee: Vee, thickness: number, face: number, land: number): string[] => {
  // a hem is pressed under the whole face of its punch, an offset between whole lands
  const most = step.kind === 'offset bend' ? land + thickness : step.kind === 'hem close' ? face + thickness : vee.c + vee.shoulder + thickness;
  return step.contactReach <= most + REACH_ROUNDING
    ? []
    : [`Step ${step.number}: contact is excused out to ${mm(step.contactReach)} mm from the bending plane; the tools have a reason for ${mm(most)} mm.`];
};

/** At the end every bend stands at the part's own angle. Degrees. */
export const finalFindings = (trial: Trial, angles: readonly number[]): string[] =>
  trial.sheet.part.bends.flatMap((bend, i) => {
    if (Math.abs(angles[i]! - bend.bendAngle) <= RECORD_ANGLE) return [];
    return angles[i] === 0
      ? [`Bend ${bend.id} is never made.`]
      : [`Bend ${bend.id} ends at ${angles[i]!} degrees of bend angle; the part asks ${bend.bendAngle}.`];
  });

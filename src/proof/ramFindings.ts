import { shift } from '../geometry/index.js';
import type { Machine } from '../shop/index.js';
import type { Body } from './body.js';
import { distance } from './engine.js';
import type { Setting } from './setting.js';
import { mm } from './stepLog.js';
import { EMPTY_GAP, MEASURING, RECORD } from './tolerances.js';

/** The shoulder seat stays between the machine's open and shut heights. */
const travelFindings = (setting: Setting, machine: Machine): string[] => {
  const { step, punch, vee } = setting;
  const opening = Math.max(step.ramOpening, step.ramOpeningOut);
  const highest = vee.top + opening + punch.height;
  const lowest = setting.tip(setting.load) + punch.height;
  const findings: string[] = [];
  if (highest > machine.openHeight + RECORD) {
    findings.push(`Step ${step.number}: an opening of ${mm(opening)} mm over this stack takes the ram to ${mm(highest)} mm; its highest is ${mm(machine.openHeight)} mm.`);
  }
  if (lowest < machine.shutHeight - RECORD) {
    findings.push(`Step ${step.number}: the stroke ends with the ram at ${mm(lowest)} mm; its lowest is ${mm(machine.shutHeight)} mm.`);
  }
  return findings;
};

/** Hanging ears yield to their own empty die as they do to the sheet. The stations stand under one ram: with it at its lowest, every other punch stays clear of its own empty die. */
export const ramFindings = (setting: Setting, machine: Machine, bodies: readonly Body[]): string[] => {
  const findings = travelFindings(setting, machine);
  // seen over the whole step: bends go deeper the further they turn, but the formula has a turning point
  const angles = Array.from({ length: 33 }, (_, k) => setting.before + ((setting.load - setting.before) * k) / 32);
  const seat = Math.min(...angles.map((x) => setting.tip(x))) + setting.punch.height;
  for (const punch of bodies.filter((b) => b.kind === 'punch' && b.ears?.state !== 'hanging' && b.station !== setting.station.id)) {
    for (const die of bodies.filter((b) => b.kind === 'die' && b.station === punch.station)) {
      const gap = distance(punch.solid, shift([0, 0, seat]), die.solid);
      if (gap >= EMPTY_GAP - MEASURING) continue;
      findings.push(
        `Step ${setting.step.number}: with the ram at its lowest the empty punch of station ${punch.station!} ` +
          (gap > 0 ? `comes within ${mm(gap)} mm of its own die.` : 'runs into its own die.'),
      );
    }
  }
  return findings;
};

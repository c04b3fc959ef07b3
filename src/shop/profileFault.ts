import { flankUp } from './profiles.js';
import type { RawDie, RawPunch } from './toolSchema.js';

/** A field of the tool and the end of a sentence that names the measure. */
export interface ProfileFault {
  readonly field: string;
  readonly what: string;
}

/** Heights that must rise, each with its field: the first that does not, with the one that it must lie over. */
const notRising = (heights: readonly (readonly [field: string, mm: number, name: string])[]): ProfileFault | undefined => {
  const i = heights.findIndex(([, mm], k) => k > 0 && mm < heights[k - 1]![1]);
  if (i < 0) return undefined;
  const [[low, least, lowName], [field, mm]] = [heights[i - 1]!, heights[i]!];
  // the tool's height is asked for first and stays; the field under it is what was typed too high
  return field === 'height' ? { field: low, what: `(${least} mm) must be less than the tool's height (${mm} mm)` }
    : { field, what: `(${mm} mm) must lie over ${lowName} (${Number(least.toFixed(2))} mm)` };
};

const noseFault = (p: RawPunch, widths: readonly (readonly [name: string, mm: number])[]): ProfileFault | undefined => {
  if (p.tipRadius === 0) return { field: 'tipRadius', what: '(0 mm) must be more than 0 mm for a nose: a sharp one is given its measured radius' };
  const half = (p.includedAngle / 2) * (Math.PI / 180);
  for (const [name, mm] of widths) {
    const most = mm / Math.cos(half);
    if (p.tipRadius > most) return { field: 'tipRadius', what: `(${p.tipRadius} mm) must be at most ${most.toFixed(2)} mm: a rounder tip of ${p.includedAngle} degrees is wider than ${name} (${mm} mm to its side of the bending plane)` };
  }
  return undefined;
};

/**
 * Why a punch's parameters draw no simple outline, by the parameter that is the cause; undefined where none is found. For a profile that the
 * general test of outlines has refused already: it says more, it refuses nothing of its own.
 */
export const punchProfileFault = (p: RawPunch): ProfileFault | undefined => {
  const { profile } = p;
  const flank = (x: number): number => flankUp(p.tipRadius, (p.includedAngle / 2) * (Math.PI / 180), x);
  const top = ['height', p.height, 'the height'] as const;
  switch (profile.shape) {
    case 'straight':
      return noseFault(p, [['half the body', profile.bodyWidth / 2]]) ?? notRising([
        ['includedAngle', flank(profile.bodyWidth / 2), 'where the flanks of the nose meet the body'], ['profile.bodyTop', profile.bodyTop, 'top of the body'],
        ['profile.shoulderFrom', profile.shoulderFrom, 'the beginning of the shoulder'], top,
      ]);
    case 'gooseneck':
      return noseFault(p, [['the nose in front', profile.noseFront], ['the nose behind', profile.noseBack]]) ?? notRising([
        ['includedAngle', flank(profile.noseFront), 'where the flank of the nose meets its front'], ['profile.noseFrontTo', profile.noseFrontTo, 'end of the nose\'s front'],
        ['profile.throatFrom', profile.throatFrom, 'beginning of the relief'], ['profile.throatTo', profile.throatTo, 'end of the relief'], ['profile.shoulderFront', profile.shoulderFront, 'the shoulder in front'], top,
      ]) ?? notRising([
        ['includedAngle', flank(profile.noseBack), 'where the flank of the nose ends'], ['profile.neckFrom', profile.neckFrom, 'beginning of the neck\'s back'], ['profile.neckTo', profile.neckTo, 'end of the neck\'s back'],
        ['profile.shoulderBack', profile.shoulderBack, 'the shoulder behind'], top,
      ]) ?? (profile.throat >= profile.neckBack ? { field: 'profile.throat', what: `(${profile.throat} mm) must be less than the neck's back (${profile.neckBack} mm)` } : undefined);
    case 'flattening':
      return notRising([['profile.faceTop', profile.faceTop, 'top of the face'], ['profile.shoulderFrom', profile.shoulderFrom, 'the beginning of the shoulder'], top]);
    case 'offset':
      return notRising([
        ['offset.height', p.offset?.height ?? 0, 'the step'], ['profile.landTop', profile.landTop, 'top of the lands'], ['profile.shoulderFrom', profile.shoulderFrom, 'the beginning of the shoulder'], top,
      ]);
    case 'contour':
      return undefined;
  }
};

/** The same of a die. */
export const dieProfileFault = (d: RawDie): ProfileFault | undefined => {
  const { profile } = d;
  if (profile.shape !== 'block') return undefined;
  const wider = Math.abs(profile.baseWidth - profile.topWidth) / 2;
  if (wider > 0 && profile.stepAt + wider > d.height) {
    return { field: 'profile.stepAt', what: `(${profile.stepAt} mm) and the ${wider} mm by which the base is wider or narrower on either side must together be at most the height (${d.height} mm)` };
  }
  return undefined;
};

import type { Reason, Trial } from '../trial/index.js';
import type { Picture } from './picture.js';
import { sheetBody } from './sheetBody.js';
import { bendIndex } from '../stroke/index.js';
import { drawScene, fitTo, pointsOf } from './drawScene.js';
import { PART_VIEW, largestPlate } from './partPicture.js';

/** The partial fold in which something conflicts: the bends named as made at their angle, those asked for in the accent; null when the reason names none. */
export const reasonPicture = (trial: Trial, reason: Reason, size: { width?: number; height?: number } = {}): Picture | null => {
  if (reason.made === undefined) return null;
  const { width = 80, height = 56 } = size;
  const { part } = trial.sheet;
  const angles = part.bends.map((bend) => (reason.made!.includes(bend.id) ? bend.bendAngle : 0));
  const asked = reason.bends.filter((id) => part.bends.some((bend) => bend.id === id)).map((id) => bendIndex(trial, id));
  const body = sheetBody(trial.sheet, angles, largestPlate(trial.sheet), asked);
  const to = fitTo(PART_VIEW, pointsOf([body]), { x: 2, y: 2, width: width - 4, height: height - 4 });
  const made = reason.made.length > 0 ? `${reason.made.join(', ')} made` : 'nothing made';
  return { width, height, items: drawScene([body], to), title: `${part.name} with ${made}: ${reason.sentence}` };
};

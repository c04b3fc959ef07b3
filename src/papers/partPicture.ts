import type { Rigid } from '../geometry/index.js';
import { IDENTITY } from '../geometry/index.js';
import type { Developed } from '../sheet/index.js';
import { moveBody } from './body.js';
import { drawScene, fitTo, pointsOf } from './drawScene.js';
import type { Picture } from './picture.js';
import { sheetBody } from './sheetBody.js';
import { type View, viewFrom } from './view.js';

/** The view that parts are shown in when nothing else is asked: from the right front, well from above. */
export const PART_VIEW: View = viewFrom(35, 32);

export interface PartPictureOptions {
  /** mm of paper. */
  readonly width?: number;
  readonly height?: number;
  readonly view?: View;
  /** The plate that stays where it is, its frame level, the A side up. The largest when absent. */
  readonly root?: number;
  /** Turns the scene before it is looked at. */
  readonly pose?: Rigid;
}

/** The plate with the largest box: the one that the eye takes for the part's base. */
export const largestPlate = (sheet: Developed): number => {
  const sizes = sheet.part.plates.map(({ outline }) => {
    const [xs, ys] = [outline.map((v) => v.x), outline.map((v) => v.y)];
    return (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys));
  });
  return sizes.indexOf(Math.max(...sizes));
};

export const finalAngles = (sheet: Developed): number[] => sheet.part.bends.map((bend) => bend.bendAngle);

/** The part with its bends turned through `angles` degrees (as finished when absent), hidden surfaces removed, as large as the paper allows. */
export const partPicture = (sheet: Developed, angles?: readonly number[], options: PartPictureOptions = {}): Picture => {
  const { width = 90, height = 70, view = PART_VIEW, root = largestPlate(sheet), pose = IDENTITY } = options;
  const body = moveBody(pose, sheetBody(sheet, angles ?? finalAngles(sheet), root));
  const to = fitTo(view, pointsOf([body]), { x: 2, y: 2, width: width - 4, height: height - 4 });
  return {
    width,
    height,
    items: drawScene([body], to),
    title: `${sheet.part.name}${angles ? ', partly bent' : ''}, seen from above`,
  };
};

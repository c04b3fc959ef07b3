import { blank } from '../sheet/index.js';
import type { Trial } from '../trial/index.js';
import { blankPicture } from './blankPicture.js';
import type { Units } from './format.js';
import { layoutPicture } from './layoutPicture.js';
import { partPicture } from './partPicture.js';
import type { Picture } from './picture.js';
import { reasonPicture } from './reasonPicture.js';
import { sectionPicture } from './sectionPicture.js';
import { stepPicture } from './stepPicture.js';
import { unfoldingPath } from './unfoldingPath.js';

export interface SetupSheetPictures {
  readonly part: Picture;
  /** Absent when the sheet cannot be laid flat. */
  readonly blank: Picture | null;
  readonly path: Picture;
  readonly layout: Picture;
  readonly steps: readonly {
    readonly number: number;
    readonly before: Picture;
    readonly after: Picture;
    readonly section: Picture;
  }[];
  /** For each reason, the partial fold that conflicts, where the reason names one. */
  readonly reasons: readonly (Picture | null)[];
}

/** Every picture of the set-up sheet, for pages: the same ones that the paper prints. */
export const setupSheetPictures = (trial: Trial, units: Units = 'mm'): SetupSheetPictures => {
  const flat = blank(trial.sheet);
  return {
    part: partPicture(trial.sheet),
    blank: flat.ok ? blankPicture(flat.value, { units }) : null,
    path: unfoldingPath(trial),
    layout: layoutPicture(trial, { units }),
    steps: trial.steps.map(({ number }) => ({
      number,
      before: stepPicture(trial, number, 'before', { units }),
      after: stepPicture(trial, number, 'after', { units }),
      section: sectionPicture(trial, number, { units }),
    })),
    reasons: trial.reasons.map((reason) => reasonPicture(trial, reason)),
  };
};

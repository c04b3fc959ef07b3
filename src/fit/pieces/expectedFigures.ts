import { angularTolerance } from '../../metal/index.js';
import type { Trial } from '../../trial/index.js';
import type { PieceFigure } from './pieceEntry.js';

/** What is to be measured on a piece of this trial. */
export interface ExpectedFigure extends Omit<PieceFigure, 'measured'> {
  /** Who asks for the tolerance. */
  readonly askedBy: string;
  /** What the batch is expected to scatter, plus and minus (root of the sum of squares); null where it was not reckoned. */
  readonly spread: number | null;
}

const lengthsOf = (trial: Trial): ExpectedFigure[] => {
  if (trial.dimensions !== undefined && trial.dimensions.length > 0) {
    return trial.dimensions.map(({ id, what, value, tolerance, askedBy, batch }) =>
      ({ id, kind: 'length', what, unit: 'mm', predicted: value, tolerance, askedBy, spread: batch.rootSumSquare }));
  }
  return trial.steps.map(({ number, measure }) => ({
    id: `step ${number}`, kind: 'length', what: measure.what, unit: 'mm', predicted: measure.length, tolerance: measure.tolerance, askedBy: 'the set-up sheet', spread: measure.batch ?? null,
  }));
};

/** Lengths of the part as these tools form it and the bend angle of every bend, in the order of the steps; closed hems are measured by their lengths alone. */
export const expectedFigures = (trial: Trial): readonly ExpectedFigure[] => [
  ...lengthsOf(trial),
  ...trial.steps.filter(({ kind }) => kind === 'V bend').flatMap(({ bends, bendAngle, measure }) => bends.map((bend): ExpectedFigure => {
    const { tolerance, source, mark } = angularTolerance(measure.length, 'm');
    return {
      id: bend, kind: 'bend angle', what: `bend angle of ${bend}`, unit: 'degrees', predicted: bendAngle, tolerance, askedBy: `${source}, class m, leg ${measure.length.toFixed(1)} mm (${mark})`,
      spread: null,
    };
  })),
];

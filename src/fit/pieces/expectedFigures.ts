import { angularTolerance } from '../../metal/index.js';
import type { Trial } from '../../trial/index.js';
import { shorterLeg } from './shorterLeg.js';
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
    return trial.dimensions.map(({ id, what, value, drawn, tolerance, askedBy, batch }) =>
      ({ id, kind: 'length', what, unit: 'mm', predicted: value, ...(drawn === undefined ? {} : { drawn }), tolerance, askedBy, spread: batch.rootSumSquare }));
  }
  // what a hit leaves is measured before the next one, and of the finished piece no more
  return trial.steps.filter(({ bends }) => bends.every((id) => drawnBend(trial, id) === id)).map(({ number, measure }) => ({
    id: `step ${number}`, kind: 'length', what: measure.what, unit: 'mm', predicted: measure.length, tolerance: measure.tolerance, askedBy: measure.tolerance === null ? 'nobody' : 'the set-up sheet', spread: measure.batch ?? null,
  }));
};

/** The angle's tolerance by the length of its shorter leg, of the class asked. */
const angleAsked = (trial: Trial, leg: number): Pick<ExpectedFigure, 'tolerance' | 'askedBy'> => {
  const cls = trial.toleranceClass;
  if (cls === undefined) return { tolerance: null, askedBy: 'nobody' };
  const { tolerance, source, mark } = angularTolerance(leg, cls);
  return { tolerance, askedBy: `${source}, class ${cls}, leg ${leg.toFixed(1)} mm (${mark})` };
};

/** The drawing's bend that a stroke makes, or makes one hit of. */
const drawnBend = ({ sheet: { part } }: Trial, id: string): string => part.bends.find((b) => b.id === id)?.hit?.of ?? id;

const anglesOf = (trial: Trial): ExpectedFigure[] => {
  const { part } = trial.sheet;
  const byBend = new Map<string, ExpectedFigure>();
  for (const { kind, bends, bendAngle, measure } of trial.steps) {
    // once closed, a hem stands at the angle of its pre-bend no more
    if (kind === 'hem close') bends.forEach((id) => byBend.delete(id));
    if (kind !== 'V bend') continue;
    for (const stroke of bends) {
      const id = drawnBend(trial, stroke);
      // a bend in two passes is measured when it is done: the later step counts; many hits together make their bend
      const before = id === stroke ? 0 : byBend.get(id)?.predicted ?? 0;
      const bend = part.bends.findIndex((b) => b.id === stroke);
      byBend.set(id, { id, kind: 'bend angle', what: `bend angle of ${id}`, unit: 'degrees', predicted: before + bendAngle, ...angleAsked(trial, bend < 0 ? measure.length : shorterLeg(part, bend)), spread: null });
    }
  }
  return [...byBend.values()];
};

/** Lengths of the part as these tools form it and the bend angle of every bend, in the order of the steps; closed hems are measured by their lengths alone. */
export const expectedFigures = (trial: Trial): readonly ExpectedFigure[] => [...lengthsOf(trial), ...anglesOf(trial)];

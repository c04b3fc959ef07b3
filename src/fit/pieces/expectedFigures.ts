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
  return trial.steps.map(({ number, measure }) => ({
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

/** mm; undefined of one of many hits, whose legs are no plates of the drawing. */
const legOf = ({ sheet: { part } }: Trial, id: string): number | undefined => {
  const bend = part.bends.findIndex((b) => b.id === id);
  return bend < 0 || part.bends[bend]!.hit ? undefined : shorterLeg(part, bend);
};

const anglesOf = (trial: Trial): ExpectedFigure[] => {
  const byBend = new Map<string, ExpectedFigure>();
  for (const { kind, bends, bendAngle, measure } of trial.steps) {
    // once closed, a hem stands at the angle of its pre-bend no more
    if (kind === 'hem close') bends.forEach((id) => byBend.delete(id));
    if (kind !== 'V bend') continue;
    // a bend in two passes is measured when it is done: the later step counts
    for (const id of bends) byBend.set(id, { id, kind: 'bend angle', what: `bend angle of ${id}`, unit: 'degrees', predicted: bendAngle, ...angleAsked(trial, legOf(trial, id) ?? measure.length), spread: null });
  }
  return [...byBend.values()];
};

/** Lengths of the part as these tools form it and the bend angle of every bend, in the order of the steps; closed hems are measured by their lengths alone. */
export const expectedFigures = (trial: Trial): readonly ExpectedFigure[] => [...lengthsOf(trial), ...anglesOf(trial)];

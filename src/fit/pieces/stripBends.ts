import type { MeasuredBend } from '../../forming/index.js';
import type { Trial } from '../../trial/index.js';
import { type PieceRecord, standing } from './pieceEntry.js';

/** The test strips of a trial whose depth was read, as bends that tell what the metal is like. */
export const stripBends = (trial: Trial, records: readonly PieceRecord[]): readonly MeasuredBend[] =>
  standing(records).flatMap(({ entry }): MeasuredBend[] => {
    if (entry.kind !== 'strip' || entry.depth === undefined) return [];
    const stands = trial.stations.find(({ id }) => id === entry.station);
    const punch = trial.punches.find(({ id }) => id === stands?.punch);
    const die = trial.dies.find(({ id }) => id === stands?.die);
    if (!punch || !die) return [];
    const { thickness, depth, bendAngle: bendAngleReleased, underLoad, force } = entry;
    return [{
      setup: { thickness, v: die.v, vConvention: die.vConvention, dieAngle: die.includedAngle, shoulderRadius: die.shoulderRadius, tipRadius: punch.tipRadius },
      depth, bendAngleReleased,
      ...(underLoad === undefined ? {} : { bendAngleUnderLoad: underLoad }), ...(force === undefined ? {} : { peakForcePerLength: force }),
    }];
  });

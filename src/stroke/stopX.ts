import type { Step } from '../trial/index.js';

/** A figure in mm with the name that paper, page and command line give it. */
export interface StopFigure {
  readonly name: string;
  readonly value: number;
}

const FACE: Readonly<Record<Step['kind'], string>> = { 'V bend': 'Touching face to bend', 'hem close': 'Touching face to punch middle', 'offset bend': 'Touching face to tool middle' };

/**
 * The stop's X as paper, page and command line tell it, mm: `set` what the gauge's X axis is set to, one figure, or the left and the right finger's where
 * each has an axis of its own; `face` how far the face that touches then stands from the bending plane, figures in the same order. `face` is empty where
 * that is the same, the nose touching; both are empty where the sheet is placed by eye.
 */
export const stopX = ({ stop, kind }: Step): { readonly set: readonly StopFigure[]; readonly face: readonly StopFigure[] } => {
  if (stop.kind === 'none') return { set: [], face: [] };
  const each = (one: string, name: string, value: number): readonly StopFigure[] =>
    stop.skew === undefined ? [{ name: one, value }] : [{ name: `${name}, left finger`, value }, { name: `${name}, right finger`, value: value + stop.skew }];
  return {
    set: each('X axis, set to', 'X axis', stop.axisX),
    face: Math.abs(stop.x - stop.axisX) < 1e-6 ? [] : each(FACE[kind], 'Face to bend', stop.x),
  };
};

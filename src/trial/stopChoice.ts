import type { Feature } from '../sheet/index.js';
import type { Stop } from './trial.js';

/** A stop that works, as the step will tell it; `z` counts along the bed from the bend's own origin. mm */
export interface StopChoice extends Omit<Stop, 'edge' | 'sideways'> {
  /** How far the outer fingers stand apart: squareness comes from it. */
  readonly spread: number;
  /** What the fingers touch, null for a scribed line; how high over the sheet's middle plane (the flange's highest contact) and over what length of it one finger bears. mm */
  readonly feature: Feature | null;
  readonly height: number;
  readonly touching: number;
  /** Id of the hem whose fold touches. */
  readonly fold?: string;
  /** No finger and no scribed line: an earlier pass has begun the bend, and it lies in the V by itself. */
  readonly begun?: true;
}

/** Retracts that are tried; a powered gauge does any of them within the stroke. mm */
export const RETRACTS = [0, 5, 10, 20, 40, 80, 150];

/** Is the sheet placed by eye? */
export const isScribed = ({ kind, begun }: StopChoice): boolean => kind === 'none' && !begun;

/** Do two stops touch the sheet at the same edge or face? */
export const sameFeature = (one: Feature | null, other: Feature | null): boolean => JSON.stringify(one) === JSON.stringify(other);

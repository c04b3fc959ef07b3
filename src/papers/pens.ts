/**
 * The drawing office's pens. Widths in mm of paper follow the 0.13 / 0.18 / 0.25 / 0.35 / 0.5 series of technical drawing
 * (ISO 128 names it; the choice of which line gets which width is ours).
 */
export type PenName =
  | 'outline'
  | 'edge'
  | 'thin'
  | 'tangent'
  | 'hidden'
  | 'centre'
  | 'hatch'
  | 'accent'
  | 'warning'
  | 'frame'
  | 'rule';

export interface Pen {
  readonly stroke: string;
  /** mm */
  readonly width: number;
  /** mm on, off, ... */
  readonly dash?: readonly number[];
}

export const INK = '#1a1c1e';
/** What the person must do next, and nothing else. */
export const ACCENT = '#0f4c9a';
/** Always with a sign and a word. */
export const WARNING = '#a3320b';
/** A breath of grey that sets machine and tools off from the white sheet. */
const TOOL_TINT = '#eef0f1';
const BED_TINT = '#f7f8f8';
const PENCIL = '#6d7276';

export const PENS: Readonly<Record<PenName, Pen>> = {
  outline: { stroke: INK, width: 0.35 },
  edge: { stroke: INK, width: 0.22 },
  thin: { stroke: INK, width: 0.13 },
  tangent: { stroke: PENCIL, width: 0.1 },
  hidden: { stroke: PENCIL, width: 0.13, dash: [1.2, 0.8] },
  centre: { stroke: INK, width: 0.13, dash: [3, 0.7, 0.5, 0.7] },
  hatch: { stroke: PENCIL, width: 0.1 },
  accent: { stroke: ACCENT, width: 0.5 },
  warning: { stroke: WARNING, width: 0.4 },
  frame: { stroke: INK, width: 0.5 },
  rule: { stroke: PENCIL, width: 0.13 },
};

export type FillName = 'paper' | 'ink' | 'accent' | 'warning' | 'tool' | 'bed';

export const FILLS: Readonly<Record<FillName, string>> = {
  paper: '#ffffff',
  ink: INK,
  accent: ACCENT,
  warning: WARNING,
  tool: TOOL_TINT,
  bed: BED_TINT,
};

/** Lettering heights in mm of paper (the em, not the capital): small print, dimensions, names, the A and B letters. */
export const LETTERS = { small: 2.2, normal: 2.8, name: 3.4, side: 5 } as const;

import { type Contour, type Vec2, apply, compose, signedArea } from '../geometry/index.js';
import { bendFrame } from './bendFrame.js';
import { chainLoops } from './chainLoops.js';
import type { Developed } from './developed.js';
import { flatPieces } from './flatPieces.js';
import { fold } from './fold.js';
import { overlappingPieces, overlaps } from './overlaps.js';
import type { Bend } from './part.js';
import { type Result, done, refused } from './result.js';
import { smallestRectangle } from './smallestRectangle.js';
import { tree } from './tree.js';

/** The middle of a bend's strip on the blank, where the punch comes down. */
export interface BendLine {
  readonly id: string;
  readonly from: Vec2;
  readonly to: Vec2;
  readonly direction: Bend['direction'];
  readonly kind: Bend['kind'];
  /** Degrees turned through. */
  readonly bendAngle: number;
  /** mm */
  readonly insideRadius: number;
  readonly allowance: number;
}

/** The flat sheet to cut, seen from its A side, in the frame of plate 0. mm */
export interface Blank {
  readonly name: string;
  readonly thickness: number;
  /** Counter-clockwise, true arcs as bulges. */
  readonly outline: Contour;
  /** Clockwise. */
  readonly holes: readonly Contour[];
  readonly bendLines: readonly BendLine[];
  /** The smallest upright rectangle with a side along one of the outline's edges: length >= width. */
  readonly length: number;
  readonly width: number;
  /** Degrees from plate 0's x to the rectangle's length. */
  readonly angle: number;
  /** mm2, holes taken off. */
  readonly area: number;
}

const bendLines = (sheet: Developed): BendLine[] => {
  const { part, allowances } = sheet;
  const { poses } = fold(sheet, part.bends.map(() => 0));
  return part.bends.map((bend, index) => {
    const [side] = bend.sides;
    const pose = compose(poses[side.plate]!, bendFrame(side.line));
    const length = Math.hypot(side.line.to[0] - side.line.from[0], side.line.to[1] - side.line.from[1]);
    const at = (u: number): Vec2 => {
      const p = apply(pose, [u, allowances[index]! / 2, 0]);
      return [p[0], p[1]];
    };
    const { id, direction, kind, bendAngle, insideRadius } = bend;
    return { id, from: at(0), to: at(length), direction, kind, bendAngle, insideRadius, allowance: allowances[index]! };
  });
};

/**
 * Unfolds the sheet into one flat blank: plates and zones laid in plate 0's plane and stitched along their tangent lines.
 * Refused when the part is no tree, when the pattern lies over itself (it cannot be cut from one sheet), or does not close.
 *
 * @example blank(develop(part, { name: 'K-factor', k: 0.44 }))
 */
export const blank = (sheet: Developed): Result<Blank> => {
  const { part } = sheet;
  const checked = tree(part);
  if (!checked.ok) return checked;
  const pieces = flatPieces(sheet);
  const chained = chainLoops(pieces.flatMap((piece) => piece.free));
  if ('looseEnd' in chained) {
    const [x, y] = chained.looseEnd;
    return refused('flat pattern open', `The flat pattern of "${part.name}" does not close at x ${x.toFixed(2)}, y ${y.toFixed(2)} mm of plate 1's frame.`);
  }
  const loops = chained.loops;
  const outlines = loops.filter((loop) => signedArea(loop) > 0);
  const pair = outlines.length === 1 && !overlaps(loops) ? null : overlappingPieces(pieces);
  if (pair !== null) {
    return refused('flat pattern overlaps', `Laid flat, ${pair[0].name} and ${pair[1].name} lie over one another: "${part.name}" cannot be cut from one sheet.`, {
      plates: pair.flatMap((piece) => (piece.plate === undefined ? [] : [piece.plate])),
      bends: pair.flatMap((piece) => (piece.bend === undefined ? [] : [piece.bend])),
    });
  }
  if (outlines.length !== 1) {
    return refused('flat pattern open', `The flat pattern of "${part.name}" falls into ${outlines.length} pieces.`);
  }
  const outline = outlines[0]!;
  return done({
    name: part.name,
    thickness: part.thickness,
    outline,
    holes: loops.filter((loop) => loop !== outline),
    bendLines: bendLines(sheet),
    ...smallestRectangle(outline),
    area: loops.reduce((sum, loop) => sum + signedArea(loop), 0),
  });
};

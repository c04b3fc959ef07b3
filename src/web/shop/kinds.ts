import { SHAPES } from './shapes.js';
import { at, isTree, type Tree, withAt } from './tree.js';

/** Height of a tool, mm, at which the usual parameters of a shape fit. */
const USUAL_HEIGHT: Readonly<Record<string, number>> = { straight: 125, gooseneck: 165, flattening: 125, offset: 60, block: 90 };

/** Parameters that are heights, and shrink with a lower tool. */
const HEIGHTS = new Set(['bodyTop', 'shoulderFrom', 'noseFrontTo', 'throatFrom', 'throatTo', 'neckFrom', 'neckTo', 'shoulderFront', 'shoulderBack', 'faceTop', 'stepAt']);

/** A cross-section of this shape with its usual parameters, no higher than the tool. */
export const usualSection = (shape: string, height: unknown): unknown => {
  const usual = USUAL_HEIGHT[shape];
  const scale = usual !== undefined && typeof height === 'number' && height > 0 ? Math.min(1, height / usual) : 1;
  const begun = shape === 'rectangle' ? { shape, back: [0, 0], up: [0, 0] } : { shape };
  return SHAPES[shape]!.reduce<unknown>((made, [name, , value]) => withAt(made, name, HEIGHTS.has(name) ? Number((value * scale).toFixed(1)) : value), begun);
};

/** Which section a kind of tool has where it is not drawn; null where its own may stay. */
const SECTION: Readonly<Record<string, string>> = { straight: 'straight', acute: 'straight', gooseneck: 'gooseneck', flattening: 'flattening', V: 'block', anvil: 'anvil' };

const STEP = { height: '', insideRadius: '', leastThickness: '', mostThickness: '' };
/** The usual angle, tip radius and V of a kind, where another kind had none. */
const ANGLE: Readonly<Record<string, number>> = { straight: 85, acute: 30, gooseneck: 85, V: 85 };
const FLAT = new Set(['flattening', 'offset', 'anvil']);

/** What the kind of a tool settles: all else stays as it was typed. */
const SETTLED = ['includedAngle', 'tipRadius', 'v', 'shoulderRadius', 'profile', 'offset'] as const;

/** The tool as another kind: what that kind settles is set, or is as it was when the tool was of that kind before. */
export const asKind = (tool: Tree, kind: string, before: Tree | undefined): Tree => {
  const next = { ...tool, shape: kind };
  if (before) {
    const settled = SETTLED.filter((key) => key in before || key in tool);
    return settled.reduce<unknown>((made, key) => withAt(made, key, before[key]), next) as Tree;
  }
  const punch = tool['kind'] === 'punch';
  const flat = FLAT.has(kind);
  const shape = at(tool, 'profile.shape');
  const section = kind === 'offset' ? (punch ? 'offset' : 'step') : SECTION[kind]!;
  const settled: Tree = {
    includedAngle: flat ? 180 : tool['includedAngle'] === 180 ? ANGLE[kind] : tool['includedAngle'],
    ...(punch ? { tipRadius: flat ? 0 : tool['tipRadius'] === 0 ? 1 : tool['tipRadius'] } : { v: flat ? 0 : tool['v'] === 0 ? 12 : tool['v'] }),
    offset: kind === 'offset' ? (isTree(tool['offset']) ? tool['offset'] : STEP) : undefined,
    profile: shape === 'contour' || shape === section ? tool['profile'] : usualSection(section, tool['height']),
  };
  return Object.entries(settled).reduce<unknown>((made, [key, value]) => withAt(made, key, value), next) as Tree;
};

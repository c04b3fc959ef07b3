import type { Brep } from '../step/brep.js';
import type { Refusal } from '../refusal.js';

/** A refusal before it is known which body of the file it belongs to. */
export type Reason = Omit<Refusal, 'index'>;

const NAMES: Readonly<Record<string, string>> = {
  Cone: 'a cone',
  Sphere: 'a sphere',
  Torus: 'a torus',
  BSplineSurface: 'a free-form surface',
  BezierSurface: 'a free-form surface',
  SurfaceOfRevolution: 'a surface of revolution',
  SurfaceOfExtrusion: 'an extruded curve',
  OffsetSurface: 'an offset surface',
};

/** Faces are numbered from 1 where people read them. */
export const faceNumber = (face: number): number => face + 1;

const mm2 = (area: number): string => `${area < 10 ? area.toFixed(2) : area.toFixed(0)} mm2`;

/** Reasons that can be seen before any recognition: an open shell, a body mostly of surfaces that no brake makes. */
export const judgeBody = (brep: Brep, users: readonly (readonly number[])[]): Reason | undefined => {
  if (brep.faces.length === 0) return { code: 'no solid', sentence: 'The body has no faces.', faces: [] };
  const uses = brep.edges.map(() => 0);
  for (const face of brep.faces) for (const use of face.loops.flat()) uses[use.edge]!++;
  const open = uses.flatMap((n, edge) => (n === 1 ? [edge] : []));
  if (!brep.solid || open.length > 0) {
    const face = open.length > 0 ? users[open[0]!]![0]! : 0;
    const why = open.length > 0 ? `${open.length} edges belong to one face only, the first on face ${faceNumber(face)}` : `its ${brep.faces.length} faces bound no solid`;
    return { code: 'open shell', sentence: `The body is an open shell: ${why}.`, faces: [faceNumber(face)], measure: open.length };
  }
  const total = brep.faces.reduce((sum, f) => sum + f.area, 0);
  const other = brep.faces.flatMap((f, index) => (f.surface.kind === 'other' ? [{ index, area: f.area, name: f.surface.name }] : []));
  const share = other.reduce((sum, f) => sum + f.area, 0) / total;
  if (share > 0.5) {
    const largest = other.reduce((a, b) => (b.area > a.area ? b : a));
    const percent = Math.round(100 * share);
    return {
      code: 'free form',
      sentence: `${percent} % of the surface is neither plane nor cylinder; the largest such face is ${faceNumber(largest.index)} (${NAMES[largest.name] ?? 'a curved surface'}, ${mm2(largest.area)}).`,
      faces: other.map((f) => faceNumber(f.index)),
      measure: percent,
    };
  }
  return undefined;
};

/** The largest planar face that is no skin, to show what stands against one thickness. */
export const noThickness = (brep: Brep, skins: ReadonlySet<number>, sentence: string, measure?: number): Reason => {
  const faces = brep.faces.flatMap((f, index) => (skins.has(index) ? [] : [{ index, area: f.area }]));
  const worst = faces.length > 0 ? faces.reduce((a, b) => (b.area > a.area ? b : a)) : undefined;
  const tail = worst ? ` The largest face that has no opposite at that distance is face ${faceNumber(worst.index)} (${mm2(worst.area)}).` : '';
  return {
    code: 'no constant thickness',
    sentence: sentence + tail,
    faces: worst ? [faceNumber(worst.index)] : [],
    ...(measure === undefined ? {} : { measure }),
  };
};

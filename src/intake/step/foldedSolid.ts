import type { TopoDS_Edge, TopoDS_Shape, TopoDS_Wire } from 'replicad-opencascadejs';
import { type Contour, type Rigid, type Vec3, apply, arcOf, compose, length2, sub2, turn, vertex } from '../../geometry/index.js';
import { type Developed, type ZoneQuad, alongArc, bendFrame, fold, insideRadiusAt, zoneQuads } from '../../sheet/index.js';
import { NO_LENGTH, SAME_POINT } from '../tolerances.js';
import type { Kernel } from './kernel.js';

/** Degrees below which a bend is written flat: its radius would be beyond any drawing (1 mm of strip: 57 m). */
const FLAT_ANGLE = 1e-3;

/** mm, the least inside radius of a bend that ends slanted. */
const LEAST_SLANTED = 0.01;
/** Sections of a loft along an arc: over 90 degrees the spline through nine leaves a helix by less than 1e-5 of its rise. */
const LOFT = 8;

/** Why a part could not be built as a solid, in one sentence. */
export interface NoSolid {
  readonly sentence: string;
}

/** Builds solids in the kernel's words; what it takes is freed by `free`. */
class Builder {
  private readonly taken: { delete(): void }[] = [];
  constructor(private readonly oc: Kernel) {}

  keep<T extends { delete(): void }>(it: T): T {
    this.taken.push(it);
    return it;
  }

  free(): void {
    for (const it of this.taken.reverse()) it.delete();
  }

  private point(p: Vec3): InstanceType<Kernel['gp_Pnt']> {
    return this.keep(new this.oc.gp_Pnt(...p));
  }

  private line(a: Vec3, b: Vec3): TopoDS_Edge {
    return this.keep(this.keep(new this.oc.BRepBuilderAPI_MakeEdge(this.point(a), this.point(b))).Edge());
  }

  private arc(a: Vec3, middle: Vec3, b: Vec3): TopoDS_Edge {
    // the curve stays with the edge: freeing it here would take it away
    const made = this.keep(new this.oc.GC_MakeArcOfCircle(this.point(a), this.point(middle), this.point(b)));
    return this.keep(this.keep(new this.oc.BRepBuilderAPI_MakeEdge(made.Value())).Edge());
  }

  private wire(edges: readonly TopoDS_Edge[]): TopoDS_Wire {
    const wire = this.keep(new this.oc.BRepBuilderAPI_MakeWire());
    for (const edge of edges) wire.Add(edge);
    return this.keep(wire.Wire());
  }

  /** A contour at height z of a frame, true arcs kept. */
  private contour(drawn: Contour, frame: Rigid, z: number): TopoDS_Wire {
    const at = (x: number, y: number): Vec3 => apply(frame, [x, y, z]);
    // an edge of rounding alone is no edge to the kernel
    const contour = drawn.filter((v, i) => {
      const w = drawn[(i + 1) % drawn.length]!;
      return length2(sub2([w.x, w.y], [v.x, v.y])) > NO_LENGTH;
    });
    return this.wire(
      contour.map((v, i) => {
        const w = contour[(i + 1) % contour.length]!;
        if (v.bulge === 0) return this.line(at(v.x, v.y), at(w.x, w.y));
        const { centre, radius } = arcOf([v.x, v.y], [w.x, w.y], v.bulge);
        // the arc's middle lies to the right of the chord where it turns left
        const half = Math.atan2(v.y - centre[1], v.x - centre[0]) + 2 * Math.atan(v.bulge);
        return this.arc(at(v.x, v.y), at(centre[0] + radius * Math.cos(half), centre[1] + radius * Math.sin(half)), at(w.x, w.y));
      }),
    );
  }

  private swept(face: TopoDS_Shape, way: Vec3): TopoDS_Shape {
    return this.keep(this.keep(new this.oc.BRepPrimAPI_MakePrism(face, this.keep(new this.oc.gp_Vec(...way)), false, true)).Shape());
  }

  plate(outline: Contour, holes: readonly Contour[], frame: Rigid, thickness: number): TopoDS_Shape {
    const face = this.keep(new this.oc.BRepBuilderAPI_MakeFace(this.contour(outline, frame, -thickness / 2), true));
    for (const hole of holes) face.Add(this.contour(hole, frame, -thickness / 2));
    return this.swept(this.keep(face.Face()), turn(frame, [0, 0, thickness]));
  }

  /** Metal of the section u0..u1 by the thickness, standing in `frame` (x along the bend, y forwards), run round an axis. */
  bendPiece(frame: Rigid, [u0, u1]: readonly [number, number], thickness: number, way: { readonly centre: number; readonly turned: number; readonly sense: 1 | -1 }): TopoDS_Shape {
    const h = thickness / 2;
    const corners = ([[u0, -h], [u1, -h], [u1, h], [u0, h]] as const).map(([u, z]) => apply(frame, [u, 0, z]));
    const section = this.wire(corners.map((p, i) => this.line(p, corners[(i + 1) % 4]!)));
    const face = this.keep(this.keep(new this.oc.BRepBuilderAPI_MakeFace(section, true)).Face());
    const along = this.keep(new this.oc.gp_Dir(...turn(frame, [way.sense, 0, 0])));
    const axis = this.keep(new this.oc.gp_Ax1(this.point(apply(frame, [0, 0, way.centre])), along));
    return this.keep(this.keep(new this.oc.BRepPrimAPI_MakeRevol(face, axis, way.turned, false)).Shape());
  }

  /**
   * A bend piece whose metal ends slanted: the whole arc of its widest section, cut to what a loft through `LOFT` sections leaves.
   * On the arc a straight slanted cut of the flat is a helix, which the loft follows; the two skins stay true cylinders.
   */
  slantedPiece(frame: Rigid, quad: Pick<ZoneQuad, 'from' | 'to'>, thickness: number, way: { readonly centre: number; readonly turned: number; readonly sense: 1 | -1 }): TopoDS_Shape {
    const { from, to } = quad;
    const whole = this.bendPiece(frame, [Math.min(...from), Math.max(...to)], thickness, way);
    const inside = Math.abs(way.centre) - thickness / 2;
    const h = thickness / 2 + Math.min(thickness / 4, inside / 2);
    const loft = this.keep(new this.oc.BRepOffsetAPI_ThruSections(true, false, NO_LENGTH));
    // one section beyond either end, so that no face of the loft lies on one of the piece
    for (let k = -1; k <= LOFT + 1; k++) {
      const f = k / LOFT;
      const [c, s] = [Math.cos(way.sense * way.turned * f), Math.sin(way.sense * way.turned * f)];
      const [low, high] = [from[0] + (from[1] - from[0]) * f, to[0] + (to[1] - to[0]) * f];
      const corners = ([[low, -h], [high, -h], [high, h], [low, h]] as const).map(([u, z]) => apply(frame, [u, -(z - way.centre) * s, way.centre + (z - way.centre) * c]));
      loft.AddWire(this.wire(corners.map((p, i) => this.line(p, corners[(i + 1) % 4]!))));
    }
    loft.Build(this.keep(new this.oc.Message_ProgressRange()));
    return this.keep(this.keep(new this.oc.BRepAlgoAPI_Common(whole, this.keep(loft.Shape()))).Shape());
  }

  /** A flat piece of a bend between two parallels. */
  flatPiece(frame: Rigid, { from, to }: Pick<ZoneQuad, 'from' | 'to'>, thickness: number, length: number): TopoDS_Shape {
    const corners = [vertex(from[0], 0), vertex(to[0], 0), vertex(to[1], length), vertex(from[1], length)];
    return this.plate(corners, [], frame, thickness);
  }

  fused(solids: readonly TopoDS_Shape[]): TopoDS_Shape {
    const whole = solids.reduce((sum, next) => this.keep(this.keep(new this.oc.BRepAlgoAPI_Fuse(sum, next)).Shape()));
    const one = this.keep(new this.oc.ShapeUpgrade_UnifySameDomain(whole, true, true, false));
    one.Build();
    return one.Shape();
  }
}

/**
 * The part as one solid with bend i turned through `angles[i]` degrees: plates as prisms with true arcs, bends as true
 * cylinders. The caller frees it.
 */
export const foldedSolid = (oc: Kernel, sheet: Developed, angles: readonly number[]): TopoDS_Shape | NoSolid => {
  const { part, allowances } = sheet;
  const { poses } = fold(sheet, angles);
  const builder = new Builder(oc);
  try {
    const solids = part.plates.map(({ outline, holes }, i) => builder.plate(outline, holes, poses[i]!, part.thickness));
    for (const [i, bend] of part.bends.entries()) {
      const angle = angles[i]!;
      const base = compose(poses[bend.sides[0].plate]!, bendFrame(bend.sides[0].line));
      const sense = bend.direction === 'A' ? 1 : -1;
      for (const quad of zoneQuads(bend, 1)) {
        const { f: [f0, f1], from, to } = quad;
        const frame = compose(base, alongArc(sheet, i, angle, f0));
        if (angle < FLAT_ANGLE) {
          solids.push(builder.flatPiece(frame, quad, part.thickness, allowances[i]! * (f1 - f0)));
          continue;
        }
        const radius = insideRadiusAt(sheet, i, angle);
        const way = { centre: sense * (radius + part.thickness / 2), turned: ((angle * Math.PI) / 180) * (f1 - f0), sense: sense as 1 | -1 };
        const slant = Math.max(Math.abs(from[1] - from[0]), Math.abs(to[1] - to[0]));
        if (slant <= SAME_POINT) solids.push(builder.bendPiece(frame, [from[0], to[0]], part.thickness, way));
        else if (radius < LEAST_SLANTED) return { sentence: `Bend ${bend.id} of ${part.name} ends slanted by ${slant.toFixed(2)} mm over an arc of inside radius ${radius.toFixed(3)} mm: such ends are written from ${LEAST_SLANTED} mm on.` };
        else solids.push(builder.slantedPiece(frame, quad, part.thickness, way));
      }
    }
    return builder.fused(solids);
  } finally {
    builder.free();
  }
};

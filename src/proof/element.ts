import { type Rigid, compose, flatten } from '../geometry/index.js';
import type { Developed } from '../sheet/index.js';
import { sideFrame } from './bendShape.js';
import type { Box } from './box.js';
import type { Manifold } from './engine.js';
import { platePoses } from './fold.js';
import { type Metal, emptyPlate } from './metal.js';

/** An element's frame in that of its wing's root plate with the running bends at x. */
export const relOf = (e: Element, x: number): Rigid => e.relAt?.(x) ?? e.rel;

/** The two groups of metal that swing during a stroke, each rigid in itself. */
export type Wing = 'gauge' | 'front';

/** A plate or a bend's zone as it takes part in one step. */
export interface Element {
  readonly name: string;
  readonly kind: 'plate' | 'zone';
  readonly index: number;
  /** The wing that it belongs to; a running zone hangs on the wing of its side 0. */
  readonly wing: Wing;
  /** Bending in this very step. */
  readonly running: boolean;
  /** Its own frame in that of the wing's root plate. */
  readonly rel: Rigid;
  /** Of what moves within its wing during the stroke (between the bends of an offset): the same at the running angle x. */
  relAt?(x: number): Rigid;
  /** Its metal at the angle x (radians) of the running bend, in its own frame. */
  solid(x: number, thinner: number, filled: boolean): Manifold;
  box(x: number, thinner: number): Box;
  /** Whether `filled` makes a difference. */
  readonly pierced: boolean;
}

export interface WingMap {
  readonly ofPlate: ReadonlyMap<number, Wing>;
  readonly roots: Readonly<Record<Wing, number>>;
}

/** Which plates swing with the gauge side and which with the front: the side changes at each running bend. */
export const wingsOf = (sheet: Developed, running: ReadonlySet<number>, roots: Readonly<Record<Wing, number>>): WingMap => {
  const ofPlate = new Map<number, Wing>([[roots.gauge, 'gauge']]);
  const queue = [roots.gauge];
  for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
    sheet.part.bends.forEach((bend, i) => {
      const [p, q] = [bend.sides[0].plate, bend.sides[1].plate];
      const other = p === at ? q : q === at ? p : undefined;
      if (other === undefined || ofPlate.has(other)) return;
      const here = ofPlate.get(at)!;
      ofPlate.set(other, running.has(i) ? (here === 'gauge' ? 'front' : 'gauge') : here);
      queue.push(other);
    });
  }
  return { ofPlate, roots };
};

/**
 * Every plate and zone with its place in its wing, the bends at `angles` (radians): `rel` holds for the whole step,
 * since bends of one stroke lie on one line.
 */
export const elementsOf = (
  sheet: Developed,
  metal: Metal,
  angles: readonly number[],
  running: ReadonlySet<number>,
  wings: WingMap,
  names: readonly string[],
  between?: { readonly web: number; relAt(x: number): Rigid },
): Element[] => {
  const poses = {
    gauge: platePoses(sheet, metal.shapes, angles, wings.roots.gauge),
    front: platePoses(sheet, metal.shapes, angles, wings.roots.front),
  };
  const elements: Element[] = [];
  sheet.part.plates.forEach((plate, index) => {
    const wing = wings.ofPlate.get(index);
    if (wing === undefined || emptyPlate(sheet, index)) return;
    elements.push({
      name: names[index]!,
      kind: 'plate',
      index,
      wing,
      running: between?.web === index,
      rel: poses[wing].get(index)!,
      ...(between?.web === index ? { relAt: between.relAt } : {}),
      solid: (_, thinner, filled) => metal.plate(index, filled || plate.holes.length === 0, thinner),
      box: (_, thinner) => metal.plateBox(index, thinner),
      pierced: plate.holes.length > 0,
    });
  });
  sheet.part.bends.forEach((bend, index) => {
    const wing = wings.ofPlate.get(bend.sides[0].plate);
    if (wing === undefined || bend.zone.length === 0) return;
    const at = (x: number): number => (running.has(index) ? x : angles[index]!);
    elements.push({
      name: `bend ${bend.id}`,
      kind: 'zone',
      index,
      wing,
      running: running.has(index),
      rel: compose(poses[wing].get(bend.sides[0].plate)!, sideFrame(bend.sides[0].line)),
      ...(between && running.has(index) && bend.sides[0].plate === between.web ? { relAt: (x: number) => compose(between.relAt(x), sideFrame(bend.sides[0].line)) } : {}),
      solid: (x, thinner) => metal.zone(index, at(x), thinner),
      box: (x, thinner) => metal.zoneBox(index, at(x), thinner),
      pierced: false,
    });
  });
  return elements;
};

/** Whether the plate lies wholly on its own side of the bend's line, so that the two wings cannot meet below 180 degrees. */
export const onOwnSide = (sheet: Developed, bend: number, side: 0 | 1): boolean => {
  const { plate, line } = sheet.part.bends[bend]!.sides[side];
  const frame = sideFrame(line);
  return flatten(sheet.part.plates[plate]!.outline, 0.1).every((p) => {
    const v = (p[0] - frame.o[0]) * frame.y[0] + (p[1] - frame.o[1]) * frame.y[1];
    return side === 1 ? v >= -1e-6 : v <= 1e-6;
  });
};

import { apply } from '../geometry/index.js';
import type { Metal } from '../metal/index.js';
import { type Dimension, type Feature, type DimensionReading, bendsOf, edgeAt, heightOver, path, plateNames, readings } from '../sheet/index.js';
import type { Machine } from '../shop/index.js';
import { type BendChains, type Chain, type Slopes, backOf, chainOf, foldTo, slopesOf, sumOfChains } from './chain.js';
import { type ErrorSource, type ErrorSources, type SeatsLeft, angleSlopes, errorSources, seatsAtBest } from './errorSources.js';
import type { Contribution, Spread } from './trial.js';
import type { StrokeOption } from './strokeOption.js';
import { bendLength } from './strokeLength.js';
import type { Tooling } from './tooling.js';
import { alongSign, wingFrame } from './views.js';

/** Where the bends made so far came to lie, to first order. */
export type Placed = ReadonlyMap<number, Pick<BendChains, 'shift' | 'skew'>>;

/** What a reading comes out wrong by, as far as sources are known. mm */
export interface Prediction {
  readonly batch: Spread;
  readonly firstPiece: Spread;
  readonly contributions: readonly Contribution[];
  /** Sources that matter and that nobody measured. */
  readonly notKnown: readonly string[];
}

const PER_METRE = 1e-3;
/** A source of which a whole unit moves the reading by less than this (mm) does not matter, known or not. */
const NO_MATTER = 1e-3;
/** Contributions under this are left out of the list, not out of the sum. mm */
const NOT_TOLD = 5e-4;

const unitOf = (source: ErrorSource): Chain => new Map([[source.id, source.half ?? 1]]);

/** How far a finger's contact moves with the sheet, for each finger of one stroke: slopes over the bends that are made, edge, R. */
interface Contact {
  readonly along: number;
  readonly slopes: Slopes;
  readonly byHeight: number;
}

export interface Deviations {
  /** The deviations with one more stroke placed by its stop. */
  readonly place: (before: Placed, option: StrokeOption) => Placed;
  /** All of `where` are readings of one dimension. */
  readonly predict: (where: readonly DimensionReading[], placed: Placed, isMade: (bend: number) => boolean) => Prediction;
  readonly predictDimension: (dimension: Dimension, placed: Placed) => Prediction;
  /** Scatter of where these bends lie, as a key: equal keys deviate alike from here on. */
  readonly key: (placed: Placed) => string;
}

/**
 * The scatter and the systematic errors of a part's dimensions on one machine with one tooling, by stops and order. `standing` says what
 * wear leaves where each step's station stands; without it each step is taken at the best place for its length.
 */
export const createDeviations = (
  tooling: Pick<Tooling, 'sheet' | 'forming'>, machine: Machine, metal: Metal, standing?: ReadonlyMap<string, SeatsLeft>,
): Deviations => {
  const { sheet, forming } = tooling;
  const { part } = sheet;
  const sources: ErrorSources = errorSources(machine, metal, part.thickness);
  const names = plateNames(part);
  const thickness = sumOfChains([unitOf(sources.thickness), 1], [unitOf(sources.thicknessRead), 1]);
  const angleOf = new Map<string, Chain>();
  /** Angle and deduction of a bend: they come from its stroke alone, not from where it lies. Bends of one stroke share the ram's place. */
  const formedOf = (bend: number, step: string): Pick<BendChains, 'angle' | 'deduction'> => {
    const { die, tipRadius, bend: vBend, deduction } = forming[bend]!;
    const setup = vBend ? `V ${die.v} to ${vBend.bendAngle.toFixed(1)} degrees bend angle, tip ${tipRadius}` : die.name;
    const key = `${bend}|${step}`;
    let angle = angleOf.get(key);
    if (!angle && !vBend) {
      // a step's angle and lengths are its tool's, wherever the ram stands
      angleOf.set(key, (angle = unitOf(sources.angle(setup))));
    }
    if (!angle) {
      const slope = angleSlopes(vBend!);
      const left = standing?.get(step) ?? seatsAtBest(machine, lengthOf.get(step) ?? bendLength(part, bend));
      angle = sumOfChains(
        [unitOf(sources.ram(step)), slope.ram], ...(left ? [[unitOf(sources.seats(step, left)), slope.ram] as const] : []), [thickness, slope.thickness], [unitOf(sources.strength), slope.strength], [unitOf(sources.angle(setup)), 1],
      );
      angleOf.set(key, angle);
    }
    return { angle, deduction: unitOf(sources.deduction(setup, deduction.spread)) };
  };
  const stepOf = new Map<number, string>();
  /** mm from end to end of a step's bends. */
  const lengthOf = new Map<string, number>();
  const chainsOf = (placed: Placed) => (bend: number): BendChains => ({ ...placed.get(bend)!, ...formedOf(bend, stepOf.get(bend) ?? part.bends[bend]!.id) });
  const edgeName = (feature: Feature & { kind: 'edge' }): string => `edge ${edgeAt(part, feature.plate, feature.at) + 1} of ${names[feature.plate]!}`;
  /** A cut edge's own error, counted out of the plate. */
  const cutOf = (feature: Feature): Chain => (feature.kind === 'edge' ? unitOf(sources.edge(edgeName(feature))) : new Map());

  const contacts = new WeakMap<StrokeOption, readonly Contact[]>();
  const contactsOf = (option: StrokeOption): readonly Contact[] => {
    const known = contacts.get(option);
    if (known) return known;
    const { setting: { seat, angleOf: bentBy }, stop } = option;
    const first = part.bends[seat.bends[0]!]!;
    const root = first.sides[seat.gaugeSide].plate;
    const into = wingFrame(first, seat.gaugeSide, seat.gaugeSide);
    const stands = (bend: number): boolean => bentBy(bend) > 0 && !seat.bends.includes(bend);
    const { feature } = stop;
    if (feature === null) return [];
    const reads = stop.z.map((along): Parameters<typeof slopesOf>[5][number] => (other, poses) => backOf(other, poses, into, feature, along, stop.height));
    const poses = foldTo(sheet, stands, root, feature.plate);
    const slopes = slopesOf(sheet, stands, root, feature.plate, path(part, root, feature.plate), reads);
    const fresh = stop.z.map((along, i): Contact => ({
      along, slopes: slopes[i]!,
      byHeight: backOf(sheet, poses, into, feature, along, stop.height + 0.5) - backOf(sheet, poses, into, feature, along, stop.height - 0.5),
    }));
    contacts.set(option, fresh);
    return fresh;
  };

  const place: Deviations['place'] = (before, option) => {
    const { setting: { seat, group }, stop, line } = option;
    // the first pass has placed the bend
    if (group.pass === 2) return before;
    const step = group.bends.map((b) => part.bends[b]!.id).join('+');
    for (const bend of group.bends) stepOf.set(bend, step);
    lengthOf.set(step, line[1] - line[0]);
    const first = part.bends[group.bends[0]!]!;
    const into = wingFrame(first, seat.gaugeSide, group.hubSide);
    // how far the bend line lies off towards the gauge at a place along the bed: at(place) = level + slope (place - from)
    let level: Chain;
    let slope: Chain;
    let from = (line[0] + line[1]) / 2;
    if (stop.feature === null) {
      level = unitOf(sources.scribed(step));
      slope = sumOfChains([unitOf(sources.scribed(`${step}, its other end`)), 2 / (line[1] - line[0])]);
    } else {
      // along a tapered edge the sheet's own place along the bed moves the bend line too
      const taper = (stop.skew ?? 0) / (stop.spread || 1);
      const middle = stop.z.reduce((sum, z) => sum + z, 0) / stop.z.length;
      const offs = contactsOf(option).map((contact, finger) => sumOfChains(
        [chainOf(contact.slopes, chainsOf(before), thickness), 1], [cutOf(stop.feature!), 1],
        [unitOf(sources.x(taper === 0 ? step : `${step}, finger ${finger + 1}`)), -1], [unitOf(sources.xZero), -1], [unitOf(sources.play(step, finger)), -1],
        ...(taper === 0 ? [] : [[unitOf(sources.sideways(step)), taper] as const]), [unitOf(sources.r(step)), contact.byHeight], [unitOf(sources.squareness), -(contact.along - middle) * PER_METRE],
      ));
      [level, from] = [offs[0]!, stop.z[0]!];
      slope = offs.length > 1 ? sumOfChains([offs[1]!, 1 / stop.spread], [offs[0]!, -1 / stop.spread])
        : sumOfChains([unitOf(sources.heldSquare(step)), 1 / stop.touching]);
    }
    const placed = new Map(before);
    for (const bend of group.bends) {
      const { line: own } = part.bends[bend]!.sides.find((s) => s.plate === group.hub)!;
      const [p, q] = [apply(into, [...own.from, 0]), apply(into, [...own.to, 0])];
      // the shift counts from side 0 to side 1, the line's left: to the gauge when the line runs with the first bend's along at that seat
      const along = Math.sign(q[0] - p[0]);
      const towards = along * alongSign(first, seat.gaugeSide) * (seat.gaugeSide === 1 ? 1 : -1);
      placed.set(bend, {
        shift: sumOfChains([level, towards], [slope, towards * ((p[0] + q[0]) / 2 - from)]),
        skew: sumOfChains([slope, towards * along]),
      });
    }
    return placed;
  };

  const predict: Deviations['predict'] = (where, placed, isMade) => {
    let worst: { chain: Chain; size: number } | null = null;
    const { datum, other } = where[0]!;
    const slopes = slopesOf(sheet, isMade, datum.plate, other.plate, bendsOf(part, where[0]!), where.map((reading) => (bent, poses) => heightOver(bent, poses, reading)));
    for (const [i, reading] of where.entries()) {
      const chain = sumOfChains([chainOf(slopes[i]!, chainsOf(placed), thickness), 1], [cutOf(reading.datum), -1], [cutOf(reading.other), 1]);
      const size = Math.hypot(...[...chain].filter(([id]) => sources.get(id).half !== null && sources.get(id).kind === 'scatter').map(([, s]) => s));
      if (!worst || size > worst.size) worst = { chain, size };
    }
    const told = [...worst!.chain].map(([id, size]) => ({ source: sources.get(id), size: Math.abs(size) })).sort((a, b) => b.size - a.size);
    const spread = (kinds: readonly ErrorSource['kind'][]): Spread => {
      const sizes = told.filter(({ source }) => source.half !== null && kinds.includes(source.kind)).map(({ size }) => size);
      return { rootSumSquare: Math.hypot(...sizes), worstCase: sizes.reduce((a, b) => a + b, 0) };
    };
    return {
      batch: spread(['scatter']), firstPiece: spread(['scatter', 'systematic']),
      contributions: told.filter(({ source, size }) => source.half !== null && size >= NOT_TOLD)
        .map(({ source, size }) => ({ what: source.what, at: source.at, kind: source.kind, half: source.half!, unit: source.unit, size, mark: source.mark })),
      notKnown: [...new Set(told.filter(({ source, size }) => source.half === null && size >= NO_MATTER).map(({ source }) => source.what))],
    };
  };

  return {
    place, predict,
    predictDimension: (dimension, placed) => predict(readings(sheet, dimension, part.bends.map((b) => b.bendAngle)), placed, () => true),
    key: (placed) => [...placed.keys()].sort((a, b) => a - b).map((bend) => {
      const { shift, skew } = placed.get(bend)!;
      const words = (chain: Chain, digits: number): string => [...chain].filter(([id, size]) => sources.get(id).kind === 'scatter' && size !== 0).map(([id, size]) => `${id}=${size.toFixed(digits)}`).sort().join();
      return `${bend}:${words(shift, 4)}/${words(skew, 7)}`;
    }).join(';'),
  };
};

import { type Assumption, rolledAssumptions } from '../../sheet/index.js';
import { CURVE_CHORD } from '../tolerances.js';
import type { Placed } from './frames.js';
import { faceNumber } from './judge.js';
import type { MadeBend } from './makeBend.js';
import type { OpenedHems } from './openHems.js';
import type { PlateFormed, PlateMetal } from './plateMetal.js';

/** A plate as thick as `distance` (mm) instead. */
export interface Varied {
  readonly plate: number;
  readonly distance: number;
}

interface Read {
  readonly placed: readonly Placed[];
  readonly metals: readonly PlateMetal[];
  readonly made: readonly MadeBend[];
  readonly thickness: number;
  readonly slivers: readonly { readonly face: number; readonly width: number }[];
  /** Share by which plates and bends differ from the solid's volume. */
  readonly off: number;
  readonly hems: OpenedHems;
  readonly varied: readonly Varied[];
}

/** Volume shares below this are rounding of areas and chords. */
export const SAME_VOLUME = 0.001;

const many = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`;

const bendAssumptions = ({ placed, made, thickness, hems }: Read): Assumption[] => {
  const hanging = placed.filter((p) => p.parent);
  return made.flatMap(({ bend, clipped }, i): Assumption[] => {
    const { drawn } = hanging[i]!.parent!.joint;
    const r = bend.insideRadius.toFixed(2);
    const list: Assumption[] = [];
    const say = (code: Assumption['code'], sentence: string): void => {
      list.push({ code, sentence, plates: [], bends: [bend.id] });
    };
    if (drawn.kind === 'sharp') {
      if (drawn.radiusFrom === 'assumed') say('sharp bend', `Bend ${bend.id} is drawn sharp; inside radius ${r} mm is taken, the outside mould line stays where drawn.`);
      else {
        const other = drawn.radiusFrom === 'inside' ? 'outside' : 'inside';
        say('sharp bend', `The ${other} of bend ${bend.id} does not follow its ${drawn.radiusFrom}; inside radius ${r} mm is taken from the ${drawn.radiusFrom} and the flat faces stay where drawn.`);
      }
    }
    if (drawn.kind === 'round' && drawn.inside.some(({ faces }) => faces.some((face) => face >= hems.added))) {
      say('bend radius', `Hem ${bend.id} is drawn fully closed, its two layers one body; it is taken as closed with ${(2 * bend.insideRadius).toFixed(2)} mm between them (common practice, no source), its flat faces as long as drawn.`);
    }
    list.push(...rolledAssumptions([bend], thickness));
    if (clipped) say('edge approximated', `The two faces of bend ${bend.id} are cut out differently; the metal common to both is kept, in chords within ${CURVE_CHORD} mm.`);
    return list;
  });
};

type FormedKind = PlateFormed['kind'];

const FORMED_WORDS: Readonly<Record<FormedKind, readonly [string, string]>> = {
  raised: ['raised feature (dimple or emboss)', 'raised features (dimples or embosses)'],
  opened: ['formed feature open at an edge or at its top (louvre, collar)', 'formed features open at an edge or at their top (louvres, collars)'],
  boss: ['boss, stud or fastener', 'bosses, studs or fasteners'],
  recess: ['recess', 'recesses'],
};

const plateAssumptions = ({ metals }: Read): Assumption[] =>
  metals.flatMap(({ metal, approximated, formed }, plate): Assumption[] => {
    const list: Assumption[] = [];
    const say = (code: Assumption['code'], sentence: string): void => {
      list.push({ code, sentence, plates: [plate], bends: [] });
    };
    if (approximated > 0) say('edge approximated', `${many(approximated, 'edge', 'edges')} on the two faces of plate ${plate + 1}, neither straight nor round: kept as chords within ${CURVE_CHORD} mm.`);
    if (metal.clipped) say('edge approximated', `The two faces of plate ${plate + 1} cross each other's outlines; the metal common to both is kept, in chords within ${CURVE_CHORD} mm.`);
    if (metal.sunk.length > 0) say('feature left out', `${many(metal.sunk.length, 'hole', 'holes')} of plate ${plate + 1} wider on one face (countersink or chamfer): the wider outline is kept.`);
    if (metal.oneSided > 0) say('feature left out', `${many(metal.oneSided, 'recess or hole', 'recesses or holes')} on one face only of plate ${plate + 1} (pocket or formed feature): kept as cut-outs.`);
    for (const [kind, side] of [...new Set(formed.map(({ kind, onA }) => `${kind}/${onA ? 'A' : 'B'}`))].map((word) => word.split('/') as [FormedKind, 'A' | 'B'])) {
      const alike = formed.filter((it) => it.kind === kind && it.onA === (side === 'A'));
      const most = Math.max(...alike.map(({ height, depth }) => Math.max(height, depth))).toFixed(2);
      const what = many(alike.length, ...FORMED_WORDS[kind]);
      say('feature left out', kind === 'recess'
        ? `${what} in the ${side} face of plate ${plate + 1}, up to ${most} mm deep: the plate is kept whole under ${alike.length === 1 ? 'it' : 'them'}.`
        : `${what} on the ${side} face of plate ${plate + 1}, up to ${most} mm high: the plate goes on under ${alike.length === 1 ? 'it' : 'them'}, and the height is kept, shown and held against the tools.`);
    }
    if (metal.outlineDiffers) say('thickness varies', `The outlines of the two faces of plate ${plate + 1} differ (chamfer or slanted edge); the smaller metal is kept.`);
    return list;
  });

/** What was taken for granted, plate by plate and bend by bend. */
export const assumptionsOf = (read: Read): Assumption[] => {
  const list = [...bendAssumptions(read), ...plateAssumptions(read)];
  if (read.slivers.length > 0) {
    const widest = Math.max(...read.slivers.map((s) => s.width));
    list.push({
      code: 'healed gap',
      sentence: `${many(read.slivers.length, 'face', 'faces')} no wider than ${widest.toFixed(5)} mm (${read.slivers.map((s) => faceNumber(s.face)).join(', ')}) were closed.`,
      plates: [],
      bends: [],
    });
  }
  if (read.varied.length > 0) {
    const all = read.varied.map(({ distance }) => distance);
    const [least, most] = [Math.min(...all), Math.max(...all)];
    list.push({
      code: 'thickness varies',
      sentence: `Faces of ${many(new Set(read.varied.map(({ plate }) => plate)).size, 'plate', 'plates')} lie ${least === most ? '' : `${least.toFixed(3)} to `}${most.toFixed(3)} mm apart back to back; ${read.thickness.toFixed(2)} mm, which most faces have, is taken for all.`,
      plates: [...new Set(read.varied.map(({ plate }) => plate))],
      bends: [],
    });
  }
  if (Math.abs(read.off) > SAME_VOLUME) {
    list.push({
      code: 'thickness varies',
      sentence: `Plates and bends as read make ${(100 * Math.abs(read.off)).toFixed(2)} % ${read.off > 0 ? 'more' : 'less'} metal than the solid (features left out).`,
      plates: [],
      bends: [],
    });
  }
  return list;
};

import type { LayerRole } from '../../sheet/index.js';
import type { Curve } from './dxfCurves.js';

/** The lines of one layer that have one line type. */
export interface DxfLayer {
  /** The layer's name; with the line type in brackets where its lines bring one of their own. */
  readonly key: string;
  readonly layer: string;
  readonly lineType: string;
  readonly edges: number;
  readonly straight: number;
  readonly role: LayerRole;
  /** The role was guessed from the names, not told. */
  readonly guessed: boolean;
}

/** Words for bends in the languages such files come in. */
const BENDS = /bend|bieg|kant|knick|fold|pli|pieg|pleg/i;
const UP = /(^|[^a-z])(up|hoch|auf|oben)([^a-z]|$)|[-_ ]a$/i;
const DOWN = /(^|[^a-z])(down|dn|unten|ab)([^a-z]|$)|[-_ ]b$/i;
/** Writing, measures, centre lines, construction: nothing to cut. */
const NOT_CUT = /text|note|dim|bem|mass|cent|mitte|axis|hidden|verdeckt|dash|strich|phantom|construct|hilf|engrav|gravur|mark|frame|title|border/i;

export const keyOf = ({ layer, lineType, ownType }: Pick<Curve, 'layer' | 'lineType' | 'ownType'>): string => (ownType ? `${layer} (${lineType})` : layer);

/** A first guess from the names of layer and line type. */
const guess = ({ layer, lineType }: Pick<Curve, 'layer' | 'lineType'>): LayerRole => {
  const named = BENDS.test(layer) ? layer : BENDS.test(lineType) ? lineType : undefined;
  if (named !== undefined) {
    if (UP.test(named)) return 'bend A';
    return DOWN.test(named) ? 'bend B' : 'bend';
  }
  return NOT_CUT.test(layer) || NOT_CUT.test(lineType) ? 'ignore' : 'cut';
};

/** Layers and line types with what their lines are taken for: as told, else guessed. */
export const layersOf = (curves: readonly Curve[], told: Readonly<Record<string, LayerRole>> = {}): readonly DxfLayer[] => {
  const found = new Map<string, { readonly like: Curve; edges: number; straight: number }>();
  for (const curve of curves) {
    const key = keyOf(curve);
    const known = found.get(key) ?? { like: curve, edges: 0, straight: 0 };
    known.edges += 1;
    if (curve.bulge === 0) known.straight += 1;
    found.set(key, known);
  }
  return [...found].map(([key, { like, edges, straight }]) => {
    const role = Object.hasOwn(told, key) ? told[key]! : guess(like);
    return { key, layer: like.layer, lineType: like.lineType, edges, straight, role, guessed: !Object.hasOwn(told, key) };
  });
};

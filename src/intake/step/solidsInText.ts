import { type StepRecord, type StepValue, stepRecords } from './stepRecords.js';

/** A use of a solid in a file: the solid's own record, its product's name and id as they are written, and its number of faces. */
export interface SolidInText {
  readonly solid: number;
  readonly product: number;
  readonly names: readonly string[];
  readonly faces: number;
}

const SOLIDS = ['MANIFOLD_SOLID_BREP', 'BREP_WITH_VOIDS', 'FACETED_BREP'];
const SHELLS = ['CLOSED_SHELL', 'ORIENTED_CLOSED_SHELL'];
const REPRESENTATIONS = ['SHAPE_REPRESENTATION', 'ADVANCED_BREP_SHAPE_REPRESENTATION', 'FACETED_BREP_SHAPE_REPRESENTATION', 'MANIFOLD_SURFACE_SHAPE_REPRESENTATION', 'GEOMETRICALLY_BOUNDED_SURFACE_SHAPE_REPRESENTATION'];
const TYPES = new Set([
  ...SOLIDS, ...SHELLS, ...REPRESENTATIONS,
  'PRODUCT', 'PRODUCT_DEFINITION_FORMATION', 'PRODUCT_DEFINITION_FORMATION_WITH_SPECIFIED_SOURCE', 'PRODUCT_DEFINITION', 'PRODUCT_DEFINITION_WITH_ASSOCIATED_DOCUMENTS',
  'PRODUCT_DEFINITION_SHAPE', 'SHAPE_DEFINITION_REPRESENTATION', 'SHAPE_REPRESENTATION_RELATIONSHIP', 'NEXT_ASSEMBLY_USAGE_OCCURRENCE', 'MAPPED_ITEM', 'REPRESENTATION_MAP',
]);

const isReference = (value: StepValue | undefined): value is number => typeof value === 'number';
const references = (value: StepValue | undefined): readonly number[] => (Array.isArray(value) ? (value as readonly StepValue[]).filter(isReference) : []);

const push = (map: Map<number, number[]>, key: StepValue | undefined, value: StepValue | undefined): void => {
  if (!isReference(key) || !isReference(value)) return;
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
};

/** Steps that a walk may take for each solid that the kernel found: a hostile file uses nothing a billion times. */
const STEPS_EACH = 200;

/**
 * The solids of a file in the order in which the kernel hands them out: of every product that no other uses first what its assembly
 * lists, in the order of the file, then its own. Undefined where there are not `count` of them: what is not understood is not named.
 */
export const solidsInText = (text: string, count: number): readonly SolidInText[] | undefined => {
  const records = new Map<number, StepRecord>();
  const [children, shapesOf, shownBy, beside] = [0, 1, 2, 3].map(() => new Map<number, number[]>()) as [Map<number, number[]>, Map<number, number[]>, Map<number, number[]>, Map<number, number[]>];
  const definitions: number[] = [];
  const used = new Set<number>();
  for (const record of stepRecords(text, TYPES)) {
    const { id, type, args } = record;
    records.set(id, record);
    if (type.startsWith('PRODUCT_DEFINITION') && !/FORMATION|SHAPE/.test(type)) definitions.push(id);
    else if (type === 'NEXT_ASSEMBLY_USAGE_OCCURRENCE') {
      push(children, args[3], args[4]);
      if (isReference(args[4])) used.add(args[4]);
    } else if (type === 'PRODUCT_DEFINITION_SHAPE') push(shapesOf, args[2], id);
    else if (type === 'SHAPE_DEFINITION_REPRESENTATION') push(shownBy, args[0], args[1]);
    else if (type === 'SHAPE_REPRESENTATION_RELATIONSHIP') {
      push(beside, args[2], args[3]);
      push(beside, args[3], args[2]);
    }
  }
  const args = (id: StepValue | undefined): readonly StepValue[] => (isReference(id) ? (records.get(id)?.args ?? []) : []);
  const typeOf = (id: number): string => records.get(id)?.type ?? '';

  const facesOf = (solid: number): number => {
    const shells = args(solid).flatMap((it) => (isReference(it) ? [it] : references(it)));
    const faces = (shell: number, deep: number): number => (typeOf(shell) === 'CLOSED_SHELL' ? references(args(shell)[1]).length : deep > 2 ? 0 : args(shell).filter(isReference).reduce((sum, it) => sum + faces(it, deep + 1), 0));
    return shells.reduce((sum, shell) => sum + faces(shell, 0), 0);
  };

  const found: SolidInText[] = [];
  let steps = STEPS_EACH * (count + 10);
  const on = (): boolean => steps-- > 0 && found.length <= count;
  const representation = (id: number, product: number, names: readonly string[], seen: Set<number>): void => {
    if (seen.has(id) || !on()) return;
    seen.add(id);
    for (const item of references(args(id)[1])) {
      if (!on()) return;
      if (SOLIDS.includes(typeOf(item))) found.push({ solid: item, product, names, faces: facesOf(item) });
      else if (typeOf(item) === 'MAPPED_ITEM') {
        const mapped = args(args(item)[1])[1];
        // what is mapped may stand here several times: seen within its own way down only
        if (isReference(mapped) && !seen.has(mapped)) representation(mapped, product, names, new Set(seen));
      }
    }
    for (const next of beside.get(id) ?? []) representation(next, product, names, seen);
  };
  const definition = (id: number, above: readonly number[]): void => {
    if (above.includes(id) || !on()) return;
    for (const child of children.get(id) ?? []) definition(child, [...above, id]);
    const product = args(args(id)[2])[2];
    const names = args(product).slice(0, 2).filter((it) => typeof it === 'string');
    const seen = new Set<number>();
    for (const shape of shapesOf.get(id) ?? []) for (const shown of shownBy.get(shape) ?? []) representation(shown, isReference(product) ? product : id, names, seen);
  };
  for (const id of definitions) if (!used.has(id)) definition(id, []);
  return steps > 0 && found.length === count ? found : undefined;
};

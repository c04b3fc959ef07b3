import { basename, extname } from 'node:path';
import { type Command, Option } from 'commander';
import { type Intake, readDxfAside } from '../intake/index.js';
import type { BendTold, DxfReading, LayerRole } from '../sheet/index.js';
import { Fault } from './fault.js';
import { positive } from './numbers.js';
import { type RuleOptions, ruleOf } from './rule.js';

/** What can be told of a flat drawing on the command line. */
export interface DrawingOptions extends RuleOptions {
  readonly thickness?: string;
  readonly bendAngle?: string;
  readonly bendRadius?: string;
  readonly bendSide?: 'A' | 'B';
  readonly bend?: readonly string[];
  readonly layer?: readonly string[];
  readonly unit?: 'mm' | 'inch' | 'cm' | 'm';
  readonly gap?: string;
}

const ROLES: readonly LayerRole[] = ['cut', 'bend', 'bend A', 'bend B', 'ignore'];
const collect = (value: string, before: readonly string[] = []): readonly string[] => [...before, value];

export const drawingOptions = (command: Command): Command =>
  command
    .option('--thickness <mm>', 'of a flat as .dxf: the thickness of its sheet')
    .option('--bend-angle <degrees>', 'of a flat: bend angle of every bend without a written one (default 90)')
    .option('--bend-radius <mm>', 'of a flat: inside radius of every bend without a written one (default: the thickness)')
    .addOption(new Option('--bend-side <side>', 'of a flat: the side that bends close towards where nothing says (A: towards whoever looks)').choices(['A', 'B']))
    .option('--bend <id=angle,side,radius>', 'of a flat: one bend, e.g. b2=45,B,3 (what stays empty is read or taken); may be given again', collect)
    .option('--layer <name=role>', `of a flat: what a layer's lines are: ${ROLES.join(', ')}; may be given again`, collect)
    .addOption(new Option('--unit <unit>', 'the unit that a STEP file or a flat is in, whatever it declares').choices(['mm', 'inch', 'cm', 'm']))
    .option('--gap <mm>', 'of a flat: loose ends no further apart are joined (default 0.05)');

const parted = (option: string, typed: string): readonly [string, string] => {
  const at = typed.lastIndexOf('=');
  if (at < 1) throw new Fault(`${option} ${typed}: a name, =, and what it is are wanted.`);
  return [typed.slice(0, at), typed.slice(at + 1)];
};

const roleOf = (typed: string): readonly [string, LayerRole] => {
  const [name, role] = parted('--layer', typed);
  const found = ROLES.find((known) => known === role);
  if (found === undefined) throw new Fault(`--layer ${typed}: '${role}' is none of ${ROLES.join(', ')}.`);
  return [name, found];
};

const angle = (option: string, typed: string): number => {
  const value = positive(option, typed);
  if (value > 180) throw new Fault(`${option} ${typed}: a bend angle (0 flat, 180 folded back) is at most 180.`);
  return value;
};

const radius = (option: string, typed: string): number => {
  const value = Number(typed);
  if (typed.trim() === '' || !(value >= 0 && value <= 5000)) throw new Fault(`${option} ${typed}: an inside radius is a number of mm from 0 to 5000.`);
  return value;
};

const bendOf = (typed: string): readonly [string, BendTold] => {
  const [id, words] = parted('--bend', typed);
  const [turn = '', side = '', r = '', ...more] = words.split(',').map((word) => word.trim());
  if (more.length > 0 || !['', 'A', 'B'].includes(side)) throw new Fault(`--bend ${typed}: bend angle, side A or B, and inside radius are wanted, parted by commas.`);
  return [id, {
    ...(turn === '' ? {} : { bendAngle: angle('--bend', turn) }),
    ...(side === '' ? {} : { direction: side as 'A' | 'B' }),
    ...(r === '' ? {} : { insideRadius: radius('--bend', r) }),
  }];
};

const toldBy = (options: DrawingOptions): DxfReading => {
  const { thickness, bendAngle, bendRadius, bendSide, bend, layer, unit, gap } = options;
  const rule = ruleOf(options);
  const all: BendTold = {
    ...(bendAngle === undefined ? {} : { bendAngle: angle('--bend-angle', bendAngle) }),
    ...(bendRadius === undefined ? {} : { insideRadius: radius('--bend-radius', bendRadius) }),
    ...(bendSide === undefined ? {} : { direction: bendSide }),
  };
  return {
    from: 'dxf',
    ...(thickness === undefined ? {} : { thickness: positive('--thickness', thickness) }),
    ...(rule === undefined ? {} : { rule }),
    ...(Object.keys(all).length === 0 ? {} : { bend: all }),
    ...(bend === undefined ? {} : { bends: Object.fromEntries(bend.map(bendOf)) }),
    ...(layer === undefined ? {} : { roles: Object.fromEntries(layer.map(roleOf)) }),
    ...(unit === undefined ? {} : { unit }),
    ...(gap === undefined ? {} : { gap: positive('--gap', gap) }),
  };
};

/** A flat drawing as a part; a name of the options that the drawing does not have is a fault too. */
export const readDrawing = async (path: string, bytes: Uint8Array, options: DrawingOptions): Promise<Intake> => {
  const told = toldBy(options);
  const read = await readDxfAside(bytes, basename(path, extname(path)), told);
  const keys = read.seen.layers.map(({ key }) => key);
  const strange = keys.length === 0 ? undefined : Object.keys(told.roles ?? {}).find((name) => !keys.includes(name));
  if (strange !== undefined) throw new Fault(`--layer ${strange}: the drawing has no such layer; there are ${keys.join(', ')}.`);
  if (!read.ok) {
    const { code, sentence, measure } = read.failure;
    return { parts: [], refused: [{ index: 0, code, sentence: code === 'thickness not known' ? `${sentence.slice(0, -1)}, for example --thickness 1.5.` : sentence, faces: [], ...(measure === undefined ? {} : { measure }) }] };
  }
  const { part } = read.value;
  const none = Object.keys(told.bends ?? {}).find((id) => !part.bends.some((bend) => bend.id === id));
  if (none !== undefined) throw new Fault(`--bend ${none}: the drawing has no such bend; there are ${part.bends.map(({ id }) => id).join(', ') || 'none'}.`);
  return { parts: [{ index: 0, part }], refused: [] };
};

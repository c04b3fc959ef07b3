import type { Command } from 'commander';
import { DEFAULT_K } from '../forming/index.js';
import { type Intake, foldedStep } from '../intake/index.js';
import { type Part, blank, defaultDimensions, develop, foldShares, plateNames, ruleInWords, valueOf } from '../sheet/index.js';
import { describeDimension } from '../trial/index.js';
import { commandWith } from './commandLine.js';
import { Fault } from './fault.js';
import { type OutputOptions, JSON_UNITS, answer } from './print.js';
import { PART_FILE, type ReadOptions, readOnlyFile, readingOptions } from './readParts.js';
import { RULE_NAMES, type RuleOptions, ruleFor } from './rule.js';
import { strokes } from './strokes.js';
import { table } from './table.js';
import { show } from './units.js';
import { writeWhole } from './writeFile.js';
import { wholeNumber } from './numbers.js';

const lengthOf = ({ from, to }: Part['bends'][number]['sides'][0]['line']): number => Math.hypot(to[0] - from[0], to[1] - from[1]);

const many = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;

/** All that `part` says of one part. */
export const describePart = (index: number, part: Part, options: RuleOptions, sameAs?: number) => {
  const rule = ruleFor(part, options);
  const sheet = develop(part, rule);
  const flat = blank(sheet);
  return {
    index,
    ...(sameAs === undefined ? {} : { sameAs }),
    name: part.name,
    thickness: part.thickness,
    bends: part.bends.map((bend, i) => ({
      id: bend.id,
      bendAngle: bend.bendAngle,
      insideRadius: bend.insideRadius,
      length: lengthOf(bend.sides[0].line),
      direction: bend.direction,
      kind: bend.kind,
      allowance: sheet.allowances[i]!,
    })),
    plates: part.plates.length,
    strokes: strokes(sheet),
    blank: flat.ok
      ? { length: flat.value.length, width: flat.value.width, area: flat.value.area, rule: ruleInWords(rule), nominal: true }
      : null,
    ...(flat.ok ? {} : { noBlank: flat.failure.sentence }),
    ...(part.volume === undefined ? {} : { volume: part.volume }),
    unit: part.unit,
    dimensions: (part.dimensions ?? defaultDimensions(sheet)).map((dimension) => ({
      id: dimension.id, what: describeDimension(dimension, plateNames(part), part), value: valueOf(sheet, dimension),
      ...(dimension.tolerance === undefined ? {} : { tolerance: dimension.tolerance }), ...(dimension.class === undefined ? {} : { class: dimension.class }),
    })),
    ...(part.formed === undefined ? {} : { formed: part.formed }),
    assumptions: part.assumptions,
  };
};

type Description = ReturnType<typeof describePart>;

export const partInWords = (part: Description, units: 'mm' | 'in' | undefined): string => {
  const s = show(units);
  const { blank: flat } = part;
  return [
    `Body ${part.index}: ${part.name}, ${s.length(part.thickness)} thick, ${many(part.plates, 'plate')}, ${many(part.bends.length, 'bend')} in ${many(part.strokes, 'stroke')}${part.sameAs === undefined ? '' : `; the same shape as body ${part.sameAs}`}`,
    flat === null
      ? `No blank: ${part.noBlank ?? ''}`
      : `Nominal blank by ${flat.rule}: ${s.lengths([flat.length, flat.width])}, ${(flat.area / 100).toFixed(1)} cm2`,
    ...(part.bends.length === 0
      ? []
      : [
          table(
            [
              { heading: 'bend' },
              { heading: 'kind' },
              { heading: 'towards' },
              { heading: 'bend angle deg', right: true },
              { heading: `inside radius ${s.unit}`, right: true },
              { heading: `length ${s.unit}`, right: true },
            ],
            part.bends.map((bend) => [
              bend.id, bend.kind, `${bend.direction} side`, bend.bendAngle.toFixed(2), s.bare(bend.insideRadius), s.bare(bend.length),
            ]),
          ),
        ]),
    ...(part.dimensions.length === 0 ? [] : [`Dimensions, in ${s.unit}: ${part.dimensions.map(({ id, what, value }) => `${id} ${s.bare(value)} (${what})`).join('; ')}`]),
    ...part.assumptions.map(({ sentence }) => `Assumed: ${sentence}`),
  ].join('\n');
};

const inWords = (parts: readonly Description[], refused: Intake['refused'], units: 'mm' | 'in' | undefined): string =>
  [
    ...parts.map((part) => partInWords(part, units)),
    ...refused.map(({ index, name, sentence }) => `Body ${index}${name === undefined ? '' : `, ${name},`} is refused: ${sentence}`),
  ].join('\n\n');

/** The picture of the first refused body that has faces to show. */
const writeRefusal = async (refused: Intake['refused'], output: string, file: string): Promise<void> => {
  const shown = refused.find(({ outlines }) => outlines !== undefined);
  if (shown?.outlines === undefined) throw new Fault(`${file}: nothing with faces was refused, so there is no picture of a refusal to write.`);
  // loaded here alone: the papers bring their own lettering along
  const { pictureToSvg, refusalPicture } = await import('../papers/index.js');
  await writeWhole(output, pictureToSvg(refusalPicture(shown.outlines, shown.sentence)));
};

interface StepOptions {
  readonly picture?: string;
  readonly solid?: string;
  readonly step?: string;
  readonly fold?: string;
}

/** All bodies of the file, or the one asked for. */
const chosen = (intake: Intake, solid: string | undefined, file: string): Intake => {
  if (solid === undefined) return intake;
  const index = wholeNumber('--solid', solid, 0, 100_000);
  const of = <T extends { readonly index: number }>(list: readonly T[]): T[] => list.filter((each) => each.index === index);
  const only = { parts: of(intake.parts), refused: of(intake.refused) };
  if (only.parts.length + only.refused.length === 0) throw new Fault(`${file}: it has no body ${index} (the first is 0).`);
  return only;
};

const writeFolded = async (parts: Intake['parts'], output: string, fold: string | undefined, file: string): Promise<void> => {
  const [first] = parts;
  if (first === undefined) return;
  if (parts.length > 1) throw new Fault(`${file}: it holds ${parts.length} parts; choose the one to write with --solid.`);
  const shares = foldShares(first.part, fold);
  if (!shares.ok) throw new Fault(`--fold: ${shares.sentence}`);
  const written = await foldedStep(first.part, shares.value, true);
  if ('sentence' in written) throw new Fault(`${file}: ${written.sentence}`);
  await writeWhole(output, written.text);
};

/** `part`: what a file holds, each body read or refused by itself. */
export const partCommand = (): Command =>
  readingOptions(commandWith('part', 'read the parts of a file: plates, bends, strokes, nominal blank, assumptions').argument('<file>', PART_FILE))
    .option('--k <number>', `K-factor for the nominal blank (default ${DEFAULT_K})`)
    .option('--rule <name>', `another rule for it: ${RULE_NAMES}`)
    .option('--solid <number>', 'only this body of the file (the first is 0)')
    .option('--step <file>', 'write the part, folded, as a STEP file')
    .option('--fold <shares>', "how far for --step: a share of every bend angle, 0 flat to 1 finished, or some bends: 'b1=0.5,b3=0'")
    .option('--picture <file.svg>', 'write a picture of a refused body, the faces that its sentence names marked (of several the first, or the one of --solid)')
    .action(async (file: string, options: OutputOptions & RuleOptions & ReadOptions & StepOptions) => {
      const { parts, refused } = chosen(await readOnlyFile(file, options), options.solid, file);
      if (options.fold !== undefined && options.step === undefined) throw new Fault('--fold says how far a part is folded that --step writes; --step is missing.');
      if (options.step !== undefined) await writeFolded(parts, options.step, options.fold, file);
      if (options.picture !== undefined) await writeRefusal(refused, options.picture, file);
      const described = parts.map(({ index, part, sameAs }) => describePart(index, part, options, sameAs));
      const value = {
        units: JSON_UNITS,
        parts: described,
        refused: refused.map(({ index, name, code, sentence, faces, measure }) => ({ index, ...(name === undefined ? {} : { name }), code, sentence, faces, ...(measure === undefined ? {} : { measure }) })),
      };
      if (parts.length === 0) process.exitCode = 2;
      await answer(value, () => inWords(described, refused, options.units), options);
    });

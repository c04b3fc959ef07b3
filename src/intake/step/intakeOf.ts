import { type Part, type StepReading, sameShape } from '../../sheet/index.js';
import type { Intake, Refusal } from '../refusal.js';
import { outlinesOf } from '../recognise/outlines.js';
import { recognise } from '../recognise/recognise.js';
import { bodyNames } from './bodyNames.js';
import type { Loaded } from './load.js';
import { fileUnit } from './unit.js';
import { longestSide, unitAssumption, unitWords } from './unitDoubt.js';

export interface IntakeRequest {
  readonly fileName: string;
  /** The file as text, a byte a character, for its unit and names. */
  readonly text: string;
  /** The unit that the file is in, whatever it declares: the bodies come scaled to it. */
  readonly unit?: Part['unit'];
  readonly sharpRadius?: number;
}

/** A file that gave nothing: one refusal under index 0. */
export const refusedFile = (code: Refusal['code'], sentence: string, measure?: number): Intake => ({
  parts: [],
  refused: [{ index: 0, code, sentence, faces: [], ...(measure === undefined ? {} : { measure }) }],
});

const baseName = (fileName: string): string => fileName.replace(/^.*[\\/]/, '').replace(/\.[^.]*$/, '') || 'part';

/** Each body of a loaded file as a part, or refused with its reason. */
export const intakeOf = (loaded: Loaded, { fileName, text, unit: told, sharpRadius }: IntakeRequest): Intake => {
  if ('failed' in loaded) return refusedFile('unreadable file', `${fileName} is not a STEP file that can be read: ${loaded.failed === 'not STEP' ? 'its text does not follow the format' : 'nothing in it could be turned into a shape'}.`);
  const { bodies } = loaded;
  if (bodies.length === 0) return refusedFile('no solid', `${fileName} holds no solid: it has a product and no geometry.`, 0);
  const declared = fileUnit(text);
  const names = bodyNames(text, bodies, baseName(fileName));
  const given = { ...(told === undefined ? {} : { unit: told }), ...(sharpRadius === undefined ? {} : { sharpRadius }) };
  const intake: { parts: Intake['parts'][number][]; refused: Refusal[] } = { parts: [], refused: [] };
  bodies.forEach((body, index) => {
    const name = names[index]!;
    const result = recognise(body, { name, unit: told ?? declared.unit, ...(sharpRadius === undefined ? {} : { sharpRadius }) });
    const length = longestSide(body);
    if ('part' in result) {
      const { part } = result;
      const reading: StepReading = { from: 'step', body: index, ...given };
      const twin = intake.parts.find((it) => it.sameAs === undefined && sameShape(it.part, part));
      intake.parts.push({ index, ...(twin ? { sameAs: twin.index } : {}), part: { ...part, assumptions: [...unitAssumption(unitWords(declared, told, length, part.thickness)), ...part.assumptions], reading } });
      return;
    }
    const doubt = told === undefined ? unitWords(declared, told, length) : undefined;
    intake.refused.push({
      index, ...result.reason, ...(bodies.length === 1 ? {} : { name }),
      ...(doubt === undefined ? {} : { sentence: `${result.reason.sentence} ${doubt}`, unitDoubted: true }),
      ...(body.faces.length === 0 ? {} : { outlines: outlinesOf(body, result.reason.faces) }),
    });
  });
  return intake;
};

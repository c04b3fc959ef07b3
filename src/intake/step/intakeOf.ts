import type { Assumption } from '../../sheet/index.js';
import type { Intake, Refusal } from '../refusal.js';
import { outlinesOf } from '../recognise/outlines.js';
import { recognise } from '../recognise/recognise.js';
import type { Loaded } from './load.js';
import { fileUnit } from './unit.js';

export interface IntakeRequest {
  readonly fileName: string;
  /** The file as text, for its unit. */
  readonly text: string;
  readonly sharpRadius?: number;
}

/** A file that gave nothing: one refusal under index 0. */
export const refusedFile = (code: Refusal['code'], sentence: string, measure?: number): Intake => ({
  parts: [],
  refused: [{ index: 0, code, sentence, faces: [], ...(measure === undefined ? {} : { measure }) }],
});

const baseName = (fileName: string): string => fileName.replace(/^.*[\\/]/, '').replace(/\.[^.]*$/, '') || 'part';

/** Each body of a loaded file as a part, or refused with its reason. */
export const intakeOf = (loaded: Loaded, { fileName, text, sharpRadius }: IntakeRequest): Intake => {
  if ('failed' in loaded) return refusedFile('unreadable file', `${fileName} is not a STEP file that can be read: ${loaded.failed === 'not STEP' ? 'its text does not follow the format' : 'nothing in it could be turned into a shape'}.`);
  const { bodies } = loaded;
  if (bodies.length === 0) return refusedFile('no solid', `${fileName} holds no solid: it has a product and no geometry.`, 0);
  const { unit, doubtful } = fileUnit(text);
  const assumptions: Assumption[] =
    doubtful === undefined ? [] : [{ code: 'unit', sentence: `The file names ${doubtful} as its length unit; millimetres are taken.`, plates: [], bends: [] }];
  const name = baseName(fileName);
  const intake: { parts: Intake['parts'][number][]; refused: Refusal[] } = { parts: [], refused: [] };
  bodies.forEach((body, index) => {
    const result = recognise(body, {
      name: bodies.length === 1 ? name : `${name} ${index + 1}`,
      unit,
      assumptions,
      ...(sharpRadius === undefined ? {} : { sharpRadius }),
    });
    if ('part' in result) intake.parts.push({ index, part: result.part });
    else intake.refused.push({ index, ...result.reason, ...(body.faces.length === 0 ? {} : { outlines: outlinesOf(body, result.reason.faces) }) });
  });
  return intake;
};

import { beforeAll, describe, expect, it } from 'vitest';
import { develop, profilePart } from '../../sheet/index.js';
import { extruded, strip } from '../recognise/testBodies.js';
import { foldedSolid } from './foldedSolid.js';
import { intakeOf } from './intakeOf.js';
import { isSound } from './isSound.js';
import { type Kernel, loadKernel } from './kernel.js';
import { loadAsWritten, loadStep } from './load.js';
import { readSolids } from './readSolids.js';
import { kernelBodies } from './testKernel.js';
import { stepText } from './writeStep.js';

let oc: Kernel;
beforeAll(async () => {
  oc = await loadKernel();
}, 120_000);

const LONG = 60_000;
const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const angleText = (): string => {
  const made = profilePart({ name: 'angle', thickness: 2, insideRadius: 3, width: 100, flanges: [40, 60], turns: [90] });
  if (!made.ok) throw new Error(made.failure.sentence);
  const solid = foldedSolid(oc, develop(made.value, { name: 'K-factor', k: 0.5 }), [90]);
  if ('sentence' in solid) throw new Error(solid.sentence);
  return stepText(oc, solid, 'angle');
};

describe('a sound body', () => {
  const body = extruded([strip(2, [40, { angle: 90, radius: 3 }, 60])], 100);
  it('is one whose edges bound two faces each, whose loops close and run about the metal', () => expect(isSound(body)).toBe(true));
  const face = body.faces.findIndex(({ surface }) => surface.kind === 'cylinder');
  const withFace = (index: number, change: (face: (typeof body.faces)[number]) => (typeof body.faces)[number]) => ({ ...body, faces: body.faces.map((it, i) => (i === index ? change(it) : it)) });
  it.each([
    ['a face missing', { ...body, faces: body.faces.slice(1) }],
    ['inside out', { ...body, volume: -body.volume }],
    ['a plane that looks into the metal', withFace(0, (it) => (it.surface.kind === 'plane' ? { ...it, surface: { ...it.surface, normal: [-it.surface.normal[0], -it.surface.normal[1], -it.surface.normal[2]] } } : it))],
    ['a cylinder said hollow that is none', withFace(face, (it) => (it.surface.kind === 'cylinder' ? { ...it, surface: { ...it.surface, hollow: !it.surface.hollow } } : it))],
    ['a loop run the wrong way', withFace(0, (it) => ({ ...it, loops: it.loops.map((loop) => [...loop].reverse().map((use) => ({ ...use, forward: !use.forward }))) }))],
    ['a loop out of order', withFace(0, (it) => ({ ...it, loops: it.loops.map(([a, b, ...rest]) => [b!, a!, ...rest]) }))],
    ['a face without a boundary', withFace(0, (it) => ({ ...it, loops: [] }))],
  ])('is not one with %s', (_, broken) => expect(isSound(broken)).toBe(false));
});

describe('a file as it is written', () => {
  it('is taken where it is sound, and makes the part that mending makes', () => {
    const text = angleText();
    const bodies = loadAsWritten(oc, bytesOf(text));
    expect(bodies).toHaveLength(1);
    const request = { fileName: 'angle.step', text };
    const [plain, mended] = [intakeOf({ bodies: bodies! }, request), intakeOf(loadStep(oc, bytesOf(text)), request)];
    const told = ({ parts }: typeof plain) => parts.map(({ part }) => [part.thickness, part.plates.length, part.bends.map((b) => [b.bendAngle, b.insideRadius, b.direction]), part.volume!.toFixed(3)]);
    expect(told(plain)).toEqual(told(mended));
    // 35 and 55 flat, and a quarter turn about radius 4, 2 thick, 100 wide
    expect(plain.parts[0]!.part.volume).toBeCloseTo((90 + 2 * Math.PI) * 2 * 100, 4);
  }, LONG);

  it('is mended where a face is turned the wrong way, and is the same part then', () => {
    const text = angleText();
    // the sense of the first plane that is the same as its face's
    const at = /ADVANCED_FACE\('[^']*',\([^)]*\),#\d+,\.(T|F)\.\)/.exec(text)!;
    const turned = at[0].replace(/\.(T|F)\.\)$/, (_, sense: string) => (sense === 'T' ? '.F.)' : '.T.)'));
    const damaged = text.replace(at[0], turned);
    expect(loadAsWritten(oc, bytesOf(damaged))).toBeUndefined();
    const { parts } = readSolids(oc, bytesOf(damaged), { fileName: 'angle.step', text: damaged });
    expect(parts[0]?.part.bends.map((b) => [b.bendAngle, b.insideRadius])).toEqual([[90, 3]]);
  }, LONG);

  it('is left to mending where its surfaces have to be measured by the kernel', () => {
    const text = stepText(oc, kernelBodies(oc).ball([0, 0, 0], 10), 'ball');
    expect(loadAsWritten(oc, bytesOf(text))).toBeUndefined();
    expect(readSolids(oc, bytesOf(text), { fileName: 'ball.step', text }).refused[0]?.code).toBe('free form');
  }, LONG);
});

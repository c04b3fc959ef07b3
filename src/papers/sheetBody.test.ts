import { describe, expect, it } from 'vitest';
import { benchParts } from '../../bench/parts.js';
import { type Vec3, cross3, dot3, sub3 } from '../geometry/index.js';
import { type Developed, blank } from '../sheet/index.js';
import type { Body } from './body.js';
import { sheetBody } from './sheetBody.js';

const sheets: readonly Developed[] = benchParts().map(({ part }) => ({
  part,
  // the neutral line at 0.4 of the thickness, as the fixture has it: any rule would do
  allowances: part.bends.map((bend) => ((bend.bendAngle * Math.PI) / 180) * (bend.insideRadius + 0.4 * part.thickness)),
}));

/** By the divergence theorem over all faces, fans from each loop's first corner. */
const volume = (body: Body): number => {
  let six = 0;
  for (const face of body.faces) {
    for (const loop of face.loops) {
      for (let i = 1; i + 1 < loop.length; i++) six += dot3(loop[0]!, cross3(loop[i]!, loop[i + 1]!));
    }
  }
  return six / 6;
};

describe('the sheet as a closed body', () => {
  for (const sheet of sheets) {
    const { name, bends, thickness } = sheet.part;
    const states: readonly [string, readonly number[]][] = [
      ['flat', bends.map(() => 0)],
      ['every other bend made', bends.map((bend, i) => (i % 2 === 0 ? bend.bendAngle : 0))],
      ['finished', bends.map((bend) => bend.bendAngle)],
    ];
    for (const [state, angles] of states) {
      it(`${name}, ${state}: every edge joins two faces`, () => {
        const open = sheetBody(sheet, angles).edges.filter((edge) => edge.normals.length !== 2);
        expect(open.map(({ from, to }) => [from, to])).toEqual([]);
      });
    }
    it(`${name}, flat: its volume is the blank's area times the thickness`, () => {
      const flat = blank(sheet);
      if (!flat.ok) throw new Error(flat.failure.sentence);
      expect(volume(sheetBody(sheet, states[0]![1]))).toBeCloseTo(flat.value.area * thickness, 3);
    });
    it(`${name}: faces look out of the metal`, () => {
      for (const face of sheetBody(sheet, states[2]![1]).faces) {
        let n: Vec3 = [0, 0, 0];
        const loop = face.loops[0]!;
        for (let i = 1; i + 1 < loop.length; i++) {
          const c = cross3(sub3(loop[i]!, loop[0]!), sub3(loop[i + 1]!, loop[0]!));
          n = [n[0] + c[0], n[1] + c[1], n[2] + c[2]];
        }
        expect(dot3(n, face.normal)).toBeGreaterThan(0);
      }
    });
  }
});

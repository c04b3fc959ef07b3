import { describe, expect, it } from 'vitest';
import type { BoardMachine, FitCell } from '../../fit/index.js';
import { bewareWords } from './bewareWords.js';
import { whyNotBlocks } from './whyNotBlocks.js';

const reason = (code: FitCell['reasons'][number]['code'], sentence: string): FitCell['reasons'][number] => ({ code, sentence, bends: [] });
const cell = (verdict: FitCell['verdict'], reasons: FitCell['reasons'], warnings: readonly string[] = [], inVain?: string): FitCell => ({
  verdict, reasons, warnings, ...(inVain !== undefined && { inVain }), remedies: [], margins: [], spreads: [], seconds: null, partsAnHour: null, changeOver: null, computeSeconds: 0, proof: { checked: false, passed: false }, way: null,
});
const machine = (name: string): BoardMachine => ({ id: name, name, whose: 'ours', price: 1, currency: 'EUR' } as unknown as BoardMachine);
const machines = ['Long, 200 t', 'Short, 40 t', 'Tall, 90 t'].map(machine);
const part = (name: string) => ({ name, thickness: 1, bends: 1 });

describe('reasons of a cell', () => {
  it('share a block between machines that have the same ones, and tell apart what was tried', () => {
    const said = (name: string): FitCell => cell('does not make', [reason('tolerance', `It scatters on ${name}.`)], [], `Tried in vain: ${name === 'Tall, 90 t' ? 'a frame' : 'a die'}.`);
    const blocks = whyNotBlocks({ machines, cells: [machines.map(({ name }) => said(name))] }, 0);
    expect(blocks.map(({ heading, paragraphs }) => [heading, ...paragraphs.map(({ words }) => words)])).toEqual([[
      '✕ Why not as it stands: each of the 3 machines', 'It scatters.', 'Long; Short: No remedy found. Tried in vain: a die.', 'Tall: No remedy found. Tried in vain: a frame.',
    ]]);
    const mixed = whyNotBlocks({ machines, cells: [[cell('makes', []), said('Short, 40 t'), cell('not decided', [reason('limit', 'Time ended.')])]] }, 0);
    expect(mixed.map(({ heading }) => heading)).toEqual(['✕ Why not as it stands: Short', '? Not decided: Tall']);
  });
});

it('warnings: once for all parts, or beside their part with the machines that they hold for, without the numbers of steps', () => {
  const warned = (...words: readonly string[]): FitCell => cell('makes', [], words);
  expect(bewareWords({
    parts: [part('lid'), part('box')], machines,
    cells: [
      [warned('Step 1 has room for one finger only.', 'The curve is from memory.'), warned('Steps 1, 2 and 3 have room for one finger only.', 'The curve is from memory.'), cell('does not make', [], [], 'Tried in vain: a die.')],
      [warned('Steps 1, 2: hole 3.70 mm from the bend line.', 'The curve is from memory.', 'Bend b1 forms 2 mm.', 'Bend b2 forms 2 mm.'), warned('The curve is from memory.'), cell('does not make', [])],
    ],
  })).toEqual({
    ofAll: ['The curve is from memory.'],
    ofPart: [['Some strokes have room for one finger only.'], ['On Long: Hole 3.70 mm from the bend line.', 'On Long: Bends b1 and b2 form 2 mm.']],
  });
});

import { expect, it } from 'vitest';
import type { Margin, Step, Trial } from '../trial/index.js';
import { tightestMargin } from './tightestMargin.js';

const margin = (name: string, value: number, limit: number): Margin => ({ name, value, limit, unit: 'kN', source: 'test' });
const withMargins = (...steps: readonly (readonly Margin[])[]): Trial => {
  const trial: Pick<Trial, 'steps'> = { steps: steps.map((margins, i) => ({ number: i + 1, margins }) as Step) };
  return trial as Trial;
};

it('is the margin that uses the greatest share of its limit, whatever its unit', () => {
  const trial = withMargins([margin('force', 100, 400), margin('length', 1200, 1250)], [margin('force', 399, 400)]);
  expect(tightestMargin(trial)).toMatchObject({ name: 'force', step: 2, share: 0.9975 });
});

it('is null without steps', () => {
  expect(tightestMargin(withMargins())).toBeNull();
});

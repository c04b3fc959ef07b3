import { expect, it } from 'vitest';
import { plateNames } from './plateNames.js';
import { profilePart } from './profilePart.js';
import { trayPart } from './trayPart.js';

const same = { name: 'part', thickness: 1.5, insideRadius: 1.5 };
const profile = (flanges: readonly number[], turns: readonly number[]): readonly string[] => {
  const made = profilePart({ ...same, width: 100, flanges, turns });
  if (!made.ok) throw new Error(made.failure.sentence);
  return plateNames(made.value);
};

it('an angle: the longer leg is the base', () => {
  expect(profile([40, 60], [90])).toEqual(['the flange beyond b1', 'the base']);
  expect(profile([60, 40], [90])).toEqual(['the base', 'the flange beyond b1']);
});

it('a channel: its web is the base, between longer legs too', () => {
  expect(profile([70, 60, 70], [90, 90])).toEqual(['the flange beyond b1', 'the base', 'the flange beyond b2']);
});

it('a lip channel: lips are named by the bend that joins them to their leg', () => {
  expect(profile([15, 50, 100, 50, 15], [90, 90, 90, 90])).toEqual(['the flange beyond b1', 'the flange beyond b2', 'the base', 'the flange beyond b3', 'the flange beyond b4']);
});

it('a long panel beside a narrow middle: the panel is the base', () => {
  // areas as 300 : 20 : 40, bends 1, 2, 1: by area times bends the panel
  expect(profile([300, 20, 40], [90, -90])[0]).toBe('the base');
});

it('a tray: the bottom is the base', () => {
  const made = trayPart({ ...same, base: [200, 150], arms: Array.from({ length: 4 }, () => [{ length: 30, turn: 90 }]) });
  if (!made.ok) throw new Error(made.failure.sentence);
  expect(plateNames(made.value)).toEqual(['the base', 'the flange beyond b1', 'the flange beyond b2', 'the flange beyond b3', 'the flange beyond b4']);
});

import { beforeAll, describe, expect, it } from 'vitest';
import { mulberry32 } from '../../bench/mulberry32.js';
import { benchParts } from '../../bench/parts.js';
import { metalById } from '../metal/index.js';
import { demoFloor, demoRack } from '../shop/index.js';
import { type Lengths, fewestStations } from './fewestStations.js';
import { bitsOf } from './groups.js';
import { type Images, imagesOf } from './images.js';
import { type OpenStation, stationsFor } from './openStation.js';
import { planTrial } from './planTrial.js';
import { type Action, type SearchTask, changeSeconds } from './task.js';
import { TIME } from './time.js';
import { type ToGo, timeToGo } from './toGo.js';

const taskOf = (id: string): SearchTask => {
  const { part } = benchParts().find((b) => b.id === id)!;
  let task: SearchTask | null = null;
  planTrial({ part, machine: demoFloor().find((m) => m.id === 'general')!, rack: demoRack(), metal: metalById('dc01')!, quantity: 50 }, { onSearch: (s) => (task = s.task) });
  return task!;
};

/** Every order of the strokes left, stations as the search counts them; and the same with stations for nothing. */
const everyRest = (task: SearchTask, mask: number, last: Action | null, stations: readonly OpenStation[], at: number, forNothing: boolean): number => {
  const full = task.groups.reduce((all, g) => all | bitsOf(g), 0);
  if (mask === full) return 0;
  let least = Infinity;
  for (const action of task.actions) {
    const bits = bitsOf(task.groups[action.group]!);
    if ((mask & bits) !== 0) continue;
    const answer = task.answer(action, mask);
    if (!answer.ok) continue;
    const seconds = (last ? changeSeconds(last, action) * task.handling : 0) + action.base + task.extra(answer.option);
    if (forNothing) {
      const walk = last && last.pair !== action.pair ? TIME.walk * task.handling : 0;
      least = Math.min(least, seconds + walk + everyRest(task, mask | bits, action, [], -1, true));
      continue;
    }
    for (const choice of stationsFor(stations, action, answer.option, task.together)) {
      const more = (choice.isNew ? task.stationShare : 0) + (last && choice.at !== at ? TIME.walk * task.handling : 0);
      least = Math.min(least, seconds + more + everyRest(task, mask | bits, action, choice.stations, choice.at, false));
    }
  }
  return least;
};

/** The bound may miss the exact figure by rounding alone. s */
const ROUNDING = 1e-9;

describe('the time to go from every fold', () => {
  let task: SearchTask;
  let images: Images;
  let known: readonly ToGo[];
  beforeAll(() => {
    const whole = taskOf('P7');
    // two punches are enough to tell, and every order of them can be gone through
    const pairs = new Set([0, 2, 5]);
    task = { ...whole, actions: whole.actions.filter((a) => pairs.has(a.pair)) };
    images = imagesOf(task);
    known = [timeToGo(task, images, 1000, true)!, timeToGo(task, images, 1000, false)!];
  });

  it.each([[1], [2], [3]])('lies between every order with stations and without, along a random walk (seed %i)', (seed) => {
    const random = mulberry32(seed);
    let [mask, at]: [number, number] = [0, -1];
    let last: Action | null = null;
    let stations: readonly OpenStation[] = [];
    const full = task.groups.reduce((all, g) => all | bitsOf(g), 0);
    while (mask !== full) {
      const exact = everyRest(task, mask, last, stations, at, false);
      const free = everyRest(task, mask, last, stations, at, true);
      const seen = last ? images.standing(mask, last) : { mask, last };
      const [thorough, rough] = known.map((k) => k.seconds(seen.mask, seen.last, stations));
      expect(thorough).toBeGreaterThanOrEqual(free - ROUNDING);
      if (exact < Infinity) expect(thorough).toBeLessThanOrEqual(exact + ROUNDING);
      expect(rough).toBeLessThanOrEqual(thorough! + ROUNDING);
      const can = task.actions.flatMap((action) => {
        if ((mask & bitsOf(task.groups[action.group]!)) !== 0) return [];
        const answer = task.answer(action, mask);
        return answer.ok ? stationsFor(stations, action, answer.option, task.together).map((choice) => ({ action, choice })) : [];
      });
      if (can.length === 0) break;
      const { action, choice } = can[Math.floor(random() * can.length)]!;
      mask |= bitsOf(task.groups[action.group]!);
      [last, stations, at] = [action, choice.stations, choice.at];
    }
    expect(mask).not.toBe(0);
  });

  it('is not worked out past the number of folds allowed', () => {
    expect(timeToGo(task, images, 2, false)).toBeNull();
  });
});

describe('images of folds', () => {
  it('one fold stands for all its images, and strokes come back as they were (P7, seed 7)', () => {
    const task = taskOf('P7');
    const images = imagesOf(task);
    const random = mulberry32(7);
    for (let k = 0; k < 200; k++) {
      const mask = Math.floor(random() * 16);
      const action = task.actions[Math.floor(random() * task.actions.length)]!;
      const { mask: stands, by } = images.fold(mask);
      for (let s = 0; s <= task.symmetries.length; s++) {
        const image = images.image(action, s);
        expect(images.original(image, [s])).toBe(action);
        expect(image.pair).toBe(action.pair);
        const moved = task.groups.reduce((bits, g, i) => ((mask & bitsOf(g)) !== 0 ? bits | bitsOf(task.groups[images.image(task.actions.find((a) => a.group === i)!, s).group]!) : bits), 0);
        expect(images.fold(moved).mask).toBe(stands);
        expect(by.includes(s)).toBe(moved === stands);
      }
    }
  });
});

/** Each group in turn on every station that takes it, or on a new one. */
const fewestByTrying = (lengths: readonly (readonly (Lengths | undefined)[])[], groups: readonly number[], stations: readonly OpenStation[]): number => {
  const [group, ...rest] = groups;
  if (group === undefined) return 0;
  let least = Infinity;
  lengths[group]!.forEach((room, pair) => {
    if (!room) return;
    least = Math.min(least, 1 + fewestByTrying(lengths, rest, [...stations, { pair, ...room }]));
    stations.forEach((s, i) => {
      const joined = { pair, least: Math.max(s.least, room.least), most: Math.min(s.most, room.most) };
      if (s.pair !== pair || joined.least > joined.most) return;
      least = Math.min(least, fewestByTrying(lengths, rest, stations.map((other, k) => (k === i ? joined : other))));
    });
  });
  return least;
};

describe('the fewest stations', () => {
  it.each([[11], [12]])('are never more than trying every way finds, and the same where none stands yet (seed %i)', (seed) => {
    const random = mulberry32(seed);
    const length = (): number => 100 + Math.floor(random() * 8) * 20;
    for (let k = 0; k < 150; k++) {
      const lengths = Array.from({ length: 4 }, () => Array.from({ length: 3 }, () => {
        const least = length();
        return random() < 0.3 ? undefined : { least, most: least + length() - 100 };
      }));
      const fewest = fewestStations(lengths);
      expect(fewest(15, [])).toBe(fewestByTrying(lengths, [0, 1, 2, 3], []));
      const [least, pair] = [length(), Math.floor(random() * 3)];
      const stands = [{ pair, least, most: least + 60 }];
      expect(fewest(13, stands)).toBeLessThanOrEqual(fewestByTrying(lengths, [0, 2, 3], stands));
    }
  });
});

import { type Vec2, bounds } from '../geometry/index.js';
import { toolSlabs } from '../shop/index.js';
import type { Die, Punch } from '../shop/index.js';
import type { Placed, Station, Step, Trial } from '../trial/index.js';
import { type Units, roundFigure } from './format.js';
import { LETTERS } from './pens.js';
import { type Item, type Picture, area, group, polyline, strokes, text } from './picture.js';
import { bendIndex, dieOf, punchOf } from '../stroke/index.js';
import { stationLabels } from './stationLabels.js';
import { strokeExtent } from './strokeExtent.js';
import { textWidth } from './textWidth.js';

export interface LayoutPictureOptions {
  readonly width?: number;
  /** mm of paper that the picture may take; it takes less when it needs less. */
  readonly mostHeight?: number;
  readonly units?: Units;
  /** Other parts on the same stations: one bar for each part and station, with the part's name, instead of one for each bend line. */
  readonly others?: readonly Trial[];
}

/** mm of paper: side margins, the ruler's ticks, the gap between tools when they are drawn apart. */
const MARGIN = 4;
const TICKS = { short: 1.2, middle: 1.9, long: 2.8 } as const;
const BAR = { most: 3.4, least: 2.3 } as const;

const rectangle = (x: number, y: number, w: number, h: number): Vec2[] => [[x, y], [x + w, y], [x + w, y + h], [x, y + h]];

interface Scale {
  readonly x: (along: number) => number;
  readonly y: (up: number) => number;
  readonly mm: number;
}

/** A row of segments seen from the front: each its outline (feet of ears included), its length written in it when there is room. */
const row = (tool: Punch | Die, segments: readonly Placed[], up: number, s: Scale, units: Units): Item[] =>
  segments.flatMap((placed, k): Item[] => {
    const segment =
      tool.segments.find(({ length, ear }) => length === placed.length && ear?.hand === placed.ear) ?? { length: placed.length, count: 1 };
    const [[, low], [, high]] = bounds([tool.profile]);
    const label = roundFigure(placed.length, units);
    const middle = (s.y(up + low) + s.y(up + high)) / 2;
    // the letters stand in the body, beside the foot of an ear
    const slabs = toolSlabs(tool, segment);
    const pieces = slabs.map((slab) => {
      const [[, bottom], [, top]] = bounds([slab.profile]);
      return rectangle(s.x(placed.from + slab.from), s.y(up + top), (slab.to - slab.from) * s.mm, (top - bottom) * s.mm);
    });
    const body = slabs.reduce((a, b) => (b.to - b.from > a.to - a.from ? b : a));
    const [centre, room] = [s.x(placed.from + (body.from + body.to) / 2), (body.to - body.from) * s.mm];
    const fits = textWidth(label, LETTERS.small) < room - 0.8;
    // narrow segments bear their length upright
    const standing = !fits && room > LETTERS.small * 1.1 && (high - low) * s.mm > textWidth(label, LETTERS.small) + 0.8;
    return [
      group(`${tool.kind} segment ${k + 1}`, [
        ...pieces.map((ring) => area('tool', ring)),
        ...pieces.map((ring) => polyline('edge', ring, true)),
        ...(fits ? [text([centre, middle + 0.8], label, LETTERS.small)] : []),
        ...(standing ? [text([centre + 0.8, middle], label, LETTERS.small, { turned: 90 })] : []),
      ]),
    ];
  });

const ends = (segments: readonly Placed[]): readonly [number, number] => [
  Math.min(...segments.map((p) => p.from)),
  Math.max(...segments.map((p) => p.from + p.length)),
];

/** Tick marks with numbers: the scale bar of the drawing, in mm (or inches) along from the middle of the bed. */
const ruler = (length: number, top: number, s: Scale, units: Units): Item[] => {
  const unit = units === 'mm' ? 1 : 25.4;
  // ticks no closer than 0.9 mm of paper, numbers where there is room for them
  const steps = units === 'mm' ? [10, 50, 100, 250, 500, 1000] : [1, 2, 5, 10, 20, 50];
  const step = steps.find((v) => v * unit * s.mm >= 0.9)!;
  const numbered = steps.find((v) => v * unit * s.mm >= 11)!;
  const ticks: [Vec2, Vec2][] = [];
  const numbers: Item[] = [];
  const most = Math.floor(length / 2 / unit / step);
  for (let k = -most; k <= most; k++) {
    const value = k * step;
    const x = s.x(value * unit);
    const long = value % numbered === 0;
    const size = long ? TICKS.long : value % (5 * step) === 0 ? TICKS.middle : TICKS.short;
    ticks.push([[x, top], [x, top + size]]);
    if (long) numbers.push(text([x, top + TICKS.long + LETTERS.small], value < 0 ? `−${-value}` : String(value), LETTERS.small));
  }
  return [strokes('thin', ticks), ...numbers];
};

/** Where the bend lines of a step lie along the bed. */
const lineAlong = (trial: Trial, step: Step): readonly [number, number] => {
  const bend = trial.sheet.part.bends[bendIndex(trial, step.bends[0]!)]!;
  const rightwards = (bend.direction === 'A') === (step.gaugeSide === 1) ? 1 : -1;
  const places = strokeExtent(trial, step).map((u) => step.place + rightwards * u);
  return [Math.min(...places), Math.max(...places)];
};

interface LineBar {
  readonly low: number;
  readonly high: number;
  readonly steps: readonly number[];
  readonly bends: readonly string[];
  /** Whose they are, where several parts stand on the layout. */
  readonly part?: string;
}

/** mm: bend lines that begin and end this close to each other share a bar. */
const SAME_PLACE = 0.5;

/** Where the bend lines lie, those in the same place together, left to right. */
const barsOf = (trial: Trial): LineBar[] => {
  const bars: LineBar[] = [];
  for (const step of trial.steps) {
    const [low, high] = lineAlong(trial, step);
    const at = bars.findIndex((bar) => Math.abs(bar.low - low) < SAME_PLACE && Math.abs(bar.high - high) < SAME_PLACE);
    const bar = bars[at] ?? { low, high, steps: [], bends: [] };
    const grown = { ...bar, steps: [...bar.steps, step.number], bends: [...bar.bends, ...step.bends] };
    if (at >= 0) bars[at] = grown;
    else bars.push(grown);
  }
  return bars.sort((a, b) => a.low - b.low || a.high - b.high);
};

/** Where the paper has no room for a bar for each bend line: one for each station, over all its lines. */
const stationBars = (trial: Trial): LineBar[] =>
  trial.stations.flatMap(({ id }) => {
    const steps = trial.steps.filter(({ station }) => station === id);
    if (steps.length === 0) return [];
    const places = steps.flatMap((step) => lineAlong(trial, step));
    return [{ low: Math.min(...places), high: Math.max(...places), steps: steps.map(({ number }) => number), bends: [] }];
  });

/** mm over the die seat: where a station's punch tip is drawn, open by some thicknesses of the sheet, and where its punch ends. */
const tipOf = (trial: Trial, station: Station): number => station.dieTop + Math.max(12, trial.sheet.part.thickness * 4);
const topOf = (trial: Trial, station: Station): number => tipOf(trial, station) + punchOf(trial, station.punch).height;

/** Where the leader of a station's name ends. mm along */
const middleOf = ({ punchSegments }: Station): number => ends(punchSegments).reduce((a, b) => a + b) / 2;

const FRAME_NAME = 'side frame';
const between = (low: number, x: number, high: number): boolean => low <= x && x <= high;

/** Beside the right or the left frame, outside it rather than inside: where its name may stand. mm of paper */
const frameNamePlaces = (s: Scale, half: number): readonly { readonly from: number; readonly to: number }[] => {
  const room = textWidth(FRAME_NAME, LETTERS.small);
  return [s.x(half) + 1, s.x(-half) - 1 - room, s.x(half) - 1 - room, s.x(-half) + 1].map((from) => ({ from, to: from + room }));
};

const stationItems = (trial: Trial, station: Station, s: Scale, units: Units): Item[] => {
  const [punch, die] = [punchOf(trial, station.punch), dieOf(trial, station.die)];
  const tip = tipOf(trial, station);
  const [low, high] = ends([...station.punchSegments, ...station.dieSegments]);
  const [x0, x1] = [s.x(low), s.x(high)];
  const riser = station.riser > 0 ? [rectangle(x0, s.y(station.riser), x1 - x0, station.riser * s.mm)] : [];
  return [
    group(`station ${station.id}`, [
      ...riser.map((ring) => polyline('edge', ring, true)),
      ...row(die, station.dieSegments, station.dieTop, s, units),
      ...row(punch, station.punchSegments, tip, s, units),
    ]),
  ];
};

/**
 * The bed from the front, to scale: the ruler (mm along from the middle of the bed), each station's punch and die
 * segments with their lengths, and under the ruler where the bend line of each step lies.
 */
export const layoutPicture = (trial: Trial, options: LayoutPictureOptions = {}): Picture => {
  const { width = 250, mostHeight = Infinity, units = 'mm', others = [] } = options;
  const { machine, stations } = trial;
  const mm = (width - 2 * MARGIN) / machine.length;
  const tallest = Math.max(60, ...stations.map((station) => topOf(trial, station)));
  const names = stations.length > 0 ? LETTERS.normal * 2.6 : 0;
  const seat = names + 3 + tallest * mm;
  const s: Scale = { x: (along) => width / 2 + along * mm, y: (up) => seat - up * mm, mm };
  const half = machine.length / 2;
  const under = seat + 3 + TICKS.long + LETTERS.small + 1.6;
  const all = others.length > 0 ? [trial, ...others].flatMap((t) => stationBars(t).map((bar) => ({ ...bar, part: t.sheet.part.name }))) : barsOf(trial);
  const room = mostHeight - under - 2;
  const bar = Math.min(BAR.most, Math.max(BAR.least, room / all.length));
  const fit = Math.max(1, Math.floor(room / bar + 1e-6));
  const lines = all.length <= fit ? all : stationBars(trial);
  const size = Math.min(LETTERS.small, bar * 0.85);
  const bars = lines.map(({ low, high, steps: numbers, bends, part }: LineBar, k): Item => {
    const y = under + k * bar + bar / 2;
    const stepped = `${numbers.length > 1 ? 'steps' : 'step'} ${numbers.join(', ')}`;
    const label = part === undefined ? `${stepped}: ${bends.join(', ') || 'places on their sheets'}` : `${part}: ${stepped}`;
    const right = s.x(high) + 1.2 + textWidth(label, size) < width;
    return group(part === undefined ? `step ${numbers.join(', ')}` : label, [
      polyline('outline', [[s.x(low), y], [s.x(high), y]]),
      strokes('outline', [[[s.x(low), y - 0.9], [s.x(low), y + 0.9]], [[s.x(high), y - 0.9], [s.x(high), y + 0.9]]]),
      text([right ? s.x(high) + 1.2 : s.x(low) - 1.2, y + 0.8], label, size, { anchor: right ? 'start' : 'end' }),
    ]);
  });
  const height = under + lines.length * bar + 2;
  const frames = [-1, 1].map((side): [Vec2, Vec2] => {
    const x = s.x((side * machine.betweenFrames) / 2);
    return [[x, names], [x, seat]];
  });
  const frameName = frameNamePlaces(s, machine.betweenFrames / 2).find(({ from, to }) =>
    from > 0 && to < width && !stations.some((station) => between(from - 1, s.x(middleOf(station)), to + 1))) ?? { from: s.x(machine.betweenFrames / 2) + 1 };
  const labels = stationLabels(stations.map((station) => {
    const [low, high] = ends(station.punchSegments);
    const extent = `${station.id}  ${roundFigure(low, units)} to ${roundFigure(high, units)}`;
    return { x: s.x(middleOf(station)), top: s.y(topOf(trial, station)), words: [`${extent} ${units}`, extent, station.id] };
  }), width, names);
  return {
    width,
    height,
    items: [
      area('bed', rectangle(s.x(-half), seat, machine.length * mm, 3)),
      polyline('edge', rectangle(s.x(-half), seat, machine.length * mm, 3), true),
      strokes('hidden', frames),
      text([frameName.from, names + 2.4], FRAME_NAME, LETTERS.small, { anchor: 'start' }),
      ...stations.flatMap((station) => stationItems(trial, station, s, units)),
      ...ruler(machine.length, seat + 3, s, units),
      ...labels,
      ...bars,
    ],
    title: `Layout along the bed of ${machine.name}, ${units} from the middle of the bed`,
  };
};

import { type Interval, apply } from '../geometry/index.js';
import type { Part } from '../sheet/index.js';
import type { Machine } from '../shop/index.js';
import type { Asker } from './asker.js';
import type { Pair } from './bodies.js';
import type { Conflict } from './conflict.js';
import type { Group } from './groups.js';
import { hemCloseOf } from './hemClose.js';
import { UNCOVERED_END } from './limits.js';
import { offsetBendOf } from './offsetBend.js';
import { keptWithBranch } from './keptWithBranch.js';
import { once } from './once.js';
import type { createPlateClearance } from './plateClearance.js';
import type { Setting } from './setting.js';
import type { StopChoice } from './stopChoice.js';
import { chooseStop } from './stops.js';
import { touchOf } from './stroke.js';
import { type ToolClearance, reachesFrames, toolClearance } from './toolClearance.js';
import type { Tooling } from './tooling.js';
import { type Branch, type Seat, type View, type viewer, wingFrame } from './views.js';

/** One stroke that may be made: windows, ways, stop. Lengths along the bed count from the bend's own origin. */
export interface StrokeOption {
  readonly setting: Setting;
  /** The whole bend line(s), and the part of it that must stand on tools. */
  readonly line: Interval;
  readonly need: Interval;
  readonly tools: ToolClearance;
  readonly stop: StopChoice;
}

export type StrokeAnswer =
  /** `others`: the same stroke by each other stop, best first, asked only for dimensions that want them. */
  | { readonly ok: true; readonly option: StrokeOption; readonly others: () => readonly StrokeOption[] }
  | { readonly ok: false; readonly conflicts: readonly Conflict[] };

/** Where each bend line of a group lies along the bed, from the first bend's origin. */
export const bendPieces = ({ bends }: Part, seat: Seat, group: Group): readonly Interval[] => {
  const into = wingFrame(bends[group.bends[0]!]!, seat.gaugeSide, group.hubSide);
  return group.bends.map((index) => {
    const bend = bends[index]!;
    const side = bend.sides.find((s) => s.plate === group.hub)!;
    const [from, to] = [side.line.from, side.line.to];
    const size = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const us = bend.zone.flat().map((v) => v.x);
    const ends = us.length > 0 ? [Math.min(...us), Math.max(...us)] : [0, size];
    const places = ends.map((u) => apply(into, [from[0] + ((to[0] - from[0]) * u) / size, from[1] + ((to[1] - from[1]) * u) / size, 0])[0]);
    return [Math.min(...places), Math.max(...places)];
  });
};

/** Where the bend lines of a group lie along the bed, from the first bend's origin to the last one's end. */
export const bendLine = (tooling: Tooling, seat: Seat, group: Group): Interval => {
  const pieces = bendPieces(tooling.sheet.part, seat, group);
  return [Math.min(...pieces.map(([from]) => from)), Math.max(...pieces.map(([, to]) => to))];
};

/** The part of a bend line that must stand on tools. */
export const needOf = ([from, to]: Interval): Interval => {
  const bare = Math.min(UNCOVERED_END, (to - from) / 10);
  return [from + bare, to - bare];
};

const flatsKept = keptWithBranch<readonly Interval[]>();

/** From where to where pieces of a branch lie flat with the wing on one side, away from the bend. mm */
const flatsOf = (branch: Branch, gauge: boolean): readonly Interval[] => flatsKept(branch, gauge ? 'gauge' : 'front', () => branch.views
  .filter((v) => v.onGaugeSide === gauge)
  .flatMap((v) => v.pieces)
  .filter((p) => p.flat)
  .map((p) => p.outline.map((q) => (gauge ? q[0] : -q[0])))
  .map((bs): Interval => [Math.min(...bs), Math.max(...bs)]));

/** How far the sheet lies flat on one side of the bend, from its middle: the next flange bends this much in the die. mm */
const flatReach = ({ branches }: Setting, gauge: boolean, allowance: number): number => {
  const flat = branches.flatMap((branch) => flatsOf(branch, gauge)).sort((a, b) => a[0] - b[0]);
  let reach = 0;
  for (const [from, to] of flat) if (from <= reach + 1) reach = Math.max(reach, to);
  return reach + allowance / 2;
};

/** How far what lies flat with the hem's flange reaches from its tangent line. mm */
const hemReach = (views: readonly View[]): number =>
  Math.max(...views.filter((v) => v.onGaugeSide).flatMap((v) => v.pieces.filter((p) => p.flat).flatMap((p) => p.outline.map((q) => q[0]))));

const shortFlange = (setting: Setting, tooling: Tooling): Conflict | null => {
  const { air } = tooling.forming[setting.group.bends[0]!]!;
  const sides = [true, false].map((gauge) => flatReach(setting, gauge, tooling.sheet.allowances[setting.group.bends[0]!]!));
  // minFlange is an outside length: the flat length on one side is half the deduction less
  const least = air.minFlange - air.deduction / 2;
  const short = Math.min(...sides);
  if (short >= least) return null;
  return {
    code: 'short flange', body: 'die', phase: 'set-up', by: least - short, view: setting.views.find((v) => v.wing && v.onGaugeSide === (sides[0]! <= sides[1]!)) ?? null,
    note: `the flat beside the bend reaches ${short.toFixed(1)} mm from its middle and this V asks ${least.toFixed(1)} mm`,
  };
};

/** Thicknesses that each flange beside an offset lies on its land past the bend, or the tool does not hold it. Common practice, no source. */
const HELD = 2;

const noHold = (setting: Setting): Conflict | null => {
  const [short, gauge] = ([true, false] as const).map((side) => [flatReach(setting, side, 0), side] as const).sort((a, b) => a[0] - b[0])[0]!;
  const least = HELD * setting.bend.thickness;
  return short >= least ? null : {
    code: 'short flange', body: 'die', phase: 'set-up', by: least - short, view: setting.views.find((v) => v.wing && v.onGaugeSide === gauge) ?? null,
    note: `the flange beside the offset lies flat for ${short.toFixed(1)} mm and its tool holds ${least.toFixed(1)} mm`,
  };
};

export interface StrokeAsker {
  (tooling: Tooling, machine: Machine, group: Group, gaugeSide: 0 | 1, pair: Pair, angleOf: (bend: number) => number): StrokeAnswer;
}

/** mm over all of the wider of an offset tool's lands. */
const widestOf = ({ punch, die }: Pair): number => 2 * Math.max(...[...punch.profile, ...die.profile].map((v) => Math.abs(v.x)));

/** What a question about a stroke in a partial fold is asked of. */
export const settingOf = (tooling: Tooling, machine: Machine, group: Group, gaugeSide: 0 | 1, pair: Pair, look: ReturnType<typeof viewer>, angleOf: (bend: number) => number): Setting => {
  const seat: Seat = { bends: group.bends, gaugeSide, ...(group.offset ? { web: group.offset.web } : {}), ...(group.needs === undefined ? {} : { again: true }) };
  const branches = look(seat, angleOf);
  const views = branches.flatMap((b) => b.views);
  const { bend: whole, passes } = tooling.forming[group.bends[0]!]!;
  const bend = group.offset ? offsetBendOf(tooling.sheet, group.offset, widestOf(pair), gaugeSide === group.hubSide) : group.closes ? hemCloseOf(tooling.sheet, group.bends[0]!, pair, hemReach(views)) : group.pass ? passes![group.pass === 1 ? 'first' : 'second'] : whole!;
  return { sheet: tooling.sheet, machine, group, seat, pair, bend, views, branches, angleOf };
};

/** Asks whether a stroke may be made in a partial fold, cheapest questions first. */
export const createStrokeAsker = (asker: Asker, look: ReturnType<typeof viewer>, plates: ReturnType<typeof createPlateClearance>, mayScribe: boolean): StrokeAsker =>
  (tooling, machine, group, gaugeSide, pair, angleOf) => {
    const setting = settingOf(tooling, machine, group, gaugeSide, pair, look, angleOf);
    const { bend, seat } = setting;
    const least = touchOf(bend) + machine.changePoint + (pair.ears?.slides ?? 0);
    if (pair.opening < least) {
      return { ok: false, conflicts: [{ code: 'daylight', body: 'beam', phase: 'set-up', by: least - pair.opening, view: null, note: `between punch and die ${pair.opening.toFixed(0)} mm stay open` }] };
    }
    const short = group.closes ? null : group.offset ? noHold(setting) : shortFlange(setting, tooling);
    if (short) return { ok: false, conflicts: [short] };
    const line = bendLine(tooling, seat, group);
    const need = needOf(line);
    const tools = toolClearance(asker, setting, need);
    if (!tools.ok) return { ok: false, conflicts: tools.conflicts };
    const struck = plates(setting);
    if (struck.length > 0) return { ok: false, conflicts: struck };
    const deep = tooDeep(setting);
    if (deep) return { ok: false, conflicts: [deep] };
    const unstopped: StopChoice = { kind: 'none', plate: setting.views.find((v) => v.wing && v.onGaugeSide)!.plate, face: 'none', x: 0, axisX: 0, r: 0, z: [], retract: 0, spread: 0, feature: null, height: 0, touching: 0 };
    // a bend begun lies in the V by itself: the first pass has placed it
    if (group.pass === 2) return { ok: true, others: () => [], option: { setting, line, need, tools: tools.value, stop: { ...unstopped, begun: true } } };
    const stop = chooseStop(asker, setting, tools.value);
    if (!stop.stop) {
      if (!mayScribe) return { ok: false, conflicts: [stop.conflict] };
      return {
        ok: true,
        others: () => [],
        option: { setting, line, need, tools: tools.value, stop: unstopped },
      };
    }
    const by = (choice: StopChoice): StrokeOption => ({ setting, line, need, tools: tools.value, stop: choice });
    return { ok: true, option: by(stop.stop), others: once(() => {
      const found: StopChoice[] = [stop.stop];
      for (;;) {
        const next = chooseStop(asker, setting, tools.value, found.map((c) => c.feature!));
        if (!next.stop) return found.slice(1).map(by);
        found.push(next.stop);
      }
    }) };
  };

/** Metal behind the throat must pass between the side frames. */
const tooDeep = (setting: Setting): Conflict | null => {
  const { views, machine } = setting;
  if (!reachesFrames(setting)) return null;
  const alongs = views.flatMap((v) => v.pieces.flatMap((p) => p.along));
  const width = Math.max(...alongs) - Math.min(...alongs);
  if (width <= machine.betweenFrames) return null;
  return { code: 'between frames', body: 'side frames', phase: 'set-up', by: width - machine.betweenFrames, view: null, note: `the sheet reaches behind the throat of ${machine.throat.toFixed(0)} mm and is ${width.toFixed(0)} mm wide` };
};

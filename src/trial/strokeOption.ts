import type { Interval } from '../geometry/index.js';
import type { Machine } from '../shop/index.js';
import type { Asker } from './asker.js';
import { bendLine } from './bentPieces.js';
import type { Pair } from './bodies.js';
import type { Conflict } from './conflict.js';
import type { Group } from './groups.js';
import { hemCloseOf } from './hemClose.js';
import { UNCOVERED_END } from './limits.js';
import { offsetBendOf } from './offsetBend.js';
import { once } from './once.js';
import type { createPlateClearance } from './plateClearance.js';
import type { Setting } from './setting.js';
import { shortFlange, shortHold } from './shortFlange.js';
import type { StopChoice } from './stopChoice.js';
import { chooseStop } from './stops.js';
import { touchOf } from './stroke.js';
import { type ToolClearance, reachesFrames, toolClearance } from './toolClearance.js';
import type { Tooling } from './tooling.js';
import type { Seat, View, viewer } from './views.js';

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

/** The part of a bend line that must stand on tools. */
export const needOf = ([from, to]: Interval): Interval => {
  const bare = Math.min(UNCOVERED_END, (to - from) / 10);
  return [from + bare, to - bare];
};

/** How far what lies flat with the hem's flange reaches from its tangent line. mm */
const hemReach = (views: readonly View[]): number =>
  Math.max(...views.filter((v) => v.onGaugeSide).flatMap((v) => v.pieces.filter((p) => p.flat).flatMap((p) => p.outline.map((q) => q[0]))));

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
    const short = group.closes ? null : group.offset ? shortHold(setting) : shortFlange(setting, tooling);
    if (short) return { ok: false, conflicts: [short] };
    const line = bendLine(tooling.sheet.part, seat, group);
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

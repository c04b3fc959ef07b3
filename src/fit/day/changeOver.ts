import type { Machine, Tool } from '../../shop/index.js';
import { type Placed, type Trial, stationSeconds } from '../../trial/index.js';
import type { ChangeCost } from './leastChanges.js';

/** What becomes of a row of punches or dies between two parts. */
export interface ToolChange {
  /** 'altered': the same tool, but its segments, its place, its facing or what it stands on are others. */
  readonly what: 'stays' | 'altered' | 'built' | 'taken off';
  /** Of the part that is to come; of the one before it where it is taken off. */
  readonly station: string;
  readonly kind: 'punch' | 'die';
  /** Its id, and the name that it is carried by. */
  readonly tool: string;
  readonly name: string;
}

/** s for one row. A station is two rows, so a fresh one takes what the trial's time model says of this machine; the rest in proportion is common practice, no source. */
export const rowSeconds = (machine: Pick<Machine, 'stationSeconds'>): Readonly<Record<ToolChange['what'], number>> => {
  const station = stationSeconds(machine);
  return { stays: 0, altered: station / 4, built: station / 2, 'taken off': station / 8 };
};

/** mm: segments set to a mark stand within this. */
const SAME_PLACE = 0.5;

/** A row of one tool as it stands in a station. */
interface Row {
  readonly kind: 'punch' | 'die';
  readonly station: string;
  readonly tool: string;
  readonly name: string;
  /** Which way round, and on what. */
  readonly stands: string;
  readonly segments: readonly Placed[];
}

const nameOf = (tools: readonly Tool[], id: string): string => tools.find((tool) => tool.id === id)?.name ?? id;

const rowsOf = (trial: Trial | null): Row[] => (trial?.stations ?? []).flatMap((s): Row[] => [
  { kind: 'punch', station: s.id, tool: s.punch, name: nameOf(trial!.punches, s.punch), stands: s.punchFacing, segments: s.punchSegments },
  { kind: 'die', station: s.id, tool: s.die, name: nameOf(trial!.dies, s.die), stands: `${s.dieFacing} on ${s.riser} mm`, segments: s.dieSegments },
]);

const sameTool = (a: Row, b: Row): boolean => a.kind === b.kind && a.tool === b.tool;
const same = (a: Row, b: Row): boolean =>
  sameTool(a, b) && a.stands === b.stands && a.segments.length === b.segments.length &&
  a.segments.every((s, i) => s.length === b.segments[i]!.length && s.ear === b.segments[i]!.ear && Math.abs(s.from - b.segments[i]!.from) <= SAME_PLACE);

/**
 * What is done to the bed between two parts (null: it is empty), row by row. Tools that the plan of the part to come does not name are
 * taken off, because that plan was checked without them; a row of the same tool is altered rather than built anew.
 */
export const changeOver = (before: Trial | null, after: Trial): readonly ToolChange[] => {
  const standing = rowsOf(before);
  const change = (what: ToolChange['what'], { station, kind, tool, name }: Row): ToolChange => ({ what, station, kind, tool, name });
  const take = (row: Row, fits: (a: Row, b: Row) => boolean): boolean => {
    const at = standing.findIndex((s) => fits(s, row));
    if (at >= 0) standing.splice(at, 1);
    return at >= 0;
  };
  const coming = rowsOf(after);
  // all that stay are found first: a row must not be altered that another station of the plan takes as it stands
  const stay = new Set(coming.filter((row) => take(row, same)));
  const changes = coming.map((row) => change(stay.has(row) ? 'stays' : take(row, sameTool) ? 'altered' : 'built', row));
  return [...standing.map((row) => change('taken off', row)), ...changes];
};

/** How many rows of tools are handled, and how long it takes on this machine by the stated times. */
export const changeCost = (changes: readonly ToolChange[], machine: Pick<Machine, 'stationSeconds'>): ChangeCost => {
  const seconds = rowSeconds(machine);
  return { changes: changes.filter(({ what }) => what !== 'stays').length, seconds: changes.reduce((sum, { what }) => sum + seconds[what], 0) };
};

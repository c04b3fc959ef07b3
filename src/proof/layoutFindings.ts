import type { Die, Punch } from '../shop/index.js';
import type { Placed, Station, Trial } from '../trial/index.js';
import { dieOf, punchOf } from './pressBodies.js';
import { segmentOf } from './profileSlabs.js';
import { mm } from './stepLog.js';
import { RECORD } from './tolerances.js';

type Row = 'punch' | 'die';

const rowsOf = (s: Station): readonly (readonly [Row, readonly Placed[]])[] => [
  ['punch', s.punchSegments],
  ['die', s.dieSegments],
];

const overlap = (a: Placed, b: Placed): number => Math.min(a.from + a.length, b.from + b.length) - Math.max(a.from, b.from);

/** Segments lie on the bed and beside each other, within a station and between stations. */
const placeFindings = (trial: Trial): string[] => {
  const half = trial.machine.length / 2;
  const findings: string[] = [];
  const all = trial.stations.flatMap((s) =>
    rowsOf(s).flatMap(([row, placed]) => placed.map((p) => ({ station: s.id, row, p }))),
  );
  for (const { station, row, p } of all) {
    const beyond = Math.max(-half - p.from, p.from + p.length - half);
    if (beyond > RECORD) findings.push(`Station ${station}: a ${row} segment of ${mm(p.length)} mm reaches ${mm(beyond)} mm past the end of the bed.`);
  }
  all.forEach((a, i) => {
    for (const b of all.slice(i + 1)) {
      if (a.row !== b.row) continue;
      const by = overlap(a.p, b.p);
      if (by <= RECORD) continue;
      findings.push(
        a.station === b.station
          ? `Station ${a.station}: two ${a.row} segments overlap by ${mm(by)} mm along the bed.`
          : `Stations ${a.station} and ${b.station}: their ${a.row} segments overlap by ${mm(by)} mm along the bed.`,
      );
    }
  });
  return findings;
};

/** Every segment is one that the rack holds, and none is used more often than it is there. */
const countFindings = (trial: Trial): string[] => {
  const findings: string[] = [];
  const used = new Map<string, { readonly tool: Punch | Die; readonly what: string; readonly has: number; count: number }>();
  for (const station of trial.stations) {
    for (const [row, placed] of rowsOf(station)) {
      const tool = row === 'punch' ? punchOf(trial, station) : dieOf(trial, station);
      const facing = row === 'punch' ? station.punchFacing : station.dieFacing;
      if (tool === undefined) continue;
      for (const p of placed) {
        const segment = segmentOf(tool.segments, p, facing);
        const what = `${p.ear === undefined ? '' : `${p.ear} ear `}segment of ${mm(p.length)} mm`;
        if (segment === undefined) {
          findings.push(`Station ${station.id}: ${tool.name} has no ${what}.`);
          continue;
        }
        const key = `${tool.id}/${segment.length}/${segment.ear?.hand ?? ''}`;
        const entry = used.get(key) ?? { tool, what, has: segment.count, count: 0 };
        entry.count++;
        used.set(key, entry);
      }
    }
  }
  for (const { tool, what, has, count } of used.values()) {
    if (count > has) findings.push(`The layout uses ${count} times the ${what} of ${tool.name}; the rack has ${has}.`);
  }
  return findings;
};

/** Heights written in the record agree with the tools that stand in the station. */
const heightFindings = (trial: Trial, station: Station): string[] => {
  const [punch, die] = [punchOf(trial, station), dieOf(trial, station)];
  const findings: string[] = [];
  if (punch === undefined) findings.push(`Station ${station.id}: punch ${station.punch} is not among the trial's tools.`);
  if (die === undefined) findings.push(`Station ${station.id}: die ${station.die} is not among the trial's tools.`);
  if (punch === undefined || die === undefined) return findings;
  const top = die.height + station.riser;
  if (Math.abs(top - station.dieTop) > RECORD) {
    findings.push(`Station ${station.id}: the die top is written as ${mm(station.dieTop)} mm over the die seat; die and riser make ${mm(top)} mm.`);
  }
  if (Math.abs(station.dieTop + punch.height - station.stackHeight) > RECORD) {
    findings.push(`Station ${station.id}: the stack is written as ${mm(station.stackHeight)} mm high; die top and punch make ${mm(station.dieTop + punch.height)} mm.`);
  }
  if (station.punchFacing === 'reversed' && !punch.reversible) findings.push(`Station ${station.id}: ${punch.name} cannot stand reversed.`);
  if (station.dieFacing === 'reversed' && !die.reversible) findings.push(`Station ${station.id}: ${die.name} cannot stand reversed.`);
  return findings;
};

/** Stations on risers of one height and seat take no more bed than these carry in all. */
const riserFindings = (trial: Trial): string[] => {
  const asked = new Map<string, { readonly height: number; readonly seat: string; length: number }>();
  for (const station of trial.stations) {
    const die = dieOf(trial, station);
    if (die === undefined || station.riser <= RECORD) continue;
    const key = `${die.tang}/${station.riser.toFixed(1)}`;
    const entry = asked.get(key) ?? { height: station.riser, seat: die.tang, length: 0 };
    entry.length += station.dieSegments.reduce((sum, p) => sum + p.length, 0);
    asked.set(key, entry);
  }
  return [...asked.values()].flatMap(({ height, seat, length }) => {
    const has = trial.risers.reduce((sum, r) => sum + (r.seat === seat && Math.abs(r.height - height) <= RECORD ? r.length : 0), 0);
    return length <= has + RECORD ? [] : [`Stations on risers of ${mm(height)} mm take ${mm(length)} mm of bed; these risers carry ${mm(has)} mm in all.`];
  });
};

/** What is wrong with the layout whatever the step. */
export const layoutFindings = (trial: Trial): string[] => [
  ...trial.stations.flatMap((s) => heightFindings(trial, s)),
  ...placeFindings(trial),
  ...countFindings(trial),
  ...riserFindings(trial),
];

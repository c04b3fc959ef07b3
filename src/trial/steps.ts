import { cylinderForces } from '../forming/index.js';
import type { Machine } from '../shop/index.js';
import { type Convex, type Planar, distance, gapOf } from '../geometry/index.js';
import { type Bend, plateNames, staysOpen } from '../sheet/index.js';
import { createAsker } from './asker.js';
import type { Body } from './body.js';
import { resultantOf } from './bentPieces.js';
import { insetOf } from './ears.js';
import { DAYLIGHT, leastOpening } from './leastOpening.js';
import { type Layout, lowestSeat } from './layout.js';
import { listed } from './listed.js';
import { type Planned, changeSeconds } from './task.js';
import type { StrokeOption } from './strokeOption.js';
import { BASE_ALLOWANCE, ON_DIE_TOP } from './limits.js';
import { placed } from './placed.js';
import { isScribed } from './stopChoice.js';
import { TIME, strokeSeconds, sumOf, waySeconds } from './time.js';
import { foldOf } from './hemClose.js';
import { strokeLength } from './strokeLength.js';
import type { Tooling } from './tooling.js';
import type { Margin, Move, Step, Stop, TimePiece } from './trial.js';
import { type Made, madeBy } from './made.js';
import { contactReach, startOf, tipAt, touchOf, travelOf, wingsAt } from './stroke.js';
import type { View } from './views.js';
import { FRONT_TRAVEL, type Way } from './ways.js';

/** How far a part is carried along the bed to be clear of a station: both lengths and room. mm */
const SIDE_ROOM = 100;

const movesIn = (way: Way, sideways: number): readonly Move[] =>
  way.by === 'side'
    ? [{ kind: 'shift', by: [-sideways, 0, 0] }]
    : [{ kind: 'shift', by: [0, FRONT_TRAVEL, 0] }, { kind: 'shift', by: [0, 0, -way.lift] }];

const movesOut = (way: Way, sideways: number, bendAngle: number): readonly Move[] => {
  if (way.by === 'side') return [{ kind: 'shift', by: [sideways, 0, 0] }];
  const out: Move = { kind: 'shift', by: [0, -FRONT_TRAVEL, 0] };
  const up: Move = { kind: 'shift', by: [0, 0, way.lift] };
  return way.by === 'front' ? [up, out] : [up, { kind: 'tilt', degrees: -bendAngle / 2 }, out];
};

/** Looks over the stroke at which the planner reads its smallest clearance; the proof measures it by itself. */
const LOOKS = 24;

/** Distances over this are of no interest to anybody at the machine. mm */
const NOTHING_NEAR = 20;

/** The smallest distance of sheet and tools at looks over the stroke, purposeful contact left out. mm */
const clearanceOf = ({ setting, tools }: StrokeOption): number => {
  const { bend, pair, views } = setting;
  const reach = contactReach(bend);
  let least = Math.min(pair.opening, NOTHING_NEAR);
  for (let k = 0; k <= LOOKS; k++) {
    const x = startOf(bend) + ((bend.bendAngleUnderLoad - startOf(bend)) * k) / LOOKS;
    const wings = wingsAt(bend, x);
    for (const view of views) {
      const pose = view.onGaugeSide ? wings.gauge : wings.front;
      for (const piece of view.pieces) {
        if (piece.flat) continue;
        const within = (inset: number): boolean => piece.along[0] < tools.window[1] - inset && piece.along[1] > tools.window[0] + inset;
        const inWindow = within(0);
        const outline = placed(piece.outline, pose);
        const tip = tipAt(bend, x);
        const raised = outline.map((p) => [p[0], p[1] - tip] as const);
        // separating axes give a lower bound of the distance: only what may be nearer is measured
        const nearer = (polygon: Convex, body: Body, at: Planar): void => {
          if (gapOf(piece.shape, at, body.shape, least) < least) least = Math.min(least, distance(polygon, body.polygon));
        };
        const ram = [...(within(insetOf('body', pair.ears)) ? pair.punchBodies : inWindow && pair.ears ? pair.ears.feet : []), ...pair.ramBodies];
        for (const body of ram) nearer(raised, body, { ...pose, y: pose.y - tip });
        const rests = piece.lowest >= -bend.thickness / 2 - ON_DIE_TOP;
        const bed = [...(inWindow && !rests ? pair.dieBodies : []), ...pair.bedBodies];
        if (outline.some((p) => Math.abs(p[0]) > reach)) for (const body of bed) nearer(outline, body, pose);
      }
    }
  }
  return Math.max(least, 0);
};

/** The flange beside the running bends that reaches least far from its tangent line, and how far with all that hangs on it. mm */
const shorterFlange = ({ setting: { views } }: StrokeOption): { readonly wing: View; readonly reach: number } => {
  const flanges = [true, false].flatMap((gauge) => {
    const side = views.filter((v) => v.onGaugeSide === gauge);
    const wings = side.filter((v) => v.wing);
    return wings.map((wing) => {
      const alongs = wing.pieces.flatMap((p) => p.along);
      const [from, to] = [Math.min(...alongs), Math.max(...alongs)];
      // of several flanges side by side each has what lies behind its own metal
      const behind = side.flatMap((v) => v.pieces).filter((p) => wings.length === 1 || (p.along[0] < to && p.along[1] > from));
      return { wing, reach: Math.max(...behind.flatMap((p) => p.outline.map((q) => (gauge ? q[0] : -q[0])))) };
    });
  });
  return flanges.reduce((least, flange) => (flange.reach < least.reach ? flange : least));
};

/** Outside length over the shorter side after the stroke, and which it is. */
const measureOf = (option: StrokeOption, air: Made): Step['measure'] => {
  const { group, sheet, bend } = option.setting;
  if (bend.kind === 'offset') {
    const length = travelOf(bend) + bend.thickness;
    return { what: `over both flanges of the offset ${listed(group.bends.map((b) => sheet.part.bends[b]!.id))}, outside`, length, tolerance: null };
  }
  const half = ((Math.min(bend.bendAngle, 90) / 2) * Math.PI) / 180;
  const setback = (air.insideRadius + bend.thickness) * Math.tan(half);
  const { wing, reach } = shorterFlange(option);
  const id = group.bends.map((b) => sheet.part.bends[b]!).find((b) => b.sides.some((s) => s.plate === wing.plate))!.id;
  // of a hem not all metal that its zone holds is curved
  const level = (sheet.allowances[group.bends[0]!]! - air.allowance) / 2;
  const length = reach + level + setback;
  return { what: `${plateNames(sheet.part)[wing.plate]!}, outside, to the ${bend.bendAngle > 90 ? 'outer tangent' : 'outer corner'} of ${id}`, length, tolerance: null };
};

const side = (n: number): string => (n >= 0 ? 'right' : 'left');

const stopOf = (option: StrokeOption, origin: number, stationFrom: number): Stop => {
  const { stop, setting, line } = option;
  const names = plateNames(setting.sheet.part);
  const endOfBend = origin + line[0];
  const offset = endOfBend - stationFrom;
  const sideways = `left end of the bend line ${Math.abs(endOfBend).toFixed(1)} mm ${side(endOfBend)} of the bed's middle, ${Math.abs(offset).toFixed(1)} mm ${offset >= 0 ? 'inside' : 'outside'} the punch's left end`;
  if (stop.begun) {
    return { kind: 'none', edge: 'no finger: the bend begun lies in the V, its crease under the punch tip', plate: stop.plate, face: 'none', x: 0, axisX: 0, r: 0, z: [], sideways, retract: 0 };
  }
  if (stop.kind === 'none') {
    return { kind: 'none', edge: setting.bend.kind === 'hem close' ? 'the fold is out of the fingers\' reach: set it by eye behind the punch' : 'no edge in the fingers\' reach: scribe the bend line and set it under the punch tip by eye', plate: stop.plate, face: 'none', x: 0, axisX: 0, r: 0, z: [], sideways, retract: 0 };
  }
  return {
    kind: stop.kind, plate: stop.plate, face: stop.face, x: stop.x, axisX: stop.axisX, r: stop.r,
    edge: stop.fold ? `fold of hem ${stop.fold}` : stop.kind === 'edge' ? `${stop.skew === undefined ? 'back edge' : 'tapered edge'} of ${names[stop.plate]!}` : `outer face of ${names[stop.plate]!}`,
    z: stop.z.map((z) => z + origin), ...(stop.skew === undefined ? {} : { skew: stop.skew }), sideways, retract: stop.retract,
  };
};

const wordsOf = (before: Planned | null, here: Planned, stop: Stop): string => {
  const { action, option } = here;
  const { tools, setting } = option;
  const { bend } = setting;
  const names = plateNames(setting.sheet.part);
  const gauge = names[setting.views.find((v) => v.wing && v.onGaugeSide)!.plate]!;
  const handle = !before ? `Take the blank with side ${action.sideUp} up`
    : before.action.sideUp !== action.sideUp ? `Turn the sheet over: side ${action.sideUp} up`
      : changeSeconds(before.action, action) > 0 ? `Turn the sheet in its plane, side ${action.sideUp} stays up` : `Keep side ${action.sideUp} up`;
  const bring = tools.wayIn.by === 'side' ? 'bring it in sideways along the punch' : tools.wayIn.lift > 5 ? `lift it ${tools.wayIn.lift.toFixed(0)} mm over the die and lower it` : 'slide it in from the front';
  const against = option.stop.begun ? 'lay the bend begun in the V with its crease under the punch tip' : stop.kind === 'none' ? `set the scribed line under the ${bend.kind === 'offset' ? 'edge of the punch' : 'punch tip'}` : `${stop.edge} against the ${stop.z.length > 1 ? 'two fingers' : 'finger'}`;
  const out = tools.wayOut.by === 'side' ? 'Take the part off sideways along the punch' : tools.wayOut.by === 'tilt' ? 'Lower the back wing and draw the part out to the front' : 'Lift the part off the die and draw it out to the front';
  const ids = listed(setting.group.bends.map((b) => setting.sheet.part.bends[b]!.id));
  const { hit, kind, insideRadius } = setting.sheet.part.bends[setting.group.bends[0]!]!;
  const isHem = kind === 'hem';
  const doing = bend.kind === 'hem close' ? `Close hem ${ids} ${staysOpen(insideRadius) ? 'to its gap' : 'flat'} between punch and anvil` : bend.kind === 'offset' ? `Press the offset ${ids} in one stroke: the flange ${bend.gaugeRests ? 'in front' : 'towards the gauge'} goes down by ${travelOf(bend).toFixed(1)} mm and stays level, keep clear of it` : isHem ? `Pre-bend hem ${ids}`
    : setting.group.pass === 1 ? `Begin ${ids} to ${bend.bendAngle.toFixed(0)} degrees of bend angle, the first of two passes` : setting.group.pass === 2 ? `Finish ${ids} to ${bend.bendAngle.toFixed(0)} degrees of bend angle` : hit ? `Hit ${hit.number} of ${hit.count} of bend ${hit.of}` : `Bend ${ids}`;
  const towards = bend.kind === 'hem close' ? 'the fold' : gauge;
  const place = bend.kind === 'hem close' && stop.kind === 'none' ? `set the fold ${(bend.lineBack + foldOf(bend.runsAt(bend.from), bend.thickness).past).toFixed(1)} mm behind the middle of the punch by eye` : against;
  return `${handle}, ${towards} to the gauge; ${bring}, ${place}. ${doing}. ${out}.`;
};

const hitOf = ({ hit }: Bend): Pick<Step, 'hit'> => (hit ? { hit: { of: hit.of, number: hit.number, count: hit.count } } : {});

/** A plan on its layout as the steps that papers and proof read. */
export const stepsOf = (layout: Layout, tooling: Tooling, machine: Machine, handling: number): readonly Step[] => {
  const asker = createAsker();
  return layout.plan.map((here, i): Step => {
    const before = layout.plan[i - 1] ?? null;
    const { option, action } = here;
    const { setting, tools } = option;
    const { bend, pair, group } = setting;
    const { part } = tooling.sheet;
    const first = group.bends[0]!;
    const air = madeBy(tooling, first, bend);
    const { station, origin } = layout.placements[i]!;
    const stand = layout.stations[station]!;
    const stationFrom = stand.punchSegments[0]!.from;
    const stationTo = stand.punchSegments.reduce((end, s) => Math.max(end, s.from + s.length), stationFrom);
    const length = strokeLength(part, group);
    const force = air.peakForcePerLength * length;
    const cylinders = cylinderForces(force, origin + resultantOf(part, setting.seat, group), machine.cylinders.spacing);
    const alongs = setting.views.flatMap((v) => v.pieces.flatMap((p) => p.along));
    const leftward = station === 0 && layout.stations.length > 1;
    const far = Math.max(...alongs) - Math.min(...alongs) + (stationTo - stationFrom) + SIDE_ROOM;
    const sideways = leftward ? -far : far;
    const depth = travelOf(bend);
    const clearance = clearanceOf(option);
    const ramOpening = tools.wayIn.opening;
    const stop = stopOf(option, origin, stationFrom);
    const time: TimePiece[] = [
      { what: 'bring the sheet to its stop', seconds: TIME.seat * handling },
      ...(before && changeSeconds(before.action, action) > 0 ? [{ what: before.action.sideUp === action.sideUp ? 'turn the sheet' : 'turn the sheet over', seconds: changeSeconds(before.action, action) * handling }] : []),
      ...(before && layout.placements[i - 1]!.station !== station ? [{ what: 'step to the other station', seconds: TIME.walk * handling }] : []),
      ...(waySeconds(tools.wayIn) + waySeconds(tools.wayOut) > 0 ? [{ what: 'take the part in or out sideways or tilted', seconds: waySeconds(tools.wayIn) + waySeconds(tools.wayOut) }] : []),
      ...(isScribed(option.stop) ? [{ what: 'place by the scribed line', seconds: TIME.scribed }] : []),
      { what: 'ram', seconds: strokeSeconds(machine, tools.wayIn.opening, tools.wayOut.opening, depth, touchOf(bend)) },
    ];
    const margins: Margin[] = [
      { name: 'force', value: force / 1000, limit: machine.rating / 1000, unit: 'kN', source: 'machine rating' },
      { name: 'force per length', value: air.peakForcePerLength, limit: Math.min(pair.punch.rating, pair.die.rating, machine.ratingPerLength), unit: 'N/mm', source: `least rating of punch, die and machine${bend.kind === 'V' ? '' : `; ${bend.kind === 'offset' ? 'force of an offset' : 'force to close'} by a factor of common practice, no source`}` },
      { name: 'force on one cylinder', value: Math.max(cylinders.left, cylinders.right) / 1000, limit: machine.rating / 2000, unit: 'kN', source: 'half the machine rating, statics' },
      ...(bend.kind === 'V' ? [{ name: 'included angle under load over die angle', value: pair.die.includedAngle, limit: 180 - bend.bendAngleUnderLoad, unit: 'degrees included', source: 'die angle' }] : []),
      { name: 'length of tools', value: stationTo - stationFrom, limit: machine.length, unit: 'mm', source: 'bed length' },
      { name: DAYLIGHT, value: leastOpening(asker, option, [stationFrom - origin, stationTo - origin]), limit: pair.opening, unit: 'mm', source: 'open height less the stack; least opening for the ways in and out as planned' },
      { name: 'lowest ram seat over shut height', value: machine.shutHeight, limit: lowestSeat(here), unit: 'mm', source: 'machine data' },
      { name: 'base allowance of clearance', value: BASE_ALLOWANCE, limit: clearance, unit: 'mm', source: 'common practice, no source' },
    ];
    return {
      number: i + 1, kind: bend.kind === 'V' ? 'V bend' : bend.kind === 'offset' ? 'offset bend' : 'hem close', ...(group.pass ? { pass: group.pass } : {}), ...hitOf(part.bends[first]!), bends: group.bends.map((b) => part.bends[b]!.id),
      station: stand.id, punch: pair.punch.id, die: pair.die.id, facing: pair.punchFacing,
      sideUp: action.sideUp, gaugeSide: action.gaugeSide, place: origin, ...(bend.kind === 'V' ? {} : { lineBack: bend.lineBack }), stop,
      bendAngle: bend.bendAngle, includedAngle: 180 - bend.bendAngle, bendAngleUnderLoad: bend.bendAngleUnderLoad, springback: air.springback,
      insideRadius: air.insideRadius, allowance: air.allowance, deduction: air.deduction,
      depth: air.depth, ramPosition: pair.dieTop + touchOf(bend) - air.depth,
      ramOpening, ramOpeningOut: tools.wayOut.opening, speedChange: touchOf(bend) + machine.changePoint,
      force, forcePerLength: air.peakForcePerLength, cylinderForces: [cylinders.left, cylinders.right],
      crowning: null,
      crowningWords: bend.kind === 'offset' ? 'no crowning: the tools close on their lands; where the step is uneven along the bed, shim under the die' : bend.kind !== 'V' ? 'no crowning: punch and anvil are flat' : machine.crowning === 'none' ? 'no crowning: shim under the die until left, middle and right of the test strip agree' : `crowning ${machine.crowning}: set it on the test strip until left, middle and right agree`,
      clearance, contactReach: contactReach(bend), margins,
      wayIn: movesIn(tools.wayIn, sideways), wayOut: movesOut(tools.wayOut, sideways, bend.bendAngle),
      words: wordsOf(before, here, stop), measure: measureOf(option, air), time,
    };
  });
};

/** Predicted seconds of one part without its share of the set-up. */
export const runSeconds = (steps: readonly Step[]): number => steps.reduce((sum, s) => sum + sumOf(s.time), 0);


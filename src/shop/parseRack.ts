import { bounds } from '../geometry/index.js';
import { contourFault } from './contourFault.js';
import { type DataFault, readShape, refuse, type Refused } from './dataFault.js';
import { DRAWN_TO } from './drawnTo.js';
import { repeated } from './parseFloor.js';
import { halfOpening, vDepth } from './profiles.js';
import type { Result } from './result.js';
import { type Die, type Punch, type Rack, type Tool, bendsInV } from './tool.js';
import { crossingsAt } from './toolSlabs.js';
import { dieProfileFault, type ProfileFault, punchProfileFault } from './profileFault.js';
import { dieContour, punchContour, rackSchema, type RawDie, type RawPunch } from './toolSchema.js';

/** mm of flat that a die must have left beside its shoulder arc, and of metal under its V. */
const LEAST_LAND = 0.5;
const LEAST_FLOOR = 5;

const segmentFault = (tool: Tool): Refused | undefined => {
  for (const [i, s] of tool.segments.entries()) {
    if (s.ear === undefined) continue;
    const field = `segments.${i}.ear`;
    if (s.ear.reach >= s.length) {
      return refuse('sense', tool.id, `${field}.reach`, `(${s.ear.reach} mm) must be less than the segment's length (${s.length} mm)`);
    }
    if (s.ear.footHeight >= tool.height) {
      return refuse('sense', tool.id, `${field}.footHeight`, `(${s.ear.footHeight} mm) must be less than the tool's height (${tool.height} mm)`);
    }
    if (s.ear.slides !== undefined && tool.kind === 'die') {
      return refuse('sense', tool.id, `${field}.slides`, 'is for punches: a die has no ears that hang');
    }
    if (s.ear.slides !== undefined && s.ear.slides + s.ear.footHeight > s.length) {
      return refuse('sense', tool.id, `${field}.slides`, `(${s.ear.slides} mm) and the foot's height must together be at most the segment's length (${s.length} mm): the slant has no room`);
    }
    if (crossingsAt(tool.profile, tool.kind === 'punch' ? s.ear.footHeight : -s.ear.footHeight) !== 2) {
      return refuse('sense', tool.id, `${field}.footHeight`, `(${s.ear.footHeight} mm) must cut the profile in one piece`);
    }
  }
  return undefined;
};

/** mm by which an offset tool is wider than its step, its edges and the thickest sheet on either side of the middle. */
const LEAST_LEDGE = 5;

const offsetFault = (tool: Tool): Refused | undefined => {
  const { offset } = tool;
  if ((tool.shape === 'offset') !== (offset !== undefined)) return refuse('sense', tool.id, 'offset', 'must be given for an offset punch or die, and for no other tool');
  if (offset === undefined) return undefined;
  if (offset.leastThickness > offset.mostThickness) return refuse('sense', tool.id, 'offset.leastThickness', `(${offset.leastThickness} mm) must not be more than mostThickness (${offset.mostThickness} mm)`);
  // two arcs of this radius lie in the step, one over the other, with the sheet between
  const least = 2 * offset.insideRadius + offset.mostThickness;
  if (offset.height < least - DRAWN_TO) return refuse('sense', tool.id, 'offset.height', `(${offset.height} mm) must be at least ${least.toFixed(2)} mm: two bends of this radius in the thickest sheet rise so far`);
  const half = Math.min(...bounds([tool.profile]).map(([x]) => Math.abs(x)));
  const needed = offset.mostThickness / 2 + offset.insideRadius + LEAST_LEDGE;
  return half < needed ? refuse('sense', tool.id, 'profile', `must reach at least ${needed.toFixed(1)} mm to either side of its middle, not ${half.toFixed(1)} mm`) : undefined;
};

/** An outline that is none, by the parameter that makes it so where one is found. */
const outlineFault = (tool: Tool, why: () => ProfileFault | undefined): Refused | undefined => {
  const wrong = contourFault(tool.profile);
  if (wrong === undefined) return undefined;
  const { field, what } = why() ?? { field: 'profile', what: wrong };
  return refuse('sense', tool.id, field, what);
};

const punchFault = (p: Punch, raw: RawPunch): Refused | undefined => {
  if (!bendsInV(p) !== (p.includedAngle === 180)) {
    return refuse('sense', p.id, 'includedAngle', `must be 180 degrees for ${p.shape === 'offset' ? 'an offset' : 'a flattening'} punch and less for any other`);
  }
  const wrong = outlineFault(p, () => punchProfileFault(raw));
  if (wrong !== undefined) return wrong;
  const [[, low], [, high]] = bounds([p.profile]);
  if (Math.abs(low) > DRAWN_TO || (p.shape !== 'offset' && !p.profile.some((v) => v.x === 0 && Math.abs(v.y) <= DRAWN_TO))) {
    return refuse('sense', p.id, 'profile', `must have its tip, a corner at (0, 0), as its lowest point (the lowest lies at ${low.toFixed(2)} mm)`);
  }
  if (Math.abs(high - p.height) > DRAWN_TO) {
    return refuse('sense', p.id, 'height', `(${p.height} mm) must be the top of the profile (${high.toFixed(2)} mm)`);
  }
  return offsetFault(p) ?? segmentFault(p);
};

const dieFault = (d: Die, raw: RawDie): Refused | undefined => {
  const wide = bounds([d.profile])[1][0];
  if (d.shape === 'V') {
    if (d.v <= 0) return refuse('sense', d.id, 'v', `(${d.v} mm) must be more than 0 mm`);
    if (d.includedAngle >= 180) return refuse('sense', d.id, 'includedAngle', `(${d.includedAngle} degrees) must be less than 180 degrees for a V`);
    const c = halfOpening(d);
    const half = raw.profile.shape === 'block' ? raw.profile.topWidth / 2 : wide;
    if (c + LEAST_LAND > half) {
      return refuse('sense', d.id, 'v', `(${d.v} mm) takes ${(2 * c).toFixed(1)} mm with its shoulder radii: the die's top must be at least ${(2 * (c + LEAST_LAND)).toFixed(1)} mm wide, not ${(2 * half).toFixed(1)} mm`);
    }
    const flat = raw.profile.shape === 'block' ? raw.profile.flat : 0;
    if (flat >= d.v) return refuse('sense', d.id, 'profile.flat', `(${flat} mm) must be less than the V (${d.v} mm)`);
    const deep = vDepth(d, flat);
    if (deep + LEAST_FLOOR > d.height) {
      return refuse('sense', d.id, 'height', `(${d.height} mm) must be at least ${(deep + LEAST_FLOOR).toFixed(1)} mm: the V is ${deep.toFixed(1)} mm deep`);
    }
  } else if (d.v !== 0 || d.includedAngle !== 180) {
    return refuse('sense', d.id, 'v', `must be 0 mm, with 180 degrees included, for an ${d.shape === 'offset' ? 'offset die' : 'anvil'}`);
  }
  const wrong = outlineFault(d, () => dieProfileFault(raw));
  if (wrong !== undefined) return wrong;
  const [[, low], [, high]] = bounds([d.profile]);
  if (Math.abs(high) > DRAWN_TO) {
    return refuse('sense', d.id, 'profile', `must have its top face at up 0 (the highest point lies at ${high.toFixed(2)} mm)`);
  }
  if (Math.abs(low + d.height) > DRAWN_TO) {
    return refuse('sense', d.id, 'height', `(${d.height} mm) must reach the bottom of the profile (${(-low).toFixed(2)} mm)`);
  }
  return offsetFault(d) ?? segmentFault(d);
};

/**
 * A rack of tools from data read from outside: strict, every figure in its range, each profile a simple outline with
 * its tip or its top where the frames say. The first fault comes back as a sentence.
 */
export const parseRack = (json: unknown): Result<Rack, DataFault> => {
  const read = readShape(rackSchema, json, 'rack', 2);
  if (!read.ok) return read;
  const raw = read.value;
  const punches = raw.punches.map((p): Punch => ({ ...p, profile: punchContour(p) }));
  const dies = raw.dies.map((d): Die => ({ ...d, profile: dieContour(d) }));
  const twice = repeated([...punches, ...dies, ...raw.risers].map((t) => t.id));
  if (twice !== undefined) return refuse('sense', twice, 'id', 'names two tools; each needs its own');
  for (const [i, punch] of punches.entries()) {
    const fault = punchFault(punch, raw.punches[i]!);
    if (fault !== undefined) return fault;
  }
  for (const [i, die] of dies.entries()) {
    const fault = dieFault(die, raw.dies[i]!);
    if (fault !== undefined) return fault;
  }
  return { ok: true, value: { ...raw, punches, dies } };
};

import { describe, expect, it } from 'vitest';
import { DEMO_FLOOR_DATA } from './demoFloorData.js';
import { DEMO_RACK_DATA } from './demoRackData.js';
import { parseFloor } from './parseFloor.js';
import { parseRack } from './parseRack.js';

/** The data with one field replaced (or, by undefined, taken out). */
const changed = (data: unknown, path: string, value: unknown): unknown => {
  const copy: unknown = JSON.parse(JSON.stringify(data));
  const keys = path.split('.');
  const last = keys.pop()!;
  const holder = keys.reduce<Record<string, unknown>>((o, k) => o[k] as Record<string, unknown>, copy as Record<string, unknown>);
  if (value === undefined) delete holder[last];
  else holder[last] = value;
  return copy;
};

const sentenceOf = (read: ReturnType<typeof parseFloor> | ReturnType<typeof parseRack>): string =>
  read.ok ? 'accepted' : read.fault.sentence;

describe('parseFloor', () => {
  it('reads what was saved as JSON', () => {
    expect(parseFloor(JSON.parse(JSON.stringify(DEMO_FLOOR_DATA))).ok).toBe(true);
  });

  // machine 0 is 'small-fast': open 335, shut 200
  it.each([
    ['0.rating', 0, 'small-fast: rating must be a number from 10000 to 50000000 N (0 was given).'],
    ['0.rating', '40 t', 'small-fast: rating must be a number from 10000 to 50000000 N ("40 t" was given).'],
    ['0.throat', undefined, 'small-fast: throat must be a number from 0 to 2000 mm (it is missing).'],
    ['0.colour', 'red', 'small-fast: colour is not a known field.'],
    ['0.gauge.x.colour', 'red', 'small-fast: gauge.x.colour is not a known field.'],
    ['0.shutHeight', 335, 'small-fast: shutHeight (335) must be less than openHeight (335).'],
    ['0.gauge.x.min', 400, 'small-fast: gauge.x.min (400 mm) must be less than max (400 mm).'],
    ['0.gauge.r.drive', 'steam', 'small-fast: gauge.r.drive must have a drive, one of: powered, by hand, fixed ("steam" was given).'],
    ['0.gauge.fingers', 1.5, 'small-fast: gauge.fingers must be a whole number from 1 to 6 (1.5 was given).'],
    ['0.gauge.finger.faces.0.to', 15, "small-fast: gauge.finger.faces.0 (nose) must lie on an upright edge of the finger's profile."],
    ['0.gauge.finger.faces.0.from', 8, 'small-fast: gauge.finger.faces.0.to (8 mm) must be more than from (8 mm).'],
    ['0.gauge.finger.faces.0.behind', 25, 'small-fast: gauge.finger.faces must hold the nose, a face with behind 0.'],
    ['0.clampFamilies', ['bayonet'], 'small-fast: clampFamilies.0 must be one of: tang A, tang B, tang C, tang D, tang E, tang F, tang G, tang H ("bayonet" was given).'],
    ['0.clampFamilies', [], 'small-fast: clampFamilies must list at least 1 of: tangs ([] was given).'],
    ['0.bed.0', { shape: 'rectangle', back: [-40, 40], up: [-300, 2] }, 'small-fast: bed reaches 2 mm above the die seat (up 0).'],
    // depth 800, the slope to the width below 25 high
    ['0.bed.0.topDepth', 2000, 'small-fast: bed.0.topDepth (2000 mm) must be less than 775 mm, where the slope to the width below begins.'],
    ['0.clamp.0.chamfer', 60, 'small-fast: clamp.0.chamfer (60 mm) must be less than half the width (35 mm) and less than the height (50 mm).'],
    ['0.gauge.beam.back', [172, 92], 'small-fast: gauge.beam.back.0 (172 mm) must be less than where it ends (92 mm).'],
    ['0.clamp.0', { shape: 'rectangle', back: [-40, 40], up: [-3, 50] }, "small-fast: clamp.0 reaches 3 mm below the punch's shoulder seat (up 0)."],
    ['0.beam.0', { shape: 'contour', corners: [[0, 0], [0, 90], [90, 90], [90, 0]] }, 'small-fast: beam.0 runs clockwise; an outline must run counter-clockwise.'],
    ['0.repeatability.x', { source: 'measured' }, 'small-fast: repeatability.x.value must be a number from 0.001 to 5 mm (it is missing).'],
    ['1.id', 'small-fast', 'small-fast: id names two machines; each needs its own.'],
    ['0.id', 7, 'number 1: id must be a short id (7 was given).'],
  ])('refuses %s = %j in one sentence', (path, value, sentence) => {
    expect(sentenceOf(parseFloor(changed(DEMO_FLOOR_DATA, path, value)))).toBe(sentence);
  });

  it.each([
    [{}, 'floor: the whole must be a list of machines ({} was given).'],
    [null, 'floor: the whole must be a list of machines (null was given).'],
    [[], 'floor: the whole must list at least 1 of: machines ([] was given).'],
  ])('refuses %j', (json, sentence) => {
    expect(sentenceOf(parseFloor(json))).toBe(sentence);
  });
});

describe('parseRack', () => {
  it('reads what was saved as JSON, drawn profiles too', () => {
    expect(parseRack(JSON.parse(JSON.stringify(DEMO_RACK_DATA))).ok).toBe(true);
    const drawn = { shape: 'contour', corners: [[0, 0], [10, 20], [10, 125], [-10, 125], [-10, 20]] };
    const read = parseRack(changed(DEMO_RACK_DATA, 'punches.0.profile', drawn));
    expect(read.ok && read.value.punches[0]!.profile).toHaveLength(5);
  });

  // punch 0: 'straight-r1', 125 mm high; die 3: V 12, 85 degrees included, shoulder radius 1.2. Half its opening is
  // 6 + 1.2 tan 23.75 deg = 6.53 mm; its V is 6/tan 42.5 deg less the floor's 0.3/tan 42.5 deg = 6.2 mm deep
  it.each([
    ['punches.0.tipRadius', -1, 'straight-r1: tipRadius must be a number from 0 to 300 mm (-1 was given).'],
    ['punches.0.tang', 'seat A', /^straight-r1: tang must be one of: tang A, .* \("seat A" was given\)\.$/],
    ['punches.0.segments.15.ear.reach', 100, "straight-r1: segments.15.ear.reach (100 mm) must be less than the segment's length (100 mm)."],
    ['punches.0.segments.15.ear.footHeight', 130, "straight-r1: segments.15.ear.footHeight (130 mm) must be less than the tool's height (125 mm)."],
    ['punches.0.segments.0.length', 0, 'straight-r1: segments.0.length must be a number from 5 to 6000 mm (0 was given).'],
    ['punches.0.segments.0.count', -2, 'straight-r1: segments.0.count must be a whole number from 1 to 200 (-2 was given).'],
    ['punches.0.profile', { shape: 'contour', corners: [[0, 1], [10, 20], [10, 125], [-10, 125]] }, 'straight-r1: profile must have its tip, a corner at (0, 0), as its lowest point (the lowest lies at 1.00 mm).'],
    ['punches.0.profile', { shape: 'contour', corners: [[0, 0], [10, 20], [10, 120], [-10, 120]] }, 'straight-r1: height (125 mm) must be the top of the profile (120.00 mm).'],
    ['punches.0.profile', { shape: 'contour', corners: [[0, 0], [10, 125], [10, 20], [-10, 125]] }, /^straight-r1: profile crosses itself near .*simple outline\.$/],
    ['punches.2.profile.throat', 60, "gooseneck: profile.throat (60 mm) must be less than the neck's back (40 mm)."],
    ['punches.0.profile.shape', 'banana', 'straight-r1: profile.shape must have a shape, one of: contour, straight, gooseneck, flattening, offset ("banana" was given).'],
    ['punches.0.includedAngle', 180, 'straight-r1: includedAngle must be 180 degrees for a flattening punch and less for any other.'],
    // body 12 mm wide: a tip of 85 degrees leaves its arc at radius times cos 42.5 deg = 0.7373 to the side, so that 6 mm take 8.14 mm of radius
    ['punches.0.tipRadius', 20, 'straight-r1: tipRadius (20 mm) must be at most 8.14 mm: a rounder tip of 85 degrees is wider than half the body (6 mm to its side of the bending plane).'],
    ['punches.0.tipRadius', 0, 'straight-r1: tipRadius (0 mm) must be more than 0 mm for a nose: a sharp one is given its measured radius.'],
    ['punches.0.height', 60, "straight-r1: profile.shoulderFrom (92 mm) must be less than the tool's height (60 mm)."],
    ['punches.0.profile.bodyTop', 130, 'straight-r1: profile.shoulderFrom (92 mm) must lie over top of the body (130 mm).'],
    ['dies.3.profile.stepAt', 200, /^die-v12-85: profile.stepAt \(200 mm\) and the [\d.]+ mm .* at most the height \(90 mm\)\.$/],
    ['dies.3.v', 24, 'die-v12-85: v (24 mm) takes 25.1 mm with its shoulder radii: the die\'s top must be at least 26.1 mm wide, not 24.0 mm.'],
    ['dies.3.height', 10, 'die-v12-85: height (10 mm) must be at least 11.2 mm: the V is 6.2 mm deep.'],
    ['dies.3.vConvention', 'rounded', 'die-v12-85: vConvention must be one of: sharp, tangent ("rounded" was given).'],
    ['dies.3.v', 0, 'die-v12-85: v (0 mm) must be more than 0 mm.'],
    ['dies.16.v', 8, 'anvil: v must be 0 mm, with 180 degrees included, for an anvil.'],
    ['dies.3.profile', { shape: 'contour', corners: [[-20, -90], [20, -90], [20, 3], [-20, 3]] }, 'die-v12-85: profile must have its top face at up 0 (the highest point lies at 3.00 mm).'],
    ['risers.0.height', 0, 'riser-5: height must be a number from 0.1 to 500 mm (0 was given).'],
    ['dies.0.id', 'straight-r1', 'straight-r1: id names two tools; each needs its own.'],
    ['dies.0.id', '', 'dies number 1: id must be a short id (nothing was given).'],
    ['currency', '', 'demo-rack: currency must be a currency (nothing was given).'],
  ])('refuses %s = %j in one sentence', (path, value, sentence) => {
    const said = sentenceOf(parseRack(changed(DEMO_RACK_DATA, path, value)));
    if (typeof sentence === 'string') expect(said).toBe(sentence);
    else expect(said).toMatch(sentence);
  });

  it('what holds no fields where fields are wanted is told so', () => {
    expect(sentenceOf(parseRack(null))).toBe('rack: the whole must be fields in braces { } (null was given).');
    expect(sentenceOf(parseFloor(changed(DEMO_FLOOR_DATA, '0.site', 12)))).toBe('small-fast: site must be fields in braces { } (12 was given).');
  });
});

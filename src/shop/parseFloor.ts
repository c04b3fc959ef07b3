import { z } from 'zod';
import { type Contour, bounds, flatten } from '../geometry/index.js';
import { contourFault } from './contourFault.js';
import { type DataFault, list, oneOf, readShape, refuse, type Refused, whole, within, words, yesNo } from './dataFault.js';
import { seatSchema, tangSchema } from './families.js';
import type { Axis, Finger, Machine } from './machine.js';
import type { Result } from './result.js';
import { sectionFault } from './sectionFault.js';
import { buildSection, type RawSection, sectionSchema } from './sectionSchema.js';
import { withOptions } from './withOptions.js';

const mm = (least: number, most: number) => within(least, most, 'mm');
const travel = mm(-5000, 5000);

/** Places of a wear map: more than anybody measures. */
const MOST_PLACES = 200;

const axisSchema = z.discriminatedUnion(
  'drive',
  [
    z.strictObject({ drive: z.literal('powered'), min: travel, max: travel, speed: within(1, 2000, 'mm/s') }),
    z.strictObject({ drive: z.literal('by hand'), min: travel, max: travel, seconds: within(1, 3600, 's') }),
    z.strictObject({ drive: z.literal('fixed'), at: travel }),
  ],
  { error: 'must have a drive, one of: powered, by hand, fixed' },
);

const knownSchema = z.discriminatedUnion(
  'source',
  [
    z.strictObject({ source: z.literal('as new'), value: mm(0.001, 5) }),
    z.strictObject({ source: z.literal('measured'), value: mm(0.001, 5) }),
    z.strictObject({ source: z.literal('not known') }),
  ],
  { error: 'must have a source, one of: as new, measured, not known' },
);

const seatsSchema = z.discriminatedUnion(
  'source',
  [
    z.strictObject({
      source: z.literal('measured'),
      places: list(z.strictObject({ along: mm(-6000, 6000), gap: mm(-20, 20) }), 2, 'places').max(MOST_PLACES, { error: `must list at most ${MOST_PLACES} places` }),
      tilt: oneOf(['each step', 'one setting', 'none']),
    }),
    z.strictObject({ source: z.literal('not known') }),
  ],
  { error: 'must have a source, one of: measured, not known' },
);

const machineSchema = z.strictObject({
  id: words('a short id'),
  name: words('a name'),
  demo: yesNo,
  summary: words('one sentence'),
  condition: oneOf(['new', 'reconditioned']),
  rating: within(10_000, 50_000_000, 'N'),
  ratingPerLength: within(50, 10_000, 'N/mm'),
  length: mm(200, 12_000),
  betweenFrames: mm(100, 12_000),
  throat: mm(0, 2000),
  openHeight: mm(50, 2000),
  shutHeight: mm(10, 2000),
  cylinders: z.strictObject({ spacing: mm(100, 12_000), synchronisation: oneOf(['electronic', 'torsion bar']) }),
  speeds: z.strictObject({
    approach: within(1, 500, 'mm/s'),
    bend: within(0.5, 100, 'mm/s'),
    return: within(1, 500, 'mm/s'),
  }),
  changePoint: mm(0, 100),
  gauge: z.strictObject({
    x: axisSchema,
    r: axisSchema,
    z: axisSchema,
    fingers: whole(1, 6),
    finger: z.strictObject({
      width: mm(2, 500),
      profile: sectionSchema,
      faces: list(
        z.strictObject({ name: words('a name'), behind: mm(0, 500), from: mm(-200, 200), to: mm(-200, 200) }),
        1,
        'faces',
      ),
    }),
    beam: sectionSchema,
    apart: mm(0, 2000),
    ownX: z.strictObject({ most: mm(1, 2000) }).exactOptional(),
    play: knownSchema.exactOptional(),
    squareness: knownSchema.exactOptional(),
  }),
  beam: list(sectionSchema, 1, 'cross-sections'),
  clamp: list(sectionSchema, 1, 'cross-sections'),
  bed: list(sectionSchema, 1, 'cross-sections'),
  clampFamilies: list(tangSchema, 1, 'tangs'),
  seatFamilies: list(seatSchema, 1, 'seats'),
  crowning: oneOf(['powered', 'by hand', 'none']),
  stationSeconds: within(10, 3600, 's').exactOptional(),
  bedHeight: mm(300, 2000),
  repeatability: z.strictObject({ ram: knownSchema, x: knownSchema, r: knownSchema }),
  seats: seatsSchema.exactOptional(),
  beware: list(words('a sentence'), 0, 'sentences').exactOptional(),
  options: list(
    z.strictObject({
      id: words('a short id'), name: words('a name'), price: within(0, 10_000_000, 'in the currency'),
      effect: z.strictObject({
        x: axisSchema.exactOptional(), r: axisSchema.exactOptional(), z: axisSchema.exactOptional(), ownX: z.strictObject({ most: mm(1, 2000) }).exactOptional(),
        openHeight: mm(50, 2000).exactOptional(), throat: mm(0, 2000).exactOptional(), crowning: z.literal('powered').exactOptional(),
        stationSeconds: within(10, 3600, 's').exactOptional(),
      }).exactOptional(),
    }),
    0,
    'options',
  ),
  price: within(0, 100_000_000, 'in the currency'),
  currency: words('a currency'),
  site: z.strictObject({
    mass: within(100, 500_000, 'kg'),
    footprint: z.tuple([mm(300, 30_000), mm(300, 30_000)], { error: 'must be [width, depth] in mm' }),
    height: mm(500, 10_000),
    supply: words('the electrical supply in words'),
  }),
});

const floorSchema = list(machineSchema, 1, 'machines');

/** mm by which a finger's face may lie off the finger's drawn edge. */
const ON_EDGE = 0.01;

const onEdge = (profile: Contour, x: number, from: number, to: number): boolean => {
  const points = flatten(profile, ON_EDGE);
  return points.some((p, i) => {
    const q = points[(i + 1) % points.length]!;
    const upright = Math.abs(p[0] - x) <= ON_EDGE && Math.abs(q[0] - x) <= ON_EDGE;
    return upright && Math.min(p[1], q[1]) <= from + ON_EDGE && Math.max(p[1], q[1]) >= to - ON_EDGE;
  });
};

const fingerFault = (id: string, finger: Finger): Refused | undefined => {
  const [[front]] = bounds([finger.profile]);
  if (front < -ON_EDGE) {
    return refuse('sense', id, 'gauge.finger.profile', `reaches ${(-front).toFixed(2)} mm in front of its nose face (back 0)`);
  }
  if (!finger.faces.some((f) => f.behind === 0)) {
    return refuse('sense', id, 'gauge.finger.faces', 'must hold the nose, a face with behind 0');
  }
  for (const [i, f] of finger.faces.entries()) {
    const field = `gauge.finger.faces.${i}`;
    if (f.from >= f.to) return refuse('sense', id, `${field}.to`, `(${f.to} mm) must be more than from (${f.from} mm)`);
    if (!onEdge(finger.profile, f.behind, f.from, f.to)) {
      return refuse('sense', id, field, `(${f.name}) must lie on an upright edge of the finger's profile`);
    }
  }
  return undefined;
};

const axisFault = (id: string, name: string, axis: Axis): Refused | undefined =>
  axis.drive !== 'fixed' && axis.min >= axis.max
    ? refuse('sense', id, `gauge.${name}.min`, `(${axis.min} mm) must be less than max (${axis.max} mm)`)
    : undefined;

type RawMachine = z.output<typeof machineSchema>;

/** `raw`: its cross-sections as they were given, where they are known. */
const machineFault = (m: Machine, raw?: RawMachine): Refused | undefined => {
  const less = (a: number, an: string, b: number, bn: string): Refused | undefined =>
    a < b ? undefined : refuse('sense', m.id, an, `(${a}) must be less than ${bn} (${b})`);
  const sections: [string, Contour, RawSection | undefined][] = [
    ...m.beam.map((c, i): [string, Contour, RawSection | undefined] => [`beam.${i}`, c, raw?.beam[i]]),
    ...m.clamp.map((c, i): [string, Contour, RawSection | undefined] => [`clamp.${i}`, c, raw?.clamp[i]]),
    ...m.bed.map((c, i): [string, Contour, RawSection | undefined] => [`bed.${i}`, c, raw?.bed[i]]),
    ['gauge.beam', m.gauge.beam, raw?.gauge.beam],
    ['gauge.finger.profile', m.gauge.finger.profile, raw?.gauge.finger.profile],
  ];
  for (const [field, contour, given] of sections) {
    const wrong = contourFault(contour);
    if (wrong === undefined) continue;
    const why = given && sectionFault(given);
    return why ? refuse('sense', m.id, `${field}.${why.field}`, why.what) : refuse('sense', m.id, field, wrong);
  }
  for (const [field, contour] of sections.slice(0, m.beam.length + m.clamp.length)) {
    const low = bounds([contour])[0][1];
    if (low < 0) return refuse('sense', m.id, field, `reaches ${-low} mm below the punch's shoulder seat (up 0)`);
  }
  const bedTop = bounds(m.bed)[1][1];
  if (bedTop > 0) return refuse('sense', m.id, 'bed', `reaches ${bedTop} mm above the die seat (up 0)`);
  return (
    less(m.shutHeight, 'shutHeight', m.openHeight, 'openHeight') ??
    less(m.speeds.bend, 'speeds.bend', m.speeds.approach, 'speeds.approach') ??
    axisFault(m.id, 'x', m.gauge.x) ??
    axisFault(m.id, 'r', m.gauge.r) ??
    axisFault(m.id, 'z', m.gauge.z) ??
    seatsFault(m) ??
    fingerFault(m.id, m.gauge.finger)
  );
};

const seatsFault = (m: Machine): Refused | undefined => {
  if (m.seats?.source !== 'measured') return undefined;
  const { places } = m.seats;
  const i = places.findIndex((p, k) => k > 0 && p.along <= places[k - 1]!.along);
  return i < 0 ? undefined : refuse('sense', m.id, `seats.places.${i}.along`, `(${places[i]!.along} mm) must be further right than the place before it (${places[i - 1]!.along} mm)`);
};

/** Each option names itself once, and the machine that carries it makes sense. */
const optionFault = (m: Machine): Refused | undefined => {
  const twice = repeated(m.options.map((o) => o.id));
  if (twice !== undefined) return refuse('sense', m.id, 'options', `names '${twice}' twice; each option needs its own id`);
  for (const [i, { id }] of m.options.entries()) {
    const fault = machineFault(withOptions(m, [id]));
    if (fault !== undefined) return refuse('sense', m.id, `options.${i}.effect`, `leaves no sound machine: ${fault.fault.sentence.replace(/^[^:]*: /, '').replace(/\.$/, '')}`);
  }
  return undefined;
};

/** The first id that stands twice. */
export const repeated = (ids: readonly string[]): string | undefined => ids.find((id, i) => ids.indexOf(id) !== i);

/**
 * A floor of machines from data read from outside: strict (no unknown field), every figure in its range, every
 * cross-section a simple outline, every finger face on its finger. The first fault comes back as a sentence.
 */
export const parseFloor = (json: unknown): Result<readonly Machine[], DataFault> => {
  const read = readShape(floorSchema, json, 'floor', 1);
  if (!read.ok) return read;
  const machines = read.value.map(
    (m): Machine => ({
      ...m,
      gauge: {
        ...m.gauge,
        finger: { ...m.gauge.finger, profile: buildSection(m.gauge.finger.profile) },
        beam: buildSection(m.gauge.beam),
      },
      beam: m.beam.map(buildSection),
      clamp: m.clamp.map(buildSection),
      bed: m.bed.map(buildSection),
    }),
  );
  const twice = repeated(machines.map((m) => m.id));
  if (twice !== undefined) return refuse('sense', twice, 'id', 'names two machines; each needs its own');
  for (const [i, machine] of machines.entries()) {
    const fault = machineFault(machine, read.value[i]) ?? optionFault(machine);
    if (fault !== undefined) return fault;
  }
  return { ok: true, value: machines };
};

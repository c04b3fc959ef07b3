import { type Machine, type PricesBeyond, type Punch, type Rack, bendsInV, inventedDie, inventedGooseneck, onAdapter, withOptions } from '../shop/index.js';
import { type Part, asFormed, plateNames, relieve } from '../sheet/index.js';
import { DAYLIGHT, type Reason, type RemedyItem, type Trial, type TrialInput } from '../trial/index.js';
import { moneyAsEntered } from './money.js';
import { splitPart } from './splitPart.js';

/** One change that may lift the reasons, and the question with it made. */
export interface Candidate {
  readonly item: RemedyItem;
  /** As the end of 'With ...'. */
  readonly words: string;
  /** Candidates of one kind of change, the smallest first: once one is confirmed, the larger are not tried. */
  readonly family: string;
  /** The questions that are left with it: one, or one for each of the parts that come of a split, and all must be made; none where it cannot be applied. */
  readonly apply: (input: TrialInput) => readonly TrialInput[];
  /** A smaller change of the same kind that the plan made with this one shows to be enough; to be planned again as any. */
  readonly smaller?: (made: Trial) => Candidate | null;
}

const priceOf = ({ pricesBeyond, currency }: Rack, kind: keyof PricesBeyond): Pick<RemedyItem, 'price' | 'currency'> => ({ price: pricesBeyond?.[kind] ?? null, currency });
const priceWords = (rack: Rack, kind: keyof PricesBeyond): string => moneyAsEntered(priceOf(rack, kind).price, rack.currency, rack.demo);

const withPunch = (input: TrialInput, punch: Punch): readonly TrialInput[] => [{ ...input, rack: { ...input.rack, punches: [...input.rack.punches, punch] } }];

/** None where the change cannot be made to the part as it is by then. */
const withPart = (input: TrialInput, part: Part | null): readonly TrialInput[] => (part === null ? [] : [{ ...input, part }]);

/** mm that an adapter is high. Common practice, no source. */
const ADAPTER = 60;

/** mm by which the relief grows from one try to the next, and the most that is tried: slimmer necks bear too little. */
const RELIEFS = [0, 10, 20];
/** mm less than the reason tells that is tried first: its depth is to the nearest way out of the whole punch, the neck may have to give less. */
const LESS = 10;
const MOST_RELIEF = 60;
/** mm over the tallest of the rack that an invented gooseneck is tall where the upper beam is met too. */
const TALLER = 40;

const meets = (reasons: readonly Reason[], ...codes: readonly Reason['code'][]): readonly Reason[] => reasons.filter((r) => codes.includes(r.code));

const optionCandidates = (machine: Machine, reasons: readonly Reason[]): Candidate[] =>
  machine.options.flatMap((option): Candidate[] => {
    const { effect } = option;
    if (!effect) return [];
    const axis = effect.x ?? effect.r ?? effect.z;
    const room = effect.openHeight ?? effect.throat;
    const may = (axis && meets(reasons, 'no stop', 'tolerance').length > 0)
      || (room !== undefined && meets(reasons, 'daylight', 'clearance', 'way in', 'way out', 'between frames', 'no stop').length > 0);
    return may ? [{
      item: { kind: 'option', id: `${machine.id}/${option.id}`, name: option.name, price: option.price, currency: machine.currency },
      words: `${option.name} on this machine (${moneyAsEntered(option.price, machine.currency, machine.demo)})`, family: `option ${option.id}`,
      apply: (input) => [{ ...input, machine: withOptions(input.machine, [option.id]) }],
    }] : [];
  });

const gooseneckCandidates = (machine: Machine, rack: Rack, reasons: readonly Reason[]): Candidate[] => {
  const met = meets(reasons, 'clearance', 'way in', 'way out').filter((r) => r.bodies?.some((b) => b.startsWith('the punch')));
  if (met.length === 0) return [];
  const held = rack.punches.filter((p) => machine.clampFamilies.includes(p.tang) && bendsInV(p));
  const tallest = held.reduce<Punch | null>((best, p) => (best === null || p.height > best.height ? p : best), null);
  // how far the nose of each gooseneck stands in front of the neck is what passes a flange: the neck's front face at its furthest back
  const deepest = Math.max(14, ...held.filter((p) => p.shape === 'gooseneck').map(reliefOf));
  // what is missing is told of one punch and counts from where that one's neck stands; what the rack has already was tried
  const asked = Math.min(...met.map((r) => {
    const punch = held.find((p) => r.bodies?.includes(`the punch ${p.name}`));
    return (punch ? reliefOf(punch) : deepest) + Math.max(0, r.by ?? 0);
  }));
  const least = Math.ceil(Math.min(MOST_RELIEF, Math.max(asked - LESS, deepest)) / 5) * 5;
  const tang = machine.clampFamilies[0]!;
  const gooseneck = rack.pricesBeyond?.gooseneck;
  const tips = [...new Set(held.map((p) => p.tipRadius))].sort((a, b) => a - b);
  const tipRadius = tips.includes(1) ? 1 : tips[0] ?? 1;
  const taller = meets(reasons, 'clearance', 'way in', 'way out').some((r) => r.bodies?.some((b) => b.startsWith('the upper beam'))) ? [0, TALLER] : [0];
  return RELIEFS.flatMap((more) => taller.flatMap((over): Candidate[] => {
    const height = Math.max(220, tallest?.height ?? 0) + over;
    const punch = least + more > MOST_RELIEF ? null : inventedGooseneck({ relief: least + more, height, tipRadius, tang, ...(gooseneck !== undefined && { price: gooseneck }) });
    return punch === null ? [] : [{
      item: { kind: 'punch', id: punch.id, name: punch.name, ...priceOf(rack, 'gooseneck'), tool: punch },
      words: `a gooseneck beyond the rack, ${height} mm high with the neck ${least + more} mm behind the bending plane, rated ${punch.rating} N/mm (${priceWords(rack, 'gooseneck')})`,
      family: 'gooseneck', apply: (input) => withPunch(input, punch),
    }];
  }));
};

/** mm: how far behind the bending plane the front face of a punch's neck stands, over its nose. */
const reliefOf = (punch: Punch): number => {
  const fronts = punch.profile.filter((v, i) => i > punch.profile.length / 2 && v.y > 20 && v.y < punch.height * 0.8).map((v) => v.x);
  return fronts.length === 0 ? 0 : Math.max(0, ...fronts);
};

const adapterCandidates = (machine: Machine, rack: Rack): Candidate[] =>
  rack.punches.filter((p) => !machine.clampFamilies.includes(p.tang) && bendsInV(p)).flatMap((p): Candidate[] => {
    const tang = machine.clampFamilies[0]!;
    const punch = onAdapter(p, tang, ADAPTER);
    return punch === null ? [] : [{
      item: { kind: 'adapter', id: punch.id, name: punch.name, ...priceOf(rack, 'adapter'), tool: punch },
      words: `${p.name} of the rack on an adapter ${ADAPTER} mm high, ${p.tang} to ${tang} (${priceWords(rack, 'adapter')})`,
      family: `adapter ${p.id}`, apply: (input) => withPunch(input, punch),
    }];
  });

/** V openings of the trade, mm, by which a die beyond the rack is chosen. Common practice, no source. */
const OPENINGS = [4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20, 22, 24, 28, 32, 36, 40, 50, 63, 80, 100];

const dieCandidates = (part: Part, machine: Machine, rack: Rack, reasons: readonly Reason[]): Candidate[] => {
  const has = new Set(rack.dies.filter((d) => d.shape === 'V' && machine.seatFamilies.includes(d.tang)).map((d) => d.v));
  const smaller = meets(reasons, 'short flange').length > 0;
  const wider = meets(reasons, 'force', 'tool rating', 'minimum radius').length > 0;
  const any = meets(reasons, 'no tool').length > 0;
  if (!smaller && !wider && !any) return [];
  const t = part.thickness;
  const sharpest = Math.max(0, ...part.bends.map((b) => b.bendAngle));
  const includedAngle = sharpest > 95 ? 30 : 85;
  const price = rack.pricesBeyond?.die;
  const suits = OPENINGS.filter((v) => v >= 4 * t && v <= 16 * t && !has.has(v) && (any || (smaller && v < 8 * t) || (wider && v > 8 * t)));
  return suits.sort((a, b) => Math.abs(Math.log(a / (8 * t))) - Math.abs(Math.log(b / (8 * t)))).flatMap((v): Candidate[] => {
    const die = inventedDie({ v, includedAngle, height: Math.max(90, Math.ceil(v + 20)), seat: machine.seatFamilies[0]!, ...(price !== undefined && { price }) });
    return die === null ? [] : [{
      item: { kind: 'die', id: die.id, name: die.name, ...priceOf(rack, 'die'), tool: die },
      words: `a V of ${v} mm, ${includedAngle} degrees included, beyond the rack (${priceWords(rack, 'die')})`,
      family: `die ${v < 8 * t ? 'smaller' : 'wider'}`, apply: (input) => [{ ...input, rack: { ...input.rack, dies: [...input.rack.dies, die] } }],
    }];
  });
};

/** Shares of a V of 8 t that air bending forms by itself, as the inside radius to ask for. Common practice, no source. */
const NATURAL = 0.16 * 8;

const radiusCandidates = (part: Part, reasons: readonly Reason[]): Candidate[] => {
  if (meets(reasons, 'radius', 'no tool').length === 0) return [];
  const radius = Math.round(NATURAL * part.thickness * 10) / 10;
  // of the part as other changes have left it
  const formed = (of: Part): Part | null => {
    const made = asFormed(of, of.bends.map(() => ({ insideRadius: radius })));
    return made.ok ? made.value : null;
  };
  return formed(part) ? [{
    item: { kind: 'radius', id: `radius-${radius}`, name: `Inside radius ${radius} mm on every bend`, price: 0 },
    words: `an inside radius of ${radius} mm on every bend, if the drawing allows it (no price)`, family: 'radius',
    apply: (input) => withPart(input, formed(input.part)),
  }] : [];
};

/** Bends tried in two passes, each a plan of its own: of those in the way both made and unmade, and where there is none, of those in the way made. */
const MOST_IN_TWO = { both: 3, made: 1 };

/** What stands in the way both when it is bent and when it is not may not when it is half bent. */
const twoPassCandidates = ({ bends }: Part, reasons: readonly Reason[]): Candidate[] => {
  const met = meets(reasons, 'clearance', 'plate on plate', 'way in', 'way out', 'daylight');
  const named = (of: 'made' | 'unmade'): ReadonlySet<string> => new Set(met.flatMap((r) => r[of] ?? []));
  const [made, unmade] = [named('made'), named('unmade')];
  const rank = (id: string): number => (made.has(id) ? 1 : 0) + (unmade.has(id) ? 1 : 0);
  const able = bends.filter((b) => b.kind === 'bend' && b.bendAngle >= SHARP_ENOUGH && rank(b.id) > 0);
  const both = able.filter((b) => rank(b.id) === 2).slice(0, MOST_IN_TWO.both);
  return (both.length > 0 ? both : able.filter((b) => made.has(b.id)).slice(0, MOST_IN_TWO.made))
    .map(({ id, bendAngle }): Candidate => ({
      item: { kind: 'two passes', id: `two-passes-${id}`, name: `Bend ${id} in two passes`, price: 0 },
      words: `bend ${id} in two passes, first to ${(bendAngle / 2).toFixed(0)} degrees of bend angle (no price)`, family: `two passes ${id}`,
      apply: (input) => [{ ...input, inTwo: [...(input.inTwo ?? []), { bend: id, first: Math.round(bendAngle / 2) }] }],
    }));
};

/** Degrees of bend angle under which half a bend is no obstacle less. Common practice, no source. */
const SHARP_ENOUGH = 40;
/**
 * mm by which a machine that opens further than any of its options is asked for, beside what the reason says: what meets the beam leans by up to
 * 45 degrees, so a clearance of 1 mm asks some 1.5 mm of opening.
 */
const MORE_DAYLIGHT = 240;
const LEANING = 1.5;

const daylightCandidates = (machine: Machine, reasons: readonly Reason[]): Candidate[] => {
  // what meets the punch on its way in or out, the ram at its highest, passes under a ram that rises higher
  const short = [
    ...meets(reasons, 'daylight'), ...meets(reasons, 'clearance', 'way in', 'way out').filter((r) => r.bodies?.some((b) => b.startsWith('the upper beam'))),
    ...meets(reasons, 'way in', 'way out').filter((r) => r.bodies?.some((b) => b.startsWith('the punch'))),
  ];
  const tallest = Math.max(machine.openHeight, ...machine.options.map((o) => o.effect?.openHeight ?? 0));
  const least = Math.ceil((Math.max(0, ...short.map((r) => r.by ?? 0)) * LEANING) / 10) * 10 + 20;
  return short.length === 0 ? [] : [...new Set([Math.min(least, MORE_DAYLIGHT), MORE_DAYLIGHT])].map((more) => opensTo(machine, tallest, tallest + more));
};

/** The machine opening to `openHeight`; once planned, to no more than its steps ask, in steps of 10 mm, above the `tallest` that can be had. */
const opensTo = (machine: Machine, tallest: number, openHeight: number): Candidate => ({
  item: { kind: 'daylight', id: `daylight-${openHeight}`, name: `A taller frame and longer stroke: opens to ${openHeight} mm`, price: null },
  words: `a machine like this one that opens to ${openHeight} mm (no option of this machine; this one opens to ${machine.openHeight} mm)`, family: 'daylight',
  apply: (input) => [{ ...input, machine: { ...input.machine, openHeight } }],
  smaller: ({ steps }) => {
    const asked = steps.flatMap(({ margins }) => margins.filter((m) => m.name === DAYLIGHT).map((m) => openHeight - m.limit + m.value));
    const enough = Math.ceil(Math.max(...asked) / 10) * 10;
    return enough > tallest && enough < openHeight ? opensTo(machine, tallest, enough) : null;
  },
});

const COARSER = { f: ['m', 'c', 'v'], m: ['c', 'v'], c: ['v'], v: [] } as const;

const toleranceCandidates = ({ toleranceClass }: TrialInput, reasons: readonly Reason[]): Candidate[] =>
  toleranceClass === undefined || meets(reasons, 'tolerance').length === 0 ? [] : COARSER[toleranceClass].map((cls): Candidate => ({
    item: { kind: 'tolerance', id: `class-${cls}`, name: `ISO 2768-1 class ${cls}`, price: 0 },
    words: `class ${cls} of ISO 2768-1 in place of class ${toleranceClass}, if the drawing allows it (no price)`, family: 'tolerance',
    apply: (input) => [{ ...input, toleranceClass: cls }],
  }));

/** mm more than the overlap that a relief takes away: corners that just touch are none. Common practice, no source. */
const RELIEF_ROOM = 0.5;
/** mm: where more would have to go it is another part. Common practice, no source. */
const MOST_RELIEVED = 10;

const reliefCandidates = (part: Part, reasons: readonly Reason[]): Candidate[] =>
  meets(reasons, 'plate on plate', 'clearance').flatMap((r) => {
    const by = Math.ceil(((r.by ?? 0) + RELIEF_ROOM) * 2) / 2;
    if (by > MOST_RELIEVED) return [];
    return (r.bodies ?? []).flatMap((body): Candidate[] => {
      const plate = plateNames(part).indexOf(body);
      const cut = plate < 0 || by <= 0 ? null : relieve(part, plate, by);
      return cut === null ? [] : [{
        item: { kind: 'relief', id: `relief-${plate}-${by}`, name: `A relief of ${by} mm at both ends of ${body}`, price: 0 },
        words: `a relief of ${by} mm at both ends of ${body}, if the drawing allows it (no price)`, family: `relief ${plate}`,
        apply: (input) => withPart(input, relieve(input.part, plate, by)),
      }];
    });
  });

/** Seams that are tried: each costs two plans. */
const MOST_SPLITS = 3;

/** Made in two and joined: at the bends that the reasons name, the plainest reason's first; nobody joins a hem. */
const splitCandidates = (part: Part, reasons: readonly Reason[]): Candidate[] => {
  const named = meets(reasons, 'clearance', 'plate on plate', 'way in', 'way out', 'no order').flatMap((r) => [...r.bends, ...(r.made ?? []), ...(r.unmade ?? [])]);
  const seams = [...new Set(named)].map((id) => part.bends.findIndex((b) => b.id === id && b.kind === 'bend')).filter((bend) => bend >= 0);
  return part.bends.length < 2 ? [] : seams.slice(0, MOST_SPLITS).map((bend): Candidate => {
    const { id } = part.bends[bend]!;
    return {
      item: { kind: 'split', id: `split-${id}`, name: `Made in two, joined at ${id}`, price: null },
      words: `the part made in two and joined at ${id}, if the drawing allows it (joining is not planned and has no price)`, family: 'split',
      apply: ({ inTwo, ...input }) => splitPart(input.part, bend).map((p) => {
        const twice = inTwo?.filter((t) => p.bends.some((b) => b.id === t.bend)) ?? [];
        return { ...input, part: p, ...(twice.length > 0 && { inTwo: twice }) };
      }),
    };
  });
};

/** Single changes worth trying against these reasons, cheapest first; those without a price come last. */
export const remedyCandidates = (input: TrialInput, reasons: readonly Reason[]): readonly Candidate[] => {
  const { machine, rack, part } = input;
  const all = [
    ...toleranceCandidates(input, reasons), ...radiusCandidates(part, reasons), ...twoPassCandidates(part, reasons), ...reliefCandidates(part, reasons),
    ...optionCandidates(machine, reasons), ...adapterCandidates(machine, rack),
    ...dieCandidates(part, machine, rack, reasons), ...gooseneckCandidates(machine, rack, reasons),
    ...daylightCandidates(machine, reasons), ...splitCandidates(part, reasons),
  ];
  return all.sort((a, b) => (a.item.price ?? Infinity) - (b.item.price ?? Infinity));
};

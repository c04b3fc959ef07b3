import { beforeAll, describe, expect, it } from 'vitest';
import { benchParts } from '../bench/parts.js';
import { type OneLayout, oneLayout } from '../src/fit/index.js';
import { metalById } from '../src/metal/index.js';
import { proveTrial } from '../src/proof/index.js';
import { profilePart } from '../src/sheet/index.js';
import { type Rack, demoFloor, demoRack } from '../src/shop/index.js';
import type { Trial } from '../src/trial/index.js';
import { raised } from './proof/damage.js';

// P17 in its short form: P5, P7 and P8 on 2,000 mm of one bed, from a rack of two punches and three dies. With the whole demo
// rack: npm run bench -- oneLayout.

const whole = demoRack();
const rack: Rack = { ...whole, dies: whole.dies.filter((d) => ['die-v8-85', 'die-v12-30'].includes(d.id)), punches: whole.punches.filter((p) => ['straight-r1', 'gooseneck'].includes(p.id)) };
const machine = demoFloor().find((m) => m.id === 'general')!;
const inputs = ['P5', 'P7', 'P8'].map((id) => ({ part: benchParts().find((b) => b.id === id)!.part, machine, rack, metal: metalById('dc01')!, quantity: 10 }));
/** ms: this machine may be busy. */
const PATIENT = 300_000;

/** The layout with one station moved along the bed and what is bent there left where it is. mm */
const shifted = (trial: Trial, id: string, by: number): Trial => ({
  ...trial,
  stations: trial.stations.map((s) => (s.id === id ? { ...s, punchSegments: s.punchSegments.map((p) => ({ ...p, from: p.from + by })), dieSegments: s.dieSegments.map((p) => ({ ...p, from: p.from + by })) } : s)),
});

describe('P17: P5, P7 and P8 on one layout', () => {
  let layout: OneLayout;
  beforeAll(async () => {
    const made = await oneLayout({ inputs, bed: 2000 });
    if (!made.ok) throw new Error(made.sentence);
    layout = made.value;
  }, PATIENT);

  it('takes 415 mm of bed, proven: the two lengths and the room between them', () => {
    // P5's bend lines of 200 may stand bare for 5 at either end: 190, and P7's last flanges leave 191.5 between the walls, so both
    // take 190. P8's walls leave the same between them and its longest lines ask 183: of segments 5 apart 185. Gooseneck and
    // straight punch are two stations: P5 closes on no gooseneck, P8's tray meets the beam over a straight punch. Hands: 40
    expect([layout.length, layout.bound, layout.proven, layout.bed]).toEqual([190 + 40 + 185, 415, true, 2000]);
    expect(layout.serves.map(({ parts }) => parts.map(({ part }) => part).sort()).sort()).toEqual([[0, 1], [2]]);
    expect(layout.serves.flatMap(({ parts }) => parts.flatMap(({ steps }) => steps)).length).toBe(4 + 4 + 8);
    // punches of 125 and 180 under one ram: 55 less what the empty dies take, by risers that the rack has
    const [a, b] = layout.trials[0]!.stations;
    expect(Math.abs(a!.stackHeight - b!.stackHeight)).toBeLessThan(5);
  });

  it('every part passes the independent check with all stations standing', () => {
    for (const trial of layout.trials) {
      expect(trial.stations).toEqual(layout.trials[0]!.stations);
      expect([trial.verdict, trial.proof.checked, trial.proof.findings]).toEqual(['makes', true, []]);
    }
  });

  it('a station moved 100 mm into another part\'s place is rejected', async () => {
    const [first, , third] = layout.trials as readonly [Trial, Trial, Trial];
    const own = first.steps[0]!.station;
    const other = first.stations.find(({ id }) => id !== own)!;
    const by = other.punchSegments[0]!.from < first.stations.find(({ id }) => id === own)!.punchSegments[0]!.from ? 100 : -100;
    const { findings } = await proveTrial(shifted(first, other.id, by), { steps: [1] });
    // 100 less the room of 40 between them
    const overlaps = findings.flatMap((f) => /^Stations S1 and S2: their die segments overlap by ([\d.]+) mm/.exec(f)?.[1] ?? []).map(Number);
    expect(overlaps.reduce((sum, mm) => sum + mm, 0)).toBe(60);
    expect(findings.join('\n')).toMatch(new RegExp(`Step 1, .* runs into the punch of station ${other.id}`));
    // away from its neighbour, it no longer stands under its own part
    const away = await proveTrial(shifted(third, other.id, -by), { steps: [3] });
    expect(away.passed).toBe(false);
  }, PATIENT);

  it('a station of another height is rejected at the part that is bent on its neighbour', async () => {
    const [first] = layout.trials as readonly [Trial];
    const other = first.stations.find(({ id }) => id !== first.steps[0]!.station)!;
    const { findings } = await proveTrial(raised(first, other.id, 20, 20), { steps: [1] });
    expect(findings.join('\n')).toContain(`Step 1: with the ram at its lowest the empty punch of station ${other.id}`);
  }, PATIENT);

  it('a part that the shared stations leave without a promise is refused in one sentence', async () => {
    // the channel asks the gooseneck, the angle would go under the straight punch by itself: 84 N/mm, 117 in the thickest and strongest sheet
    const [channel, angle] = [[70, 60, 70], [40, 40]].map((flanges, i) => {
      const made = profilePart({ name: i === 0 ? 'channel' : 'angle', thickness: i === 0 ? 1 : 1.5, insideRadius: 1, width: 200, flanges, turns: flanges.slice(1).map(() => 90) });
      if (!made.ok) throw new Error(made.failure.sentence);
      return made.value;
    });
    const weak: Rack = { ...whole, dies: whole.dies.filter((d) => d.id === 'die-v12-85'), punches: rack.punches.map((p) => (p.id === 'gooseneck' ? { ...p, rating: 100 } : p)) };
    const made = await oneLayout({ inputs: [channel!, angle!].map((part) => ({ ...inputs[0]!, part, rack: weak })) });
    expect(made).toMatchObject({ ok: false, sentence: expect.stringMatching(/^angle is no promise on the shared layout: .* asks 117 N\/mm where 100 is the least rating/) });
    // nor does its own plan go onto a layout where it is none
    const none = await oneLayout({ inputs: [{ ...inputs[0]!, part: angle!, rack: { ...weak, punches: weak.punches.filter((p) => p.id === 'gooseneck') } }] });
    expect(none).toMatchObject({ ok: false, sentence: expect.stringMatching(/makes none of the parts .* asks 117 N\/mm where 100 is the least rating/) });
  }, PATIENT);

  it('a bed too short is refused in one sentence with both lengths', async () => {
    const made = await oneLayout({ inputs: [{ ...inputs[0]!, rack: { ...rack, dies: rack.dies.slice(-1) } }], bed: 180 });
    expect(made).toMatchObject({ ok: false, sentence: 'The stations of P5 lip channel need 190 mm of bed on one layout and the bed takes 180 mm.' });
  }, PATIENT);
});

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { StepForming, Trial } from '../trial/index.js';
import { channelTrial } from './fixture.js';
import { setupSheetPdf } from './setupSheetPdf.js';
import { has, run } from './pdfTools.js';

const folder = mkdtempSync(join(tmpdir(), 'papers-'));
afterAll(() => rmSync(folder, { recursive: true }));

const write = async (name: string, trial: Trial, options: Parameters<typeof setupSheetPdf>[1] = {}): Promise<string> => {
  const file = join(folder, `${name}.pdf`);
  writeFileSync(file, await setupSheetPdf(trial, options));
  return file;
};

const words = (file: string): string => run('pdftotext', '-layout', file, '-').replace(/\s+/g, ' ');

const refused: Trial = {
  ...channelTrial(),
  verdict: 'does not make',
  stations: [],
  steps: [],
  reasons: [
    { code: 'clearance', sentence: 'Flange 1 meets the punch body by 14.0 mm if b1 is made and b2 is not.', bends: ['b2'], made: ['b1'], unmade: ['b2'], bodies: ['punch'], by: 14 },
    { code: 'no stop', sentence: 'No finger reaches flange 3.', bends: ['b2'] },
  ],
  remedies: [{ sentence: 'A punch relieved by 20 mm more makes it.', confirmed: true, price: 4100, currency: 'EUR', items: [{ kind: 'punch', id: 'p', name: 'A punch', price: 3600, currency: 'EUR' }, { kind: 'option', id: 'o', name: 'An option', price: 500, currency: 'EUR' }] }],
};

describe('the set-up sheet', () => {
  it('is a PDF', async () => {
    const bytes = await setupSheetPdf(channelTrial());
    expect(Buffer.from(bytes.slice(0, 5)).toString()).toBe('%PDF-');
    expect(Buffer.from(bytes.slice(-8)).toString()).toContain('%%EOF');
  });

  describe.skipIf(!has('pdftotext'))('read back', () => {
    it('says all that a set-up needs, every angle by its name', async () => {
      const file = await write('channel', channelTrial(), { date: '2026-03-02', who: 'demonstrator', revision: 'C' });
      // as it stands on the page, and in the order of writing: words of two columns stand side by side in the first
      const read = `${words(file)} ${run('pdftotext', file, '-').replace(/\s+/g, ' ')}`;
      const needed = [
        'U channel', 'DC01 cold-rolled steel', 'General, 110 t, 3,000 mm (demo)', '2026-03-02', 'demonstrator', '✓ makes',
        'Measure first', 'Thickness', '1.50 mm', 'Blank length', '200.00 mm',
        // 37 + 74 + 37 + 2 allowances of (pi/2)(1.5 + 0.6)
        '154.60 mm',
        'Test strip first', 'Tools, left to right', 'V 12 die, 85 degrees included (demo)', '100 at −100 · 100 at 0 mm',
        'Smallest clearance 4.70 mm (step 2, flange 1 and the punch body)', 'no point moved further than 0.90 mm',
        'Condition of the ram guides is not known.', '41 s for one part, set-up shared over 50',
        'Step 1 of 2', 'Step 2 of 2', 'Lay the blank with side A up, flange 1 to the gauge.',
        'X axis, set to', '38.65 mm', 'R, from die seat', '90.30 mm', 'Depth from touch', '4.62 mm', 'Ram, tip from die seat', '86.88 mm',
        'Bend angle', 'Included angle', '91.4° / 88.6°', 'Speed change over die top', 'Retract before the stroke', '20 mm',
        'Measure after the stroke: flange 3, outside', '40.00 mm ±0.30 mm', 'Date', 'Initials', 'Caution: Hands clear of the pinch',
        'Prediction from the data stated; not a warranty; verify on a test strip and a first piece.',
      ];
      expect(needed.filter((s) => !read.includes(s))).toEqual([]);
      expect(read).not.toMatch(/\bsafe\b|guarantee|NaN|undefined|Infinity/i);
    });

    it('prints rules, limits, scatter and the two test strips where a step carries them', async () => {
      const plain = channelTrial();
      const forming: StepForming = {
        byRule: [{ what: 'peak force per length', value: 99.4, strip: 107, unit: 'N/mm', source: '1.33 Rm t2/V', mark: 'textbook' }],
        limits: [
          { name: 'hole or cut-out to the bend line', value: 3, limit: 5.25, margin: -2.25, unit: 'mm', holds: false, mark: 'common practice', source: '2.5 t + inside radius' },
          { name: 'force against the machine', value: 21_400, limit: 1_100_000, margin: 1_078_600, unit: 'N', holds: true, mark: 'machine data', source: "the machine's rating" },
        ],
        range: { bendAngleReleased: { min: 88.4, max: 91.2 }, peakForcePerLength: { min: 88, max: 131 }, flangeChange: { min: -0.08, max: 0.11 } },
        rangeWords: 'Thickness by EN 10131.',
        deduction: { source: 'measured', spread: 0.03, words: 'measured on 4 pieces, plus and minus 0.03 mm' },
        whyV: ['V 12 is 8 times the thickness.'],
        testStrip: { along: 100, across: 100, bends: [{ bendAngle: 90, depth: 4.62 }, { bendAngle: 60, depth: 2.95 }], measure: [] },
        crowning: { uncrowned: 0.01, setting: 0.02, residual: 0.001, angleSpread: 0.1 },
      };
      const read = words(await write('forming', { ...plain, steps: plain.steps.map((step) => ({ ...step, forming })) }));
      const needed = [
        'Steps 1, 2: calculated, and by rule', '107.0 N/mm', '99.4 N/mm', '1.33 Rm t2/V (textbook)', 'Limits of steps 1, 2, tightest first',
        'past good practice by 2.25 mm; 2.5 t + inside radius (common practice)', '1100.0 kN', 'margin 1078.6 kN', 'Bend angle 88.4° to 91.2°', '88 to 131 N/mm', 'measured on 4 pieces', 'V 12 is 8 times',
        'Cut two strips 100 mm along the bend by 100 mm across it', 'to depth 2.95 mm from touch (bend angle 60.0°)',
      ];
      expect(needed.filter((s) => !read.includes(s))).toEqual([]);
    });

    it('tells limits that several steps share once, and each step its own', async () => {
      const plain = channelTrial();
      const limit = (name: string, value: number) => ({ name, value, limit: 500, margin: 500 - value, unit: 'N/mm', holds: true, mark: 'machine data', source: 'a rating' } as const);
      const forming = (own: number): StepForming => ({
        byRule: [], limits: [limit('force on the die', 97.2), limit('force on the punch', own)], range: null, rangeWords: 'Not known.',
        deduction: { source: 'strip', spread: null, words: 'calculated' }, whyV: ['V 12.'], testStrip: { along: 100, across: 100, bends: [], measure: [] }, crowning: { uncrowned: 0, setting: 0, residual: 0, angleSpread: 0 },
      });
      const read = words(await write('limits', { ...plain, steps: plain.steps.map((step, k) => ({ ...step, forming: forming(100 + k) })) }));
      expect(['Limits of steps 1, 2, tightest first', 'Limits of step 1, tightest first', 'Limits of step 2, tightest first', '97.2 N/mm', '100.0 N/mm', '101.0 N/mm'].map((s) => read.split(s).length - 1)).toEqual([1, 1, 1, 1, 1, 1]);
    });

    it('names both X where each finger has an axis of its own, to the hundredth and uncut', async () => {
      const plain = channelTrial();
      const read = words(await write('tapered', { ...plain, steps: plain.steps.map((step) => ({ ...step, stop: { ...step.stop, x: 1105.62, axisX: 1105.62, skew: -26.04, z: [-1130, 1130] } })) }));
      expect(read).toMatch(/X axis, left finger 1105\.62 mm .*X axis, right finger 1079\.58 mm/);
      expect(read).not.toContain('…');
    });

    it('says what to measure and what to expect in full, however long', async () => {
      const plain = channelTrial();
      const what = 'the flange beyond b14 and the long one beyond b2 together, outside, square to the base, to the outer corner of the flange beyond b14';
      const read = words(await write('measure', { ...plain, steps: plain.steps.map((step) => ({ ...step, measure: { ...step.measure, what, firstPiece: 0.24, batch: 0.21 } })) }));
      expect(read.split(what).length - 1 + (read.split('Expected: first piece ±0.24 mm, batch ±0.21 mm.').length - 1)).toBe(4);
      expect(read).not.toContain('…');
    });

    it('keeps notes that find no room on the first sheet for the sheets after the steps', async () => {
      const plain = channelTrial();
      const long = Array.from({ length: 12 }, (_, k) => `Assumption number ${k + 1} of several, long enough that a column of the first sheet is filled by some of them at most.`);
      const file = await write('notes', { ...plain, assumptions: long });
      const sheets = run('pdftotext', '-layout', file, '-').split('\f').slice(0, -1);
      expect(sheets.map((sheet) => [/Step \d of 2/.test(sheet), sheet.includes('Assumption number 12')])).toEqual([[false, false], [true, false], [true, false], [false, true]]);
      expect(sheets[0]).toContain('Caution');
    });

    it('bears the line at the foot on every page', async () => {
      const file = await write('feet', channelTrial());
      const pages = run('pdftotext', file, '-').split('\f').slice(0, -1);
      // first sheet and two steps at least
      expect(pages.length).toBeGreaterThanOrEqual(3);
      expect(pages.filter((page) => page.includes('Prediction from the data stated; not a warranty')).length).toBe(pages.length);
      expect(pages[pages.length - 1]).toContain(`sheet ${pages.length} of ${pages.length}`);
    });

    it('keeps every word on the page', async () => {
      for (const [name, trial] of [['box', channelTrial()], ['box-refused', refused]] as const) {
        const xml = run('pdftotext', '-bbox', await write(name, trial), '-');
        let count = 0;
        for (const m of xml.matchAll(/<page width="([\d.]+)" height="([\d.]+)">|xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)"/g)) {
          if (m[1]) {
            // A4 lying in points
            expect([Number(m[1]), Number(m[2])].map(Math.round)).toEqual([842, 595]);
            continue;
          }
          count++;
          const [x0, y0, x1, y1] = [m[3], m[4], m[5], m[6]].map(Number);
          expect([x0! >= 0, y0! >= 0, x1! <= 842, y1! <= 595.3], m[0]).toEqual([true, true, true, true]);
        }
        expect(count).toBeGreaterThan(100);
      }
    });

    it('shows inches when asked', async () => {
      const read = words(await write('inch', channelTrial(), { units: 'in' }));
      // 1.5/25.4 = 0.0591, 4.62/25.4 = 0.1819, 154.59734/25.4 = 6.08651
      expect(['0.059 in', '0.1819 in', '6.087 in'].filter((s) => !read.includes(s))).toEqual([]);
    });

    it('gives reasons and remedies in place of steps when the part is not made', async () => {
      const read = words(await write('refused', refused));
      const needed = ['✕ does not make', 'Flange 1 meets the punch body by 14.0 mm', 'No finger reaches flange 3.', 'Drawn with b1 made', 'relieved by 20 mm more', 'In all 4,100 EUR'];
      expect(needed.filter((s) => !read.includes(s))).toEqual([]);
      expect(read).not.toContain('Step 1');
    });

    it('goes on over another sheet when there are many notes', async () => {
      const many = { ...channelTrial(), warnings: Array.from({ length: 60 }, (_, k) => `Warning number ${k + 1}, long enough to take a line of a column by itself.`) };
      const read = words(await write('many', many));
      expect(Array.from({ length: 60 }, (_, k) => `Warning number ${k + 1},`).filter((s) => !read.includes(s))).toEqual([]);
    });
  });

  describe.skipIf(!has('pdffonts'))('fonts', () => {
    it('are embedded', async () => {
      const rows = run('pdffonts', await write('fonts', channelTrial())).trim().split('\n').slice(2);
      expect(rows.length).toBe(2);
      for (const row of rows) expect(row).toMatch(/DejaVuSansCondensed.*\byes\b/);
    });
  });
});

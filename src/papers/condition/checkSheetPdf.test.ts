import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { conditionFigures, demoFloor, demoShopData } from '../../shop/index.js';
import { checkSheetPdf } from './checkSheetPdf.js';
import { has, run } from '../pdfTools.js';

const folder = mkdtempSync(join(tmpdir(), 'check-sheet-'));
afterAll(() => rmSync(folder, { recursive: true }));
const words = (bytes: Uint8Array): string => {
  const file = join(folder, 'sheet.pdf');
  writeFileSync(file, bytes);
  return run('pdftotext', '-layout', file, '-').replace(/\s+/g, ' ');
};

const worn = demoFloor().find(({ id }) => id === 'worn')!;
const [record] = demoShopData().conditions;

describe.skipIf(!has('pdftotext'))('the check sheet, read back', () => {
  it('filled: as found and after the overhaul, what is not known, and what follows', async () => {
    const read = words(await checkSheetPdf(worn, { record: record!, figures: conditionFigures(worn, record!, 1000) }, { date: '2026-03-17', who: 'demo', revision: '1' }));
    for (const said of [
      'Condition of Reconditioned, 80 t, 2,500 mm (demo)', 'As found, 2026-02-03, demo', 'After overhaul, 2026-03-17, demo',
      // the ram's drift as entered, force as found 690 and after 800 kN, R never measured
      '1.40 mm in 60 s', '0.20 mm in 60 s', 'dye penetrant', 'sheet 2 of 2', '690', '800', 'repeatability of R: no tolerance where a sloping face is the stop.', 'Tested by name not known competent person (demo)',
      'The ram comes back within plus or minus 0.090 mm', 'It is no acceptance test', 'sheet 1 of 2',
    ]) expect(read).toContain(said);
    expect(read).not.toMatch(/\bsafe\b|guarantee/i);
  });

  it('tells no setting that does not work', async () => {
    const sheet = async (tiltWorks: boolean, crowningWorks: boolean): Promise<string> => {
      const changed = { ...record!, asFound: { ...record!.asFound, tiltWorks, crowningWorks }, overhauled: null };
      return words(await checkSheetPdf(worn, { record: changed, figures: conditionFigures(worn, changed, 1000) }));
    };
    const neither = await sheet(false, false);
    expect(neither).toContain('neither tilt nor crowning is there and found to work');
    expect(neither).not.toMatch(/a tilt of|a crowning of/i);
    const tilt = await sheet(true, false);
    expect(tilt).toMatch(/A tilt of \d\.\d{3} mm over 1,000 mm, the ram lower to the (?:left|right), found to work, leaves plus or minus/);
    expect(tilt).not.toMatch(/a crowning of/i);
  });

  it('leaves out no reading, however many there are', async () => {
    const wear = Array.from({ length: 60 }, (_, k) => ({ along: -1180 + 40 * k, bed: -0.001 * k, ram: 0.02 }));
    const read = words(await checkSheetPdf(worn, { record: { ...record!, asFound: { ...record!.asFound, wear }, overhauled: null }, figures: conditionFigures(worn, record!, 1000) }));
    expect(wear.map(({ bed }) => bed.toFixed(3).replace('-', '−')).filter((figure) => !read.includes(figure))).toEqual([]);
  });

  it('blank: open to be written in, nothing said of a machine nobody looked at', async () => {
    const read = words(await checkSheetPdf(worn, null));
    for (const said of ['Cracks or weld repair at the throat', 'Stopping time', 'Wear of bed and ram seats', '-1250', '1250', 'Instruments and the day of their last calibration', 'nothing / crack / weld repair', 'present / missing', 'Overhaul: what was done', 'heavy, after', 'day, by:', 'Measuring force: never beyond the rating', 'sheet 1 of 2']) expect(read.replaceAll('−', '-')).toContain(said);
    expect(read).not.toContain('not known, ');
    expect(read).not.toContain('What follows');
  });
});

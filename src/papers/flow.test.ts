import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { bytesOf, openDocument } from './document.js';
import { type Block, fitCount, flow } from './flow.js';
import { columnsFrom, newPages } from './pages.js';
import { has, run } from './pdfTools.js';

const folder = mkdtempSync(join(tmpdir(), 'brakewright-flow-'));
afterAll(() => rmSync(folder, { recursive: true }));

const lines = (count: number): string => Array.from({ length: count }, (_, k) => `Remark ${k + 1}.`).join('\n');
const block = (words: string): Block => ({ heading: 'Remarks, as typed', paragraphs: [{ words, sign: '–', style: { size: 2.4 } }] });

describe('a paragraph longer than its column', () => {
  it('is cut at the column\'s end and goes on in the next, however it is typed', () => {
    const doc = openDocument('', '');
    newPages(doc).begin('');
    const low = columnsFrom(150, 3);
    expect(fitCount(doc, [block(lines(20))], low.slice(0, 1))).toBe(0);
    for (const words of [lines(25), 'a few words '.repeat(100), 'x'.repeat(1000)]) expect(fitCount(doc, [block(words)], low)).toBe(1);
  });

  it.skipIf(!has('pdftotext'))('leaves no page empty and no line out', async () => {
    for (const count of [60, 200]) {
      const doc = openDocument('', '');
      const pages = newPages(doc);
      const start = (): ReturnType<typeof columnsFrom> => {
        pages.begin('terms');
        return columnsFrom(20, 3);
      };
      flow(doc, [block(lines(count))], start(), start);
      // 3 columns of some 50 lines on a sheet
      expect([count, pages.names.length]).toEqual([count, Math.ceil(count / 135)]);
      expect(doc.bufferedPageRange().count).toBe(pages.names.length);
      const file = join(folder, `${count}.pdf`);
      writeFileSync(file, await bytesOf(doc));
      const read = run('pdftotext', '-raw', file, '-');
      expect([...read.matchAll(/Remark (\d+)\./g)].map(([, n]) => Number(n))).toEqual(Array.from({ length: count }, (_, k) => k + 1));
      expect(read.split('Remarks, as typed\n')).toHaveLength(2);
    }
  });
});

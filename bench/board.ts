// npm run bench -- board FOLDER [seconds] [class] [minutes] [options]: all bent parts of ../shared/parts and P1 to P16 on the five machines
// of the demo floor, as the page shows them. FOLDER gets the store, board.json and board.png. Broken off (by `minutes` or by hand) it goes on where it
// was when it is asked again with the same words: cells are kept in the store. `seconds` are processor time, so a computer that does much else takes longer; what is found only near their end may still be "not decided" in another run.
import { mkdirSync, readFileSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { extname, join, resolve } from 'node:path';
import { chromium } from 'playwright-core';
import { closeStepReader, readStep } from '../src/intake/index.js';
import { type FitSummary, type FitView, startServer } from '../src/server/index.js';
import { type Part, sameShape } from '../src/sheet/index.js';
import { openStore } from '../src/store/index.js';
import { benchParts } from './parts.js';

const PARTS = '../shared/parts';
/** s of search for each cell. */
const SECONDS = 20;
const [folder = 'board', seconds = SECONDS, toleranceClass = 'c', minutes = Infinity, options = 'no options'] = process.argv.slice(2);

/** Bent bodies of the published files, each shape once: files hold the same bracket many times over. */
const published = async (): Promise<readonly Part[]> => {
  const found: Part[] = [];
  const files = readdirSync(PARTS, { recursive: true, encoding: 'utf8' }).filter((f) => ['.step', '.stp'].includes(extname(f).toLowerCase())).sort();
  for (const file of files) {
    const { parts } = await readStep(readFileSync(join(PARTS, file)), file.split('/').at(-1)!, { seconds: 120 });
    for (const { part } of parts) {
      if (part.bends.length > 0 && !found.some((other) => sameShape(other, part))) found.push(part);
    }
    console.log(`${file}: ${parts.filter(({ part }) => part.bends.length > 0).length} bent of ${parts.length} read`);
  }
  await closeStepReader();
  return found;
};

mkdirSync(folder, { recursive: true });
const dataDir = join(folder, 'store');
if (!statSync(dataDir, { throwIfNoEntry: false })) {
  // put in its place when it is whole: broken off before, it is begun anew
  const begun = `${dataDir}.new`;
  rmSync(begun, { recursive: true, force: true });
  const opened = openStore(begun);
  if (!opened.ok) throw new Error(opened.sentence);
  for (const part of [...benchParts().map((b) => b.part), ...(await published())]) await opened.store.addPart(part, 'bench');
  await opened.store.close();
  renameSync(begun, dataDir);
}
const server = await startServer({ port: 0, dataDir, pages: resolve('dist/web') });
const get = async <T>(path: string): Promise<T> => (await (await fetch(server.url + path)).json()) as T;
const { parts } = await get<{ readonly parts: readonly { readonly id: string; readonly bends: number }[] }>('/api/parts');
const asked = await fetch(`${server.url}/api/fits`, {
  method: 'POST', headers: { 'content-type': 'application/json' },
  body: JSON.stringify({ partIds: parts.map(({ id }) => id).reverse(), machineIds: 'all', metalId: 'dc01', quantity: 50, seconds: Number(seconds), toleranceClass: toleranceClass === 'none' ? null : toleranceClass, options: options === 'options' }),
});
const { id } = (await asked.json()) as FitSummary;
const began = Date.now();
for (let last = -1; ;) {
  const fit = await get<FitView>(`/api/fits/${id}`);
  writeFileSync(join(folder, 'board.json'), JSON.stringify(fit));
  if (fit.done !== last) console.log(`${((Date.now() - began) / 1000).toFixed(0)} s: ${fit.done} of ${fit.of} cells`);
  last = fit.done;
  if (Date.now() - began > Number(minutes) * 60_000) await fetch(`${server.url}/api/fits/${id}/stop`, { method: 'POST' });
  if (fit.endedAt !== null) break;
  await new Promise((resolve) => setTimeout(resolve, 10_000));
}
const board = await get<FitView>(`/api/fits/${id}`);
const cells = board.cells.flat();
const count = (verdict: string): number => cells.filter((cell) => (cell?.verdict ?? 'not tried') === verdict).length;
console.log(`${board.parts.length} parts, ${board.machines.length} machines, ${((Date.now() - began) / 1000).toFixed(0)} s, ${board.fromCache} cells known before: ${['makes', 'makes with remedy', 'does not make', 'not decided', 'not tried'].map((v) => `${count(v)} ${v}`).join(', ')}`);
const remedies = cells.flatMap((cell) => cell?.remedies ?? []);
console.log(`${remedies.length} remedies, ${remedies.filter((r) => r.confirmed).length} planned again and proved`);
if (remedies.some((r) => !r.confirmed) || cells.some((cell) => cell?.verdict === 'makes' && !cell.proof.passed)) process.exitCode = 1;
console.log(board.answer);
board.machines.forEach(({ name }, c) => {
  const { levels, no, open, why, changes } = board.sums[c]!;
  const said = (list: typeof why): string => list.map(({ words, parts }) => `${words} (${parts.length})`).join('; ') || 'nothing';
  console.log(`${name}: ${levels.map(({ words, made }) => `${words}: ${made}`).join('; ')}; no ${no}, open ${open}. Why: ${said(why)}. Changes: ${said(changes)}`);
});
const browser = await chromium.launch({ executablePath: process.env['CHROMIUM_PATH'] ?? '/usr/bin/chromium', args: ['--no-sandbox', '--disable-quic', '--disable-background-networking'] });
const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
await page.goto(`${server.url}/#/fit/${id}`);
await page.waitForSelector('.fit-board button.cell');
await page.waitForLoadState('networkidle');
await page.screenshot({ path: join(folder, 'board.png'), fullPage: true });
await browser.close();
await server.close();

// npm test: types, lint, dead code, then the tests. All of them run, whatever fails; the exit code says whether all passed.
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensureCompiled, ensurePages } from './lib/build.mjs';
import { ensureChromium } from './lib/chromium.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { at, stamps } from './lib/paths.mjs';
import { missingPdfTools } from './lib/pdfTools.mjs';
import { realFiles } from './lib/realFiles.mjs';
import { tool } from './lib/run.mjs';
import { checks } from './lib/checks.mjs';

const started = Date.now();
const seconds = (since) => `${((Date.now() - since) / 1000).toFixed(1)} s`;

await ensureInstalled();
await ensureCompiled();
await ensurePages();
const chromium = await ensureChromium();
console.log(`set-up     ${seconds(started)}`);

const failed = [];
// side by side: each of them keeps one core busy
const results = await Promise.all(
  checks.map(async (check) => {
    const since = Date.now();
    return { ...check, ...(await check.command({ quiet: true })), took: seconds(since) };
  }),
);
for (const { name, gate, code, output, took } of results) {
  console.log(`${name.padEnd(10)} ${took}  ${code === 0 ? 'clean' : gate ? 'FAILED' : 'report only'}`);
  if (code !== 0) console.log(output.trimEnd());
  if (code !== 0 && gate) failed.push(name);
}

const report = join(stamps, 'vitest.json');
mkdirSync(stamps, { recursive: true });
rmSync(report, { force: true });
const vitest = await tool(
  at('node_modules', 'vitest', 'vitest.mjs'),
  ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`, ...process.argv.slice(2)],
  { env: chromium ? { CHROMIUM_PATH: chromium } : {} },
);
if (vitest.code !== 0) failed.push('tests');

const files = realFiles();
console.log(`\nPublished part files: ${files.found} found, ${files.missing.length} not found of ${files.wanted} named by ${files.list ? 'their list and ' : ''}the tests.`);
if (!files.list) console.log('  not found: the list itself (../shared/parts/MANIFEST.tsv), so the tests that go by it are skipped.');
for (const name of files.missing) console.log(`  not found: ${name}`);
const pdfTools = missingPdfTools();
if (pdfTools.length > 0) console.log(`Programs that read PDF back: ${pdfTools.join(', ')} not installed, so what the papers say is not checked where a test asks for it (poppler-utils).`);

const counted = (() => {
  try {
    return JSON.parse(readFileSync(report, 'utf8'));
  } catch {
    return null; // vitest itself fell over: no count is better than an invented one
  }
})();
if (counted === null) failed.push('tests (no report)');
if (failed.length > 0) console.log(`Failed: ${[...new Set(failed)].join(', ')}.`);
console.log(`All in ${seconds(started)}.`);
if (counted !== null) {
  const skipped = counted.numPendingTests + counted.numTodoTests;
  console.log(`${counted.numPassedTests} passed, ${counted.numFailedTests} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
}
process.exitCode = failed.length > 0 ? 1 : 0;

import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import type { Page } from 'playwright-core';

const MAIN = resolve('dist/cli/main.js');

/** The program's own server over a folder of data, as a user starts it. */
export const serve = (data: string): Promise<{ readonly url: string; readonly child: ChildProcess }> =>
  new Promise((done, refuse) => {
    const child = spawn(process.execPath, [MAIN, 'serve', '--port', '0', '--data', data], { stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    const hear = (text: Buffer): void => {
      said += text.toString();
      const url = /https?:\/\/[\w.[\]:]+/.exec(said)?.[0];
      if (url) done({ url, child });
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('exit', (code) => refuse(new Error(`the server ended with ${code}: ${said}`)));
  });

/** What axe-core finds serious or critical on the page as it stands. */
export const seriousOn = async (page: Page): Promise<readonly string[]> => {
  await page.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as { readonly axe: { run(): Promise<{ readonly violations: readonly { readonly impact: string; readonly id: string; readonly nodes: readonly { readonly html: string }[] }[] }> } };
    return (await axe.run()).violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 120)}`);
  });
};

import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { type Page, chromium } from 'playwright-core';

const MAIN = resolve('dist/cli/main.js');
export const CHROMIUM = process.env.CHROMIUM_PATH ?? '/usr/bin/chromium';
const ARGS = ['--no-sandbox', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'];

/** A page of the program's own server over a new folder of data. */
export interface Served {
  readonly url: () => string;
  readonly page: Page;
  /** Over the same data, at another address. */
  readonly restart: () => Promise<void>;
  /** What the page threw or wrote as an error. */
  readonly faults: string[];
  readonly close: () => Promise<void>;
}

/** The program's own server over a folder of data, as a user starts it, on a free port. */
interface Server {
  readonly url: string;
  readonly stop: () => Promise<void>;
}

const serve = (data: string): Promise<Server> =>
  new Promise((done, refuse) => {
    const child = spawn(process.execPath, [MAIN, 'serve', '--port', '0', '--data', data], { stdio: ['ignore', 'pipe', 'pipe'] });
    const ended = new Promise<void>((over) => child.once('exit', () => over()));
    let said = '';
    const hear = (text: Buffer): void => {
      said += text.toString();
      const url = /https?:\/\/[\w.[\]:]+/.exec(said)?.[0];
      if (url) done({ url, stop: async () => { child.kill('SIGTERM'); await ended; } });
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('exit', (code) => refuse(new Error(`the server ended with ${code}: ${said}`)));
  });

/** Starts server and browser; the folder goes when it is closed. */
export const openServed = async (name: string): Promise<Served> => {
  const data = mkdtempSync(join(tmpdir(), `brakewright-${name}-`));
  const [first, browser] = await Promise.all([serve(data), chromium.launch({ executablePath: CHROMIUM, args: ARGS })]);
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  const faults: string[] = [];
  page.on('console', (message) => message.type() === 'error' && faults.push(`console: ${message.text()}`));
  page.on('pageerror', (fault) => faults.push(`page: ${fault.message}`));
  let server = first;
  return {
    page, faults,
    url: () => server.url,
    restart: async () => {
      await server.stop();
      server = await serve(data);
    },
    close: async () => {
      await browser.close();
      await server.stop();
      rmSync(data, { recursive: true, force: true });
    },
  };
};

/** What axe-core finds serious or critical on the page as it stands. */
export const seriousOn = async (page: Page): Promise<readonly string[]> => {
  await page.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as { readonly axe: { run(): Promise<{ readonly violations: readonly { readonly impact: string; readonly id: string; readonly nodes: readonly { readonly html: string }[] }[] }> } };
    return (await axe.run()).violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 120)}`);
  });
};

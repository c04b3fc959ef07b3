import { existsSync, readdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';
import { at } from './paths.mjs';
import { run, tool } from './run.mjs';
import { say } from './say.mjs';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const macBrowsers = ['Chromium.app/Contents/MacOS/Chromium', 'Google Chrome.app/Contents/MacOS/Google Chrome'];

const onPath = () =>
  (process.env.PATH ?? '').split(delimiter).concat('/usr/bin').flatMap((folder) => names.map((name) => join(folder, name)));

/** Where playwright-core puts the browsers that it downloads. */
const cached = () => {
  const caches = [
    process.env.PLAYWRIGHT_BROWSERS_PATH,
    join(homedir(), '.cache', 'ms-playwright'),
    join(homedir(), 'Library', 'Caches', 'ms-playwright'),
    join(process.env.LOCALAPPDATA ?? homedir(), 'ms-playwright'),
  ];
  return caches
    .filter((folder) => folder && existsSync(folder))
    .flatMap((folder) => readdirSync(folder).filter((name) => name.startsWith('chromium-')).map((name) => join(folder, name)))
    .flatMap((folder) => [
      join(folder, 'chrome-linux', 'chrome'),
      join(folder, 'chrome-linux64', 'chrome'),
      join(folder, 'chrome-win', 'chrome.exe'),
      join(folder, 'chrome-mac', 'Chromium.app', 'Contents', 'MacOS', 'Chromium'),
    ]);
};

/** The path of a Chromium on this machine, or undefined. CHROMIUM_PATH comes first. */
const findChromium = () =>
  [process.env.CHROMIUM_PATH, ...onPath(), ...macBrowsers.map((path) => `/Applications/${path}`), ...cached()].find(
    (path) => path && existsSync(path),
  );

const installers = [
  {
    may: () => process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get'),
    how: async () => {
      const env = { DEBIAN_FRONTEND: 'noninteractive' };
      await run('apt-get', ['update'], { quiet: true });
      return run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], { quiet: true, env });
    },
    name: 'apt-get install chromium',
  },
  {
    may: () => true,
    how: () => tool(at('node_modules', 'playwright-core', 'cli.js'), ['install', 'chromium'], { quiet: true }),
    name: 'playwright-core install chromium',
  },
];

/** The path of a Chromium, installed where there was none; undefined, and said so, where none can be had. */
export const ensureChromium = async () => {
  const found = findChromium();
  if (found) return found;
  for (const { may, how, name } of installers) {
    if (!may()) continue;
    say(`No Chromium found: ${name} ...`);
    const { code, output } = await how();
    const now = findChromium();
    if (now) return now;
    say(`${name} ended with code ${code}: ${output.trim().split('\n').at(-1) ?? ''}`);
  }
  say('No Chromium is here and none could be installed: the tests that open pages cannot run. Set CHROMIUM_PATH to one.');
  return undefined;
};

import { existsSync, readFileSync } from 'node:fs';
import { fingerprint, stamp, stamped } from './fingerprint.mjs';
import { at } from './paths.mjs';
import { npm } from './run.mjs';
import { say, stop } from './say.mjs';

/** Stops with one sentence where this Node is older than package.json asks for. */
const checkNode = () => {
  const [major, minor] = process.versions.node.split('.').map(Number);
  const [needMajor, needMinor] = JSON.parse(readFileSync(at('package.json'), 'utf8')).engines.node.match(/\d+/g).map(Number);
  if (major > needMajor || (major === needMajor && minor >= needMinor)) return;
  stop(`Brakewright needs Node ${needMajor}.${needMinor} or later; this is Node ${process.versions.node}.`);
};

/** Brings node_modules to what the lock file says, and does nothing when it is there already. */
export const ensureInstalled = async () => {
  checkNode();
  const lock = fingerprint([at('package-lock.json')], `${process.platform} ${process.arch} ${process.versions.modules}`);
  if (existsSync(at('node_modules')) && stamped('install', lock)) return;
  say('Installing what package-lock.json names (once) ...');
  const { code, output } = await npm(['ci', '--no-audit', '--no-fund'], { quiet: true });
  if (code !== 0) stop(`${output}\nnpm ci ended with code ${code}.`);
  stamp('install', lock);
};

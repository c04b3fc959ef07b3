import { at } from './paths.mjs';
import { tool } from './run.mjs';

const cache = at('node_modules', '.cache', 'eslint');

/** What is checked without running the code. `gate`: whether a finding fails the whole. */
export const checks = [
  {
    name: 'types',
    gate: true,
    command: (options) => tool(at('node_modules', 'typescript', 'bin', 'tsc'), ['--noEmit', '-p', '.'], options),
  },
  {
    name: 'lint',
    gate: true,
    command: (options) =>
      tool(at('node_modules', 'eslint', 'bin', 'eslint.js'), ['--cache', '--cache-location', `${cache}/`, '--max-warnings', '0', '.'], options),
  },
  {
    name: 'dead code',
    gate: true,
    command: (options) => tool(at('node_modules', 'knip', 'bin', 'knip.js'), ['--no-progress'], options),
  },
];

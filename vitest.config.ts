import { defineConfig } from 'vitest/config';

/** Files that start servers, browsers, workers or commands, write stores, or put something in a module's place: each has a process of its own. */
const apart = ['src/{server,cli,store,intake}/**/*.test.ts', 'test/browser/**/*.test.ts', 'test/lint/**/*.test.ts'];

export default defineConfig({
  test: {
    testTimeout: 60_000,
    hookTimeout: 120_000,
    pool: 'forks',
    maxWorkers: 2,
    projects: [
      // what only computes shares its modules from file to file: loading them for each took as long as the tests
      { extends: true, test: { name: 'shared', isolate: false, include: ['src/**/*.test.ts', 'test/**/*.test.ts'], exclude: apart } },
      { extends: true, test: { name: 'apart', include: apart } },
    ],
  },
});

/** The compiled file of a worker that lies beside the asking module: workers run from dist/, also when a test runs the sources. */
export const workerFile = (askedFrom: string, name: string): URL =>
  new URL(`./${name}.js`, askedFrom.endsWith('.ts') ? askedFrom.replace('/src/', '/dist/') : askedFrom);

import * as highs from 'highs';

// its types describe the CommonJS build, Node takes the other: the default export is the loader itself
const load = highs.default as unknown as () => Promise<highs.Highs>;
let loaded: Promise<highs.Highs> | undefined;

/** The mixed-integer solver, loaded once. */
export const solver = (): Promise<highs.Highs> => (loaded ??= load());

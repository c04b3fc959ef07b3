/** Largest file taken in, bytes. The largest STEP file of the published test parts has 2.3 million. */
export const uploadLimit = 64 * 2 ** 20;
export const tooLarge = `The file is larger than ${uploadLimit / 2 ** 20} MiB.`;
/** Largest JSON body, bytes: a typed-in profile has a few hundred. */
export const bodyLimit = 2 ** 20;
/** Largest table as CSV, characters, and the JSON body that brings it, bytes. */
export const tableLimit = 5_000_000;
export const tableBodyLimit = 8 * 2 ** 20;
/** Seconds that reading one file may take. */
export const readSeconds = 120;
/** Refused bodies of a file that are answered with a picture, some 0.1 MB each. */
export const picturedRefusals = 40;
/** Files that may wait for the one being read. */
export const waitingReads = 4;
/** Seconds within which a whole request must have arrived. */
export const requestSeconds = 120;
/** Planning jobs at a time: one leaves the other core to the pages. */
export const workers = 2;
/** Jobs that may wait. */
export const waitingJobs = 200;
/** Seconds of search that a job is given when none are asked for, and the most that may be asked for. */
export const planSeconds = 60;
export const mostPlanSeconds = 600;
/** Seconds that a job may live beyond its search (start, proof) before it is killed. */
export const proofSeconds = 300;
/** Seconds that a job is given to end by itself once it was told to stop. */
export const graceSeconds = 2;
/** Trials that one planning worker makes before a fresh one takes its place, so that nothing an engine keeps can grow for ever. */
export const workerTrials = 250;
/** MiB of JavaScript memory in a planning worker. */
export const workerMemory = 1536;
/** Shortest passphrase taken for a server that listens beyond this computer. */
export const leastPassphrase = 12;
/** Wrong passphrases from one address within a minute before it must wait. */
export const wrongPassphrases = 10;
/** Seconds that one drawing or paper may take; how many may wait; how many of the last ones are kept in memory (some 0.1 MB each). */
export const paperSeconds = 120;
export const waitingPapers = 100;
export const keptPapers = 200;
/** Fits that may wait, that are kept in memory with their cells beside the store, and the cells of one. */
export const waitingFits = 20;
export const keptFits = 20;
/** Fits that a list tells of. */
export const listedFits = 200;
/** s between two times that a fit under way is kept as it stands. */
export const keepSeconds = 20;
export const mostCells = 5000;
/** Seconds of search for one cell of a fit when none are asked for. */
export const cellSeconds = 20;
/** Largest JSON body of a fit, bytes: a buyer's machines and rack may come with it. */
export const fitBodyLimit = 4 * 2 ** 20;

import { spawnSync } from 'node:child_process';

/** With what tests read papers back (src/papers/pdfTools.ts); what needs one that is not there is skipped. */
const PDF_TOOLS = ['pdftotext', 'pdffonts'];

/** The programs that are not installed. `runs`: does a program start? */
export const missingPdfTools = (runs = (tool) => spawnSync(tool, ['-v'], { stdio: 'ignore' }).error === undefined) => PDF_TOOLS.filter((tool) => !runs(tool));

import { execFileSync } from 'node:child_process';

// For tests only: papers are read back with another program's eyes (pdftotext, pdffonts, pdftoppm).

/** Is a program installed? Says so where it is not, for what needs it is skipped then. */
export const has = (tool: string): boolean => {
  try {
    execFileSync(tool, ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    console.warn(`${tool} is not installed: tests that read the PDF with it are skipped`);
    return false;
  }
};

/** What a program prints. */
export const run = (tool: string, ...args: string[]): string => execFileSync(tool, args, { encoding: 'utf8' });

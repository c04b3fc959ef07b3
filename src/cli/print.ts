import { writeWhole } from './writeFile.js';

/** What every command can be told about its output. */
export interface OutputOptions {
  readonly json?: boolean;
  readonly output?: string;
  readonly units?: 'mm' | 'in';
}

/** What JSON answers are in, whatever `--units` says: it goes with each of them. */
export const JSON_UNITS = 'mm, N, MPa, s, kg, degrees';

/** Sends text to standard output, or to the file of -o. */
export const print = async (text: string, output?: string): Promise<void> => {
  const whole = text.endsWith('\n') ? text : `${text}\n`;
  if (output === undefined) process.stdout.write(whole);
  else await writeWhole(output, whole);
};

/** Prints an answer: as JSON when asked to, else in the words that `human` makes. */
export const answer = async (value: object, human: () => string, options: OutputOptions): Promise<void> =>
  print(options.json === true ? JSON.stringify(value, null, 2) : human(), options.output);

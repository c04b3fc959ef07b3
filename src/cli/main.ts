#!/usr/bin/env node
import { readFileSync } from 'node:fs';
import { Command, CommanderError } from 'commander';
import { Fault } from './fault.js';

/** Someone closed the pipe that we print into (`| head`): they have read enough. */
process.stdout.on('error', (fault: NodeJS.ErrnoException) => {
  if (fault.code !== 'EPIPE') throw fault;
  process.exit();
});

/** src/cli and dist/cli both lie two folders below package.json. */
const version = (): string =>
  (JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { readonly version: string }).version;

/** The commands, each loaded only when it is called: reading a list should not wait for the geometry kernel. */
const commands: Readonly<Record<string, () => Promise<Command>>> = {
  part: async () => {
    const { startStepReader } = await import('../intake/index.js');
    // the geometry kernel loads on the other core while the command itself is loaded
    if (process.argv.some((word) => /\.ste?p$/i.test(word))) startStepReader(true);
    return (await import('./part.js')).partCommand();
  },
  profile: async () => (await import('./profile.js')).profileCommand(),
  blank: async () => (await import('./blank.js')).blankCommand(),
  bend: async () => (await import('./bend.js')).bendCommand(),
  strip: async () => (await import('./strip.js')).stripCommand(),
  deductions: async () => (await import('./deductions.js')).deductionsCommand(),
  trial: async () => (await import('./trial.js')).trialCommand(),
  fit: async () => (await import('./fit.js')).fitCommand(),
  envelope: async () => (await import('./envelope.js')).envelopeCommand(),
  report: async () => (await import('./report.js')).reportCommand(),
  dayplan: async () => (await import('./dayplan.js')).dayplanCommand(),
  proof: async () => (await import('./proof.js')).proofCommand(),
  machines: async () => (await import('./machines.js')).machinesCommand(),
  tools: async () => (await import('./tools.js')).toolsCommand(),
  condition: async () => (await import('./condition.js')).conditionCommand(),
  metals: async () => (await import('./metals.js')).metalsCommand(),
  serve: async () => (await import('./serve.js')).serveCommand(),
};

const programFor = async (name: string | undefined): Promise<Command> => {
  const called = name === undefined ? undefined : commands[name];
  // read with the list of all commands alone
  const caveat = called === undefined ? `\n${(await import('../forming/index.js')).CAVEAT}` : '';
  const program = new Command('brakewright')
    .description(`Which press brake makes a sheet-metal part, with which tools, in which order of bends.${caveat}`)
    .version(version())
    .helpCommand(false)
    .addHelpText('after', '\nExit codes: 0 done or makes, 2 bad input, 3 does not make or only with a remedy, 4 not decided.');
  for (const load of called === undefined ? Object.values(commands) : [called]) program.addCommand(await load());
  for (const command of [program, ...program.commands]) {
    // commander would print its own lines and end the process: its faults go the same way as ours, in one sentence
    command.exitOverride().configureOutput({ writeErr: () => undefined });
  }
  return program;
};

/** The sentence and code for whatever ended the command. */
const ending = (fault: unknown): { readonly sentence?: string; readonly code: number } => {
  if (fault instanceof Fault) return { sentence: fault.message, code: fault.code };
  if (fault instanceof CommanderError) {
    if (fault.exitCode === 0) return { code: 0 };
    const sentence = fault.message.replace(/^error: /, '').replace(/\n/g, ' ');
    return { sentence: `brakewright: ${sentence}${/[.?)]$/.test(sentence) ? '' : '.'}`, code: 2 };
  }
  const words = fault instanceof Error ? fault.message : String(fault);
  return { sentence: `A defect of the program, not of the input: ${words.split('\n')[0] ?? ''}`, code: 70 };
};

try {
  const program = await programFor(process.argv[2]);
  if (process.argv.length <= 2) program.outputHelp();
  else await program.parseAsync();
} catch (fault) {
  const { sentence, code } = ending(fault);
  if (sentence !== undefined) process.stderr.write(`${sentence}\n`);
  if (process.env['BRAKEWRIGHT_TRACE'] !== undefined && fault instanceof Error) process.stderr.write(`${fault.stack ?? ''}\n`);
  process.exitCode = code;
}

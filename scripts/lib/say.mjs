/** One line on standard error: what set-up is doing, kept apart from what a command prints. */
export const say = (line) => process.stderr.write(`${line}\n`);

/** Ends the process with one sentence. */
export const stop = (sentence, code = 1) => {
  say(sentence);
  process.exit(code);
};

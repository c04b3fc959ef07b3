/**
 * What ends a command early: one sentence for standard error and an exit code. Thrown by the commands and caught once,
 * in main.ts; nothing above this room knows of it.
 */
export class Fault extends Error {
  constructor(
    sentence: string,
    readonly code = 2,
  ) {
    super(sentence);
    this.name = 'Fault';
  }
}

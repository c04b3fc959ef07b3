import { HttpError } from './httpError.js';

/** Runs the tasks one after the other; refuses one more when `most` are waiting. */
export const oneAtATime = (most: number, refusal: string): (<T>(task: () => Promise<T>) => Promise<T>) => {
  let last: Promise<unknown> = Promise.resolve();
  let pending = 0;
  return <T>(task: () => Promise<T>): Promise<T> => {
    if (pending > most) return Promise.reject(new HttpError(503, refusal));
    pending++;
    const mine = last.then(task).finally(() => pending--);
    last = mine.catch(() => undefined);
    return mine;
  };
};

import { Readable } from 'node:stream';
import type { FastifyReply } from 'fastify';

/** ms between two signs of life on a quiet stream, so that nothing between closes it. */
const heartbeat = 15_000;

/** Server-sent events: `watch` is given what to call with each change and returns how to end it, undefined when nothing is at work any more. */
export const eventStream = <T>(reply: FastifyReply, watch: (push: (view: T) => void) => (() => void) | undefined, isLast: (view: T) => boolean, now: () => Promise<T>): Promise<FastifyReply> =>
  (async () => {
    const stream = new Readable({ read: () => undefined });
    let over = false;
    const push = (view: T): void => {
      if (over) return;
      stream.push(`data: ${JSON.stringify(view)}\n\n`);
      if (!isLast(view)) return;
      over = true;
      stream.push(null);
    };
    // Watch first, look second: a change in between is told twice rather than missed.
    const unwatch = watch(push);
    try {
      push(await now());
    } catch (error) {
      unwatch?.();
      throw error;
    }
    const beat = setInterval(() => {
      if (!over) stream.push(': still here\n\n');
    }, heartbeat);
    const end = (): void => {
      clearInterval(beat);
      unwatch?.();
      stream.destroy();
    };
    stream.on('end', end);
    reply.raw.on('close', end);
    return reply.header('content-type', 'text/event-stream').header('x-accel-buffering', 'no').send(stream);
  })();

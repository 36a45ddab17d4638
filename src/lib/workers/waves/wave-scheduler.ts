import type { Steps } from '../../waves/curve/steps.js';
import { answeringWaves } from './answering-waves.js';
import type { WaveAsked, WaveSaid } from './wave-protocol.js';
import { WaveCache } from './wave-cache.js';

interface Job {
  id: number;
  urgent: boolean;
  steps: Steps<unknown>;
}

/**
 * Where questions about waves are answered, a step at a time. Between steps messages are let in, so that a question that is
 * dropped costs at most the step that it is in, and an urgent one begins after it: the newest urgent question is
 * worked at first, the others lie aside meanwhile, with all they have come to, and go on in their order.
 */
export class WaveScheduler {
  readonly #say: (said: WaveSaid, transfer: Transferable[]) => void;
  readonly #cache = new WaveCache();
  #jobs: Job[] = [];
  #working = false;

  constructor(say: (said: WaveSaid, transfer: Transferable[]) => void) {
    this.#say = say;
  }

  /** Takes a message. Nothing is answered before the next turn: the message behind it may drop it. */
  take(asked: WaveAsked): void {
    if ('drop' in asked) return this.#drop(asked.drop);
    const { id, question, urgent } = asked;
    this.#jobs.push({ id, urgent, steps: answeringWaves(question, this.#cache) });
    if (!this.#working) void this.#work();
  }

  async #work(): Promise<void> {
    this.#working = true;
    for (;;) {
      await turn();
      const job = this.#jobs.findLast(({ urgent }) => urgent) ?? this.#jobs[0];
      if (!job) break;
      this.#step(job);
    }
    this.#working = false;
  }

  #step({ id, steps }: Job): void {
    try {
      const { done, value } = steps.next();
      if (!done) return this.#say({ id, said: 'progress', share: value }, []);
      this.#say({ id, said: 'result', result: value, holds: this.#cache.holds }, buffersOf(value));
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error);
      this.#say({ id, said: 'error', message, holds: this.#cache.holds }, []);
    }
    this.#forget(id);
  }

  #drop(id: number): void {
    if (!this.#jobs.some((job) => job.id === id)) return;
    this.#forget(id);
    this.#say({ id, said: 'dropped', holds: this.#cache.holds }, []);
  }

  #forget(id: number): void {
    this.#jobs = this.#jobs.filter((job) => job.id !== id);
  }
}

/** Lets messages in. A timer would be held back to 4 ms. */
function turn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

/** The samples of levels and images move to the page instead of being copied. */
function buffersOf(value: unknown): Transferable[] {
  if (value instanceof Float64Array) return [value.buffer];
  if (!Array.isArray(value)) return [];
  return value.flatMap(({ re, im }) => (re instanceof Float32Array ? [re.buffer, im.buffer] : []));
}

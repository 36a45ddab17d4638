import type { FrameClock } from '../../src/lib/bench/growth.svelte.js';

/** A clock of frames that a test drives: a frame comes when the test says so, and at the time it says. */
export class DrivenFrames implements FrameClock {
  #asked = new Map<number, (now: number) => void>();
  #last = 0;

  /** How many frames are asked for and have not come yet. */
  get waiting(): number {
    return this.#asked.size;
  }

  request(frame: (now: number) => void): number {
    this.#asked.set(++this.#last, frame);
    return this.#last;
  }

  cancel(request: number): void {
    this.#asked.delete(request);
  }

  /** One frame at this time in milliseconds. */
  at(now: number): void {
    const frames = [...this.#asked.values()];
    this.#asked.clear();
    for (const frame of frames) frame(now);
  }
}

/**
 * Runs one task at a time; of those that come meanwhile only the newest is kept, and runs next. So what follows a hand is
 * always finished, and never falls behind.
 */
export class OneAtATime {
  #busy = false;
  #next: (() => Promise<void>) | null = null;

  /** A task must not reject. */
  run(task: () => Promise<void>): void {
    this.#next = task;
    if (!this.#busy) void this.#go();
  }

  /** Forgets what waits. */
  clear(): void {
    this.#next = null;
  }

  async #go(): Promise<void> {
    this.#busy = true;
    while (this.#next) {
      const task = this.#next;
      this.#next = null;
      await task();
    }
    this.#busy = false;
  }
}

/**
 * What runs for the newest question. Its signal is aborted when it has been replaced or withdrawn, and at its end, so that
 * nothing that it left under way goes on for nobody.
 */
export type Task = (signal: AbortSignal) => Promise<void>;

export interface NewestWinsOptions {
  /**
   * What a newer task takes the place of. `waiting`: of one that waits; the one that runs is finished first, so that what
   * follows a hand is shown on its way and never falls behind. `running`: of that one as well; the newer one begins at once.
   */
  replaces: 'waiting' | 'running';
  /** What a task waits for before it begins; until then a newer one takes its place in either case. None: it begins at once. */
  pause?: () => Promise<void> | null;
  /** Told what went wrong with a task, unless a newer one has taken its place or it was given up. None: nothing can. */
  tell?: (error: unknown) => void;
}

/** Of questions that come faster than they are answered, the newest is answered. One such line for each thing to be known. */
export class NewestWins {
  readonly #options: NewestWinsOptions;
  #running: AbortController | null = null;
  #waiting: Task | null = null;

  constructor(options: NewestWinsOptions) {
    this.#options = options;
  }

  /** Runs a task now, or as the next one. */
  run(task: Task): void {
    this.#waiting = task;
    if (this.#running && this.#options.replaces === 'waiting') return;
    this.#running?.abort();
    void this.#go();
  }

  /** Nobody asks any more: forgets what waits, and with `running` gives up what runs. */
  withdraw(): void {
    this.#waiting = null;
    if (this.#options.replaces === 'running') this.#running?.abort();
  }

  /** Runs the newest task, and after it what has come meanwhile. */
  async #go(): Promise<void> {
    const { pause, tell } = this.#options;
    const running = new AbortController();
    this.#running = running;
    const { signal } = running;
    try {
      const paused = pause?.() ?? null;
      if (paused) await paused;
      if (signal.aborted) return;
      const task = this.#waiting;
      this.#waiting = null;
      await task?.(signal);
    } catch (error) {
      if (signal.aborted || this.#waiting) return;
      if (!tell) throw error;
      tell(error);
    } finally {
      running.abort();
      if (this.#running === running) {
        this.#running = null;
        if (this.#waiting) void this.#go();
      }
    }
  }
}

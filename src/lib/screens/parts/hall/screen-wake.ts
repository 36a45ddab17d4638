/** The little of a browser's page that keeping the screen awake needs. */
export interface WakePage extends EventTarget {
  readonly visibilityState: DocumentVisibilityState;
}

/** The screen's lock, where the browser has one. */
export type ScreenLocks = Pick<WakeLock, 'request'>;

/**
 * Keeps the screen from going dark while it is wanted. A browser takes the lock away from a page that is hidden, so it is
 * asked for again when the page comes back. Where there is no lock, or it is refused, `held` says so and nothing else happens.
 */
export class ScreenWake {
  #page: WakePage;
  #locks: ScreenLocks | undefined;
  #wanted = false;
  #lock: WakeLockSentinel | null = null;
  #asking = false;

  constructor(page: WakePage, locks: ScreenLocks | undefined) {
    this.#page = page;
    this.#locks = locks;
  }

  /** Whether the screen stays awake at this moment. */
  get held(): boolean {
    return this.#lock !== null && !this.#lock.released;
  }

  async keep(): Promise<void> {
    if (!this.#wanted) this.#page.addEventListener('visibilitychange', this.#seen);
    this.#wanted = true;
    await this.#ask();
  }

  async release(): Promise<void> {
    this.#wanted = false;
    this.#page.removeEventListener('visibilitychange', this.#seen);
    const lock = this.#lock;
    this.#lock = null;
    await lock?.release();
  }

  #seen = (): void => {
    void this.#ask();
  };

  async #ask(): Promise<void> {
    if (!this.#locks || this.#asking || this.held || this.#page.visibilityState !== 'visible') return;
    this.#asking = true;
    try {
      const lock = await this.#locks.request('screen');
      // Who left in the meantime does not want it any more.
      if (this.#wanted) this.#lock = lock;
      else await lock.release();
    } catch {
      this.#lock = null;
    } finally {
      this.#asking = false;
    }
  }
}

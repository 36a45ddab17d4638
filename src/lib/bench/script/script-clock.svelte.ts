import type { Seconds } from '../../units.js';

/** The time is looked at so often: a second that is told is never late by more. */
const LOOK_MS = 250;

/** The time since a run began, and since its present scene was shown. */
export class ScriptClock {
  #now = $state(0);
  #began = $state(0);
  #sceneBegan = $state(0);

  /** Both begin. */
  begin(): void {
    this.#began = this.#sceneBegan = this.#now = Date.now();
  }

  /** Another scene is shown. */
  turn(): void {
    this.#sceneBegan = this.#now = Date.now();
  }

  get whole(): Seconds {
    return (this.#now - this.#began) / 1000;
  }

  get scene(): Seconds {
    return (this.#now - this.#sceneBegan) / 1000;
  }

  /** Lets it go until the function that is returned is called. */
  go(): () => void {
    this.#now = Date.now();
    const timer = setInterval(() => (this.#now = Date.now()), LOOK_MS);
    return () => clearInterval(timer);
  }
}

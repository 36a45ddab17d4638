/** So long a task of the page may take before others get their turn. */
const MOST_MS = 8;

/** Lets the page answer the hand in the midst of long work. */
export class Breath {
  #since = performance.now();

  /** Call between the steps of the work: goes on at once while the task is short, and after what waits otherwise. */
  async taken(): Promise<void> {
    if (performance.now() - this.#since < MOST_MS) return;
    await new Promise((resolve) => setTimeout(resolve));
    this.#since = performance.now();
  }
}

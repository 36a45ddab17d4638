/** So long a task of the page may take before others get their turn. */
const SLICE_MS = 8;

/** Lets the page answer the hand in the midst of long work. */
export class TimeSlice {
  #since = performance.now();

  /** Call between the steps of the work: goes on at once while the task is short, and after what waits otherwise. */
  async over(): Promise<void> {
    if (performance.now() - this.#since < SLICE_MS) return;
    await new Promise((resolve) => setTimeout(resolve));
    this.#since = performance.now();
  }
}

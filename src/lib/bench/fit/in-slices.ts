/** So long a task of the page may take before others get their turn. */
const SLICE_MS = 8;

/**
 * Takes steps, a few a task.
 *
 * @throws what the signal is aborted with
 */
export async function inSlices<Result>(steps: Generator<void, Result>, signal: AbortSignal): Promise<Result> {
  for (let since = performance.now(); ;) {
    const { done, value } = steps.next();
    if (done) return value;
    if (performance.now() - since < SLICE_MS) continue;
    await new Promise((resolve) => setTimeout(resolve));
    signal.throwIfAborted();
    since = performance.now();
  }
}

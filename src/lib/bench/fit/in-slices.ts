import { TimeSlice } from '../time-slice.js';

/**
 * Takes steps, a few a task.
 *
 * @throws what the signal is aborted with
 */
export async function inSlices<Result>(steps: Generator<void, Result>, signal: AbortSignal): Promise<Result> {
  const slice = new TimeSlice();
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
    await slice.over();
    signal.throwIfAborted();
  }
}

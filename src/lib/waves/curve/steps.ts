/** Long work that gives after every step the share that is done, 0 … 1, and at the end its result. */
export type Steps<T> = Generator<number, T>;

/** Runs steps through to their end. */
export function toEnd<T>(steps: Steps<T>): T {
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}

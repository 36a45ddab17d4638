/** Everything that waits for nothing but promises has gone on. */
export function aTurn(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}

/** The worker that static/begin.js has begun, as it leaves it for the page. */
interface Begun {
  firstSound?: { worker: Worker; failed: boolean };
}

/**
 * The worker that was begun before the page's own scripts were there (static/begin.js); null where there is none, where it failed,
 * and for whoever asks after the first.
 */
export function begunWorker(): Worker | null {
  const { firstSound } = globalThis as Begun;
  delete (globalThis as Begun).firstSound;
  return firstSound && !firstSound.failed ? firstSound.worker : null;
}

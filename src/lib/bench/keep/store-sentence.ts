/** One sentence for what the browser's store refused: what happened, what is not kept and what to do. */
export function storeSentence(error: unknown): string {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError')
    return 'The browser’s store is full: your last changes are not kept in it. Go on working and save this bench to a file, or delete benches you no longer need.';
  return 'This browser lets nothing be kept (a private window may be the reason): this bench is gone when the page is closed. Go on working and save it to a file.';
}

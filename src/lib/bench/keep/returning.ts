const KEY = 'backwave keeps a bench';

/** Lets the next page know before its first paint that a bench is kept here (static/returning.js). */
export function noteReturning(): void {
  try {
    localStorage.setItem(KEY, 'yes');
  } catch {
    // Then the demo bench is seen for a moment.
  }
}

/** What was kept is on the bench, or nothing is: the page need not be held back any longer. */
export function showBench(): void {
  document.documentElement.classList.remove('fetching');
}

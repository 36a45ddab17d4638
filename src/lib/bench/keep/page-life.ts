/** What happens to the page as a whole, and what is to be done then. */
export interface PageLife {
  /** It is out of sight, and may be ended without a word. */
  hidden(): void;
  shown(): void;
  /** It is being left; only what is done at once is done. */
  left(): void;
}

/** Tells of the page's life until the function that is returned is called. */
export function watchPage(life: PageLife): () => void {
  const turned = () => (document.visibilityState === 'hidden' ? life.hidden() : life.shown());
  const left = () => life.left();
  document.addEventListener('visibilitychange', turned);
  window.addEventListener('pagehide', left);
  return () => {
    document.removeEventListener('visibilitychange', turned);
    window.removeEventListener('pagehide', left);
  };
}

/** What users' browsers hold lies under this name already, and static/begin.js asks for it: it must not change. */
const RETURNING = 'backwave keeps a bench';

/** Lets the next page know before its first paint that a bench is kept here (static/begin.js). */
export function noteReturning(): void {
  try {
    localStorage.setItem(RETURNING, 'yes');
  } catch {
    // Then the demo bench is seen for a moment.
  }
}

/** Whether a bench that is kept here is still to come. */
export function isFetching(): boolean {
  return typeof document !== 'undefined' && document.documentElement.classList.contains('fetching');
}

/** What was kept is on the bench, or nothing is: the page need not be held back any longer. */
export function showBench(): void {
  document.documentElement.classList.remove('fetching');
}

/** What users' browsers hold lies under this name already, and static/begin.js asks for it: it must not change. */
const SEEN = 'backwave was seen here';
/** The class of the page's root that it sets before the first paint. */
const CLASS = 'seen';

/**
 * Whether the page has come to its first sound in this browser before: then its parts and its typefaces lie here, and nothing need
 * wait for the network's sake (docs/decisions/0025).
 */
export function seenBefore(): boolean {
  return typeof document !== 'undefined' && document.documentElement.classList.contains(CLASS);
}

/** The first sound is there: what waited for it may come, and need not wait the next time. */
export function noteSeen(): void {
  document.documentElement.classList.add(CLASS);
  try {
    localStorage.setItem(SEEN, 'yes');
  } catch {
    // Then the next page waits as well.
  }
}

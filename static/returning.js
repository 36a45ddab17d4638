// Runs before the first paint.
try {
  // Where a bench is kept in this browser, the page that comes with the demo bench is held back for a moment until the kept
  // one is in its place (docs/decisions/0011-where-benches-live.md).
  if (localStorage.getItem('backwave keeps a bench')) document.documentElement.classList.add('fetching');
  // Where the page was seen before, its typefaces lie in this browser and are shown from the beginning (docs/decisions/0025).
  if (localStorage.getItem('backwave was seen here')) document.documentElement.classList.add('seen');
} catch {
  // A browser that keeps nothing has nothing to fetch.
}

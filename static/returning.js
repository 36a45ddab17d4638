// Runs before the first paint: where a bench is kept in this browser, the page that comes with the demo bench is held
// back for a moment until the kept one is in its place (docs/decisions/0011-where-benches-live.md).
try {
  if (localStorage.getItem('backwave keeps a bench')) document.documentElement.classList.add('fetching');
} catch {
  // A browser that keeps nothing has nothing to fetch.
}

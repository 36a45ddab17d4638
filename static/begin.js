// Runs before the first paint, and before anything else of the page is there.
{
  let returns = false;
  try {
    // Where a bench is kept in this browser, the page that comes with the demo bench is held back for a moment until the kept
    // one is in its place (docs/decisions/0011-where-benches-live.md).
    returns = Boolean(localStorage.getItem('backwave keeps a bench'));
    if (returns) document.documentElement.classList.add('fetching');
    // Where the page was seen before, its typefaces lie in this browser and are shown from the beginning (docs/decisions/0025).
    if (localStorage.getItem('backwave was seen here')) document.documentElement.classList.add('seen');
  } catch {
    // A browser that keeps nothing has nothing to fetch.
  }
  try {
    // The first sound takes longest: its worker is begun here and makes it beside the page's own beginning (docs/decisions/0025). On a
    // bench that is kept there may be another sound, which is asked for once it is known.
    const { worker: address, asked } = JSON.parse(document.currentScript.dataset.firstSound);
    const worker = new Worker(new URL(address, location.href), { type: 'module' });
    const begun = { worker, failed: false };
    worker.onerror = () => (begun.failed = true);
    if (!returns) worker.postMessage(asked);
    globalThis.firstSound = begun;
  } catch {
    // The page tries it itself, and says what is wrong.
  }
}

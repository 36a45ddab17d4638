import { untrack } from 'svelte';
import { NewestWins } from '../workers/link/newest-wins.js';

/**
 * What `read` gives, a task later: so that the page answers the hand first and draws then, and several changes at once are drawn
 * once. Call while a component starts.
 */
export function aTaskLater<T>(read: () => T): { readonly current: T } {
  const latest = $derived.by(read);
  let shown = $state.raw(untrack(() => latest));
  const drawing = new NewestWins({
    replaces: 'waiting',
    pause: () => new Promise((resolve) => setTimeout(resolve))
  });
  $effect(() => {
    const newest = latest;
    if (newest === untrack(() => shown)) return drawing.withdraw();
    drawing.run(async () => {
      shown = newest;
    });
  });
  $effect(() => () => drawing.withdraw());

  return {
    get current() {
      return shown;
    }
  };
}

import { untrack } from 'svelte';
import { NewestWins } from '../workers/link/newest-wins.js';

const untilNextTask = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** Out of sight a page has no frames. */
const WITHOUT_FRAMES_MS = 100;

/** Until just before the next frame is painted: what is drawn then is in the very frame that shows the change. */
export const untilNextFrame = (): Promise<void> =>
  new Promise((resolve) => {
    requestAnimationFrame(() => resolve());
    setTimeout(resolve, WITHOUT_FRAMES_MS);
  });

/**
 * What `read` gives, a task later: so that the page answers the hand first and draws then, and several changes at once are drawn
 * once. Call while a component starts.
 *
 * @param pause what is waited for instead of the next task
 */
export function aTaskLater<T>(read: () => T, pause = untilNextTask): { readonly current: T } {
  const latest = $derived.by(read);
  let shown = $state.raw(untrack(() => latest));
  const drawing = new NewestWins({ replaces: 'waiting', pause });
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

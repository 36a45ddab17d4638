import { untrack } from 'svelte';

/**
 * What `read` gives, a task later: so that the page answers the hand first and draws then, and several changes at once are drawn
 * once. Call while a component starts.
 */
export function aTaskLater<T>(read: () => T): { readonly current: T } {
  const latest = $derived.by(read);
  let shown = $state.raw(untrack(() => latest));
  let waiting: ReturnType<typeof setTimeout> | undefined;
  $effect(() => {
    // one that waits already takes what is the latest then
    if (latest !== untrack(() => shown)) waiting ??= setTimeout(draw);
  });
  $effect(() => () => clearTimeout(waiting));

  function draw(): void {
    waiting = undefined;
    shown = latest;
  }

  return {
    get current() {
      return shown;
    }
  };
}

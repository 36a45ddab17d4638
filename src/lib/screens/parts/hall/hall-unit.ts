import { innerHeight, innerWidth } from 'svelte/reactivity/window';

/** The unit that all lengths of a view for a hall follow (`--u` in HallFrame.svelte), in pixels; of a small screen until the window is known. */
export function hallUnit(): number {
  return Math.min((innerHeight.current ?? 768) / 30, (innerWidth.current ?? 1024) / 24);
}

import { createContext } from 'svelte';
import type { MediaQuery } from 'svelte/reactivity';

/** A phone: one column, play and numerals in a bar at the bottom, the rest folded. */
export const [getNarrow, setNarrow] = createContext<MediaQuery>();

import { createContext } from 'svelte';
import type { Bench } from './bench.svelte.js';
import type { Sounding } from './sounding.svelte.js';

/** What the page hands down to its panels. */
export interface Workshop {
  bench: Bench;
  sounding: Sounding;
}

export const [getWorkshop, setWorkshop] = createContext<Workshop>();

import { createContext } from 'svelte';
import type { Keeper } from './keeper.svelte.js';

/** What keeps benches: in this browser and in files. */
export const [getKeeper, setKeeper] = createContext<Keeper>();

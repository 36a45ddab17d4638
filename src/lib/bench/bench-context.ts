import { createContext } from 'svelte';
import type { Bench } from './bench.svelte.js';

/** The bench that a screen shows and changes. */
export const [getBench, setBench] = createContext<Bench>();

import { createContext } from 'svelte';
import type { Growth } from './growth.svelte.js';

/** The growing plate. */
export const [getGrowth, setGrowth] = createContext<Growth>();

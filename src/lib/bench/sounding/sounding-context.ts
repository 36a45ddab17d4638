import { createContext } from 'svelte';
import type { Sounding } from './sounding.svelte.js';

/** What sounds, how loud, and what is known of its levels. */
export const [getSounding, setSounding] = createContext<Sounding>();

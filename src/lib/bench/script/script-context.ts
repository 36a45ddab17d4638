import { createContext } from 'svelte';
import type { Script } from './script.svelte.js';

/** The hall's script that a screen shows, changes and runs. */
export const [getScript, setScript] = createContext<Script>();

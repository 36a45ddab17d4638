import { createContext } from 'svelte';
import type { AirAround } from './air-around.svelte.js';

/** The waves in the air around the heard mount. */
export const [getAirAround, setAirAround] = createContext<AirAround>();

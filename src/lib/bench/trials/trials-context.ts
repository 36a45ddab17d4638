import { createContext } from 'svelte';
import type { Trials } from './trials.svelte.js';

export const [getTrials, setTrials] = createContext<Trials>();

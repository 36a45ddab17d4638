import { createContext } from 'svelte';
import type { WaveAnswers } from '../../../evaluation/wave-answers.svelte.js';

/** What is known of the wave solution of the mounts. */
export const [getWaveAnswers, setWaveAnswers] = createContext<WaveAnswers>();

import { createContext } from 'svelte';
import type { MediaQuery } from 'svelte/reactivity';
import type { Bench } from '../../bench/bench.svelte.js';
import type { Growth } from '../../bench/growth.svelte.js';
import type { Keeper } from '../../bench/keep/keeper.svelte.js';
import type { AirAround } from '../../bench/air/air-around.svelte.js';
import type { WaveAnswers } from '../../evaluation/wave-answers.svelte.js';
import type { Sounding } from '../../bench/sounding/sounding.svelte.js';

/** What the page hands down to its panels. */
export interface Workshop {
  bench: Bench;
  sounding: Sounding;
  /** What is known of the wave solution of the mounts. */
  waves: WaveAnswers;
  air: AirAround;
  growth: Growth;
  keeper: Keeper;
  /** A phone: one column, play and numerals in a bar at the bottom, the rest folded. */
  narrow: MediaQuery;
}

export const [getWorkshop, setWorkshop] = createContext<Workshop>();

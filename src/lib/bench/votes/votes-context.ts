import { createContext } from 'svelte';
import type { Votes } from './votes.svelte.js';

export const [getVotes, setVotes] = createContext<Votes>();

import { answerOf, models, whereItListens } from '../../evaluation/models.js';
import { filterFor, type Stand } from '../../evaluation/stand.js';
import type { Setup } from '../../file/bench-file.js';
import type { Bench } from '../bench.svelte.js';
import type { BenchGain } from './bench-gain.svelte.js';
import type { Levels } from './levels.svelte.js';
import type { Playback } from './playback.svelte.js';

/** A mount that cannot be built is silent. */
const SILENT_FILTER = new Float32Array(2048);

/** What the branches of the room are filled from. */
export interface BranchParts {
  bench: Pick<Bench, 'file' | 'listener' | 'sampleRate'>;
  levels: Pick<Levels, 'levelling'>;
  gain: Pick<BenchGain, 'hasRoomFor'>;
  playback: Pick<Playback, 'room'>;
}

/** The branches of the room: every mount reaches it as one impulse response, whichever model made it. */
export class Branches {
  #parts: BranchParts;
  /** What each branch filters with, so that only those are loaded again that change. */
  #loaded: { setup: Setup; filter: Float32Array; gain: number }[] = [];

  constructor(parts: BranchParts) {
    this.#parts = parts;
  }

  /** Keeps them and what is heard of them in step. Call while a component starts. */
  connect(stands: () => readonly Stand[]): void {
    const { bench, playback } = this.#parts;
    $effect(() => this.load(stands()));

    $effect(() => {
      // Read before the room is asked for: where there is none yet, nothing behind `?.` would be seen.
      const { heard } = bench.file.view;
      playback.room?.hear(heard);
    });
  }

  load(stands: readonly Stand[]): void {
    for (const stand of stands) this.#load(stand);
  }

  #load(stand: Stand): void {
    const { bench, levels, gain, playback } = this.#parts;
    const loaded = this.#loaded[stand.index];
    const { room } = playback;
    if (!room) return;
    const filter = gain.hasRoomFor(stand) ? filterOf(stand) : this.#meanwhile(stand);
    const factor = bench.file.view.sameLoudness ? levels.levelling(stand) : 1;
    if (loaded?.filter === filter && loaded.gain === factor) return;
    this.#loaded[stand.index] = { setup: stand.setup, filter, gain: factor };
    room.setBranch(stand.index, factor === 1 ? filter : filter.map((sample) => sample * factor));
  }

  /** What is heard before there is room for what the model says: what was heard of these sizes, or what stands in. */
  #meanwhile({ index, setup, installation }: Stand): Float32Array {
    const loaded = this.#loaded[index];
    if (loaded?.setup === setup) return loaded.filter;
    const { file, listener, sampleRate } = this.#parts.bench;
    const { standIn } = models[file.view.model];
    if (standIn === null) return SILENT_FILTER;
    const question = { installation, air: file.air, listener: whereItListens(standIn, listener) };
    return filterFor(answerOf(standIn, question, null), sampleRate);
  }
}

function filterOf({ computed }: Stand): Float32Array {
  return computed?.impulseResponse ?? SILENT_FILTER;
}

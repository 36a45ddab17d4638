import { type TurnedPair, turnedPair } from '../../evaluation/turned-pair.js';
import type { Stand } from '../../evaluation/stand.js';
import type { Lufs } from '../../units.js';
import type { LabClient } from '../../workers/sound/client.js';
import type { Bench } from '../bench.svelte.js';
import type { Elsewhere } from '../elsewhere.svelte.js';
import { Levels } from './levels.svelte.js';
import type { Loop } from './sound-cache.js';

/** What the ranking of the mounts is told from. */
export interface RankingParts {
  bench: Pick<Bench, 'file' | 'stands'>;
  elsewhere: Pick<Elsewhere, 'stands' | 'known'> | null;
  /** Where they are heard. */
  levels: Pick<Levels, 'loudness' | 'of'>;
  lab: Pick<LabClient, 'ask'>;
  tell: (problem: unknown) => void;
}

/** What turns over in the ranking of the mounts between the hand and the layout, on the sound that plays. */
export class TurnedRanking {
  #parts: RankingParts;
  #loop: () => Loop | null = () => null;
  #there: Levels;

  constructor(parts: RankingParts) {
    this.#parts = parts;
    this.#there = new Levels(parts.lab, parts.tell);
  }

  /** Measures the other place once all is known of it. Call while a component starts. */
  connect(current: () => Loop | null): void {
    this.#loop = current;
    $effect(() => {
      const loop = current();
      const { elsewhere } = this.#parts;
      if (loop && elsewhere?.known && this.#isKnownHere)
        this.#there.measure({ loop, stands: [...elsewhere.stands] });
    });
  }

  /** Null where nothing turns over; undefined as long as one of the places is not known. */
  get pair(): TurnedPair | null | undefined {
    const { bench, elsewhere, levels } = this.#parts;
    if (!elsewhere?.known || !this.#isKnownHere || !this.#isKnownThere) return undefined;
    // What stands in for a refused solution knows nothing of a board.
    const told = (of: readonly Stand[], loudness: readonly (Lufs | null)[]): (Lufs | null)[] =>
      of.map(({ refused }, i) => (refused ? null : loudness[i]));
    const here = told(bench.stands, levels.loudness);
    const there = told(elsewhere.stands, this.#there.loudness);
    return bench.file.listener.board ? turnedPair(there, here) : turnedPair(here, there);
  }

  get #isKnownHere(): boolean {
    const { bench, levels } = this.#parts;
    return levels.of !== null && levels.of.loop === this.#loop() && levels.of.stands === bench.stands;
  }

  get #isKnownThere(): boolean {
    const { of } = this.#there;
    const { stands } = this.#parts.elsewhere!;
    return of !== null && of.loop === this.#loop() && of.stands.every((stand, i) => stand === stands[i]);
  }
}

import type { SoundFigures } from '../../listening/sound-figures.js';
import { NewestWins } from '../../workers/link/newest-wins.js';
import type { Loop } from './sound-cache.js';

/** A loop with what was measured of it. */
export type Measured = Omit<Loop, 'figures'> & { figures: SoundFigures };

/**
 * The loop that plays with its figures, which come after its sound and its levels: nothing that is heard waits for them. While they are being
 * measured the last ones stay, with the loop that they are of.
 */
export class MeasuredLoop {
  /** Null until there is one, and where there is no loop. */
  current = $state.raw<Measured | null>(null);

  #newest: NewestWins;

  /** `tell` hears why the worker could not answer. */
  constructor(tell: (error: unknown) => void) {
    this.#newest = new NewestWins({ replaces: 'running', tell });
  }

  /** Follows the loop that it is given. Call while a component starts. */
  connect(loop: () => Loop | null): void {
    $effect(() => {
      const now = loop();
      if (!now) {
        this.#newest.withdraw();
        this.current = null;
        return;
      }
      this.#newest.run(async (signal) => {
        const figures = await now.figures();
        if (!signal.aborted) this.current = { ...now, figures };
      });
    });
  }
}

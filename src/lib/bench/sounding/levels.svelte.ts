import type { Decibels, Lufs } from '../../units.js';
import type { LabClient } from '../../workers/sound/client.js';
import type { Stand } from '../../evaluation/stand.js';
import type { Loop } from './loops.js';

/** The most that levelling takes away: 30 dB. */
const LEAST_LEVELLING = 10 ** (-30 / 20);

/** What is to be measured: this loop behind these stands. */
interface Wish {
  loop: Loop;
  stands: Stand[];
}

/**
 * How loud each stand is on the sound that plays, measured by the worker. One question is under way at a time
 * and the newest wish waits, so that the figures follow a drag instead of waiting for its end.
 */
export class Levels {
  /** Integrated loudness by stand; the last known one while a newer is being measured. */
  loudness = $state.raw<(Lufs | null)[]>([]);

  #lab: LabClient;
  #known = new WeakMap<Float32Array, { key: string; loudness: Lufs }>();
  #wish: Wish | null = null;
  #busy = false;

  constructor(lab: LabClient) {
    this.#lab = lab;
  }

  /** How much louder a stand is than another; null until both are measured or where one of them is silent. */
  difference(stand: Stand, against: Stand): Decibels | null {
    const [level, reference] = [this.loudness[stand.index], this.loudness[against.index]];
    if (level === undefined || reference === undefined || level === null || reference === null) return null;
    return Number.isFinite(level) && Number.isFinite(reference) ? level - reference : null;
  }

  /**
   * What brings a stand down to the loudness of the quietest: never above 1, so that no peak grows, and never below
   * a thirtieth, so that a stand that lets almost nothing through does not silence the others. 1 until measured.
   */
  levelling(stand: Stand): number {
    const level = this.loudness[stand.index];
    const all = this.loudness.filter((one): one is number => one !== null && Number.isFinite(one));
    if (level === undefined || level === null || !Number.isFinite(level)) return 1;
    return Math.max(10 ** ((Math.min(...all) - level) / 20), LEAST_LEVELLING);
  }

  /** Forgets what was measured: there is no sound. */
  forget(): void {
    this.loudness = [];
  }

  /** Measures what is not known yet. Rejects where the worker could not answer. */
  async measure(wish: Wish): Promise<void> {
    this.#wish = wish;
    if (this.#busy) return;
    this.#busy = true;
    try {
      while (this.#wish) {
        const current: Wish = this.#wish;
        this.#wish = null;
        try {
          await this.#ask(current);
        } catch (error) {
          // What went wrong with a sound that has been replaced since is of no concern.
          if (!this.#wish) throw error;
        }
      }
    } finally {
      this.#busy = false;
    }
  }

  async #ask({ loop, stands }: Wish): Promise<void> {
    const filters = stands.map(({ computed }) => computed?.impulseResponse ?? null);
    const missing = filters.filter(
      (filter) => filter !== null && this.#known.get(filter)?.key !== loop.key
    ) as Float32Array[];
    if (missing.length > 0) {
      const heard = await this.#lab.ask({ kind: 'heardThrough', key: loop.key, impulseResponses: missing });
      missing.forEach((filter, i) => this.#known.set(filter, { key: loop.key, loudness: heard[i].loudness }));
    }
    this.loudness = filters.map((filter) => (filter && this.#known.get(filter)?.loudness) ?? null);
  }
}

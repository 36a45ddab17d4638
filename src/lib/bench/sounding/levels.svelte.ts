import type { Decibels, Lufs } from '../../units.js';
import type { LabClient } from '../../workers/sound/client.js';
import { NewestWins } from '../../workers/link/newest-wins.js';
import type { Stand } from '../../evaluation/stand.js';
import type { Loop } from './sound-cache.js';

/** The most that levelling takes away: 30 dB. */
export const LEAST_LEVELLING = 10 ** (-30 / 20);

/** What is to be measured: this loop behind these stands. */
interface Wanted {
  loop: Loop;
  stands: Stand[];
}

/**
 * How loud each stand is on the sound that plays, measured by the worker. One question is under way at a time
 * and the newest waits, so that the figures follow a drag instead of waiting for its end.
 */
export class Levels {
  /** Integrated loudness by stand; the last known one while a newer is being measured. */
  loudness = $state.raw<(Lufs | null)[]>([]);
  /** What they were measured of. */
  of = $state.raw<Wanted | null>(null);

  #lab: Pick<LabClient, 'ask'>;
  #known = new WeakMap<Float32Array, { key: string; loudness: Lufs }>();
  #newest: NewestWins;

  /** `tell` hears why the worker could not answer. */
  constructor(lab: Pick<LabClient, 'ask'>, tell: (error: unknown) => void) {
    this.#lab = lab;
    this.#newest = new NewestWins({ replaces: 'waiting', tell });
  }

  /** How loud the stand at this place is, before it is brought to any common loudness; null where it is not known. */
  loudnessOf(place: number): Lufs | null {
    return this.loudness[place] ?? null;
  }

  /** Whether they are those of this loop behind these stands. */
  areOf(loop: Loop | null, stands: readonly Stand[]): boolean {
    return this.of?.loop === loop && this.of?.stands === stands;
  }

  /** How much louder a stand is than another; null until both are measured or where one of them is silent. */
  difference(stand: Stand, against: Stand): Decibels | null {
    const [level, reference] = [this.loudnessOf(stand.index), this.loudnessOf(against.index)];
    return isHeard(level) && isHeard(reference) ? level - reference : null;
  }

  /**
   * What brings a stand down to the loudness of the quietest: never above 1, so that no peak grows, and never below
   * a thirtieth, so that a stand that lets almost nothing through does not silence the others. 1 until measured. With `among`, the
   * quietest of those places.
   */
  levelling(stand: Stand, among?: readonly number[]): number {
    const level = this.loudnessOf(stand.index);
    if (!isHeard(level)) return 1;
    const compared = among ? among.map((place) => this.loudnessOf(place)) : this.loudness;
    const all = compared.filter(isHeard);
    return Math.max(10 ** ((Math.min(...all) - level) / 20), LEAST_LEVELLING);
  }

  /** Forgets what was measured: there is no sound. */
  forget(): void {
    this.loudness = [];
    this.of = null;
  }

  /** Follows the loop and the stands. Call while a component starts. */
  connect(wanted: () => { loop: Loop | null; stands: Stand[] }): void {
    $effect(() => {
      const { loop, stands } = wanted();
      if (loop) this.measure({ loop, stands });
      // While the first one is being made, what it will be heard through.
      else for (const { computed } of stands) void computed?.impulseResponse;
    });
  }

  /** Measures what is not known yet. */
  measure(wanted: Wanted): void {
    this.#newest.run(() => this.#ask(wanted));
  }

  async #ask(wanted: Wanted): Promise<void> {
    const { loop, stands } = wanted;
    const filters = stands.map(({ computed }) => computed?.impulseResponse ?? null);
    const missing = filters.filter(
      (filter) => filter !== null && this.#known.get(filter)?.key !== loop.key
    ) as Float32Array[];
    if (missing.length > 0) {
      const { key } = loop;
      const levels = await this.#lab.ask({ kind: 'loudnessThrough', key, impulseResponses: missing });
      missing.forEach((filter, i) => this.#known.set(filter, { key, loudness: levels[i] }));
    }
    this.loudness = filters.map((filter) => (filter && this.#known.get(filter)?.loudness) ?? null);
    this.of = wanted;
  }
}

/** It is measured, and not silent. */
function isHeard(level: Lufs | null): level is Lufs {
  return level !== null && Number.isFinite(level);
}

import type { Bench } from '../bench.svelte.js';
import type { Playback } from './playback.svelte.js';

/** Which mount is heard: the one that the bench names, or one of those among which somebody listens blind, which nothing names. */
export class Hearing {
  /** The places among which one listens blind; null: the bench names what is heard. */
  among = $state.raw<readonly number[] | null>(null);
  /** Whether those are as loud as the quietest of them. */
  levelled = $state(true);

  #bench: Pick<Bench, 'file'>;
  #playback: Pick<Playback, 'room'>;
  #unnamed: number | null = null;

  constructor(bench: Pick<Bench, 'file'>, playback: Pick<Playback, 'room'>) {
    this.#bench = bench;
    this.#playback = playback;
  }

  /** Its place among the mounts. */
  get place(): number {
    return this.#unnamed ?? this.#bench.file.view.heard;
  }

  /**
   * Listens blind among these places, all as loud as the quietest of them or all at the same drive; null goes back to the mount that the
   * bench names.
   */
  listenBlind(places: readonly number[] | null, { levelled = true }: { levelled?: boolean } = {}): void {
    this.among = places;
    this.levelled = levelled;
    this.#unnamed = null;
  }

  /** Hears one of the places among which one listens blind, across a moment of silence. */
  hearBlindly(place: number): void {
    this.#unnamed = place;
    this.#playback.room?.hearAcrossPause(place);
  }

  /** Keeps the room in step with what the bench names. Call while a component starts. */
  connect(): void {
    $effect(() => {
      // Read before the room is asked for: where there is none yet, nothing behind `?.` would be seen.
      const { heard } = this.#bench.file.view;
      if (!this.among) this.#playback.room?.hear(heard);
    });
  }
}

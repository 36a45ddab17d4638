import type { BenchSound } from '../../file/bench-file.js';
import type { Hertz } from '../../units.js';
import { NewestWins } from '../../workers/link/newest-wins.js';
import type { Bench } from '../bench.svelte.js';
import type { Playback } from './playback.svelte.js';
import type { SoundCache } from './sound-cache.js';

/** The horn or whistle on the cord: which one the bench's sound has, and whether it is blown. */
export class Horn {
  blowing = $state(false);

  #bench: Pick<Bench, 'file' | 'sampleRate'>;
  #cache: Pick<SoundCache, 'horn'>;
  #playback: Pick<Playback, 'playing' | 'room' | 'tell'>;
  #newest: NewestWins;

  constructor(
    bench: Pick<Bench, 'file' | 'sampleRate'>,
    cache: Pick<SoundCache, 'horn'>,
    playback: Pick<Playback, 'playing' | 'room' | 'tell'>
  ) {
    this.#bench = bench;
    this.#cache = cache;
    this.#playback = playback;
    this.#newest = new NewestWins({ replaces: 'running', tell: playback.tell });
  }

  /** The bench's sound by itself: it stays the same one while other things are edited. */
  readonly #sound: BenchSound = $derived.by(() => this.#bench.file.sound);

  /** Keeps it in step with the sound while it plays. Call while a component starts. */
  connect(): void {
    $effect(() => {
      const [sound, { sampleRate }] = [this.#sound, this.#bench];
      if (!this.#playback.playing) return;
      this.#newest.run((signal) => this.#load(sound, sampleRate, signal));
      return () => this.#newest.withdraw();
    });
  }

  /** Hands the room what its cord is to blow before the first sound. */
  prepare(sound: BenchSound): Promise<void> {
    return this.#load(sound, this.#bench.sampleRate);
  }

  blow(on: boolean): void {
    if (on === this.blowing || (on && !this.#playback.playing)) return;
    this.blowing = on;
    this.#playback.room?.blow(on);
  }

  async #load(sound: BenchSound, sampleRate: Hertz, signal?: AbortSignal): Promise<void> {
    const { samples, loopFrom } = await this.#cache.horn(sound, sampleRate);
    if (!signal?.aborted) this.#playback.room?.setHorn(samples, loopFrom);
  }
}

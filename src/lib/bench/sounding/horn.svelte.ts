import type { BenchSound } from '../../file/bench-file.js';
import type { Hertz } from '../../units.js';
import { NewestWins } from '../../workers/link/newest-wins.js';
import type { Bench } from '../bench.svelte.js';
import type { BenchGain } from './bench-gain.svelte.js';
import type { Playback } from './playback.svelte.js';
import type { SoundCache } from './sound-cache.js';

export interface HornParts {
  bench: Pick<Bench, 'file' | 'sampleRate'>;
  cache: Pick<SoundCache, 'horn'>;
  playback: Pick<Playback, 'playing' | 'room' | 'tell'>;
  /** Whether the bench has room for it on top of its sound. */
  gain: Pick<BenchGain, 'hasRoomForAll'>;
}

/** The horn or whistle on the cord: which one the bench's sound has, and whether it is blown. */
export class Horn {
  blowing = $state(false);

  /** Whether there is one in the room: the first comes after the first sound. */
  #ready = $state(false);
  #parts: HornParts;
  #newest: NewestWins;

  constructor(parts: HornParts) {
    this.#parts = parts;
    this.#newest = new NewestWins({ replaces: 'running', tell: parts.playback.tell });
  }

  /** The bench's sound by itself: it stays the same one while other things are edited. */
  readonly #sound: BenchSound = $derived.by(() => this.#parts.bench.file.sound);

  /** Keeps it in step with the sound while it plays. Call while a component starts. */
  connect(): void {
    $effect(() => {
      const { bench, playback, gain } = this.#parts;
      const [sound, { sampleRate }] = [this.#sound, bench];
      if (!playback.playing || !gain.hasRoomForAll) return;
      this.#newest.run((signal) => this.#load(sound, sampleRate, signal));
      return () => this.#newest.withdraw();
    });
  }

  /** Whether something plays, with a horn on its cord. */
  get canBlow(): boolean {
    return this.#ready && this.#parts.playback.playing;
  }

  blow(on: boolean): void {
    if (on === this.blowing || (on && !this.canBlow)) return;
    this.blowing = on;
    this.#parts.playback.room?.blow(on);
  }

  /** Hands the room what its cord is to blow. */
  async #load(sound: BenchSound, sampleRate: Hertz, signal: AbortSignal): Promise<void> {
    const { cache, playback } = this.#parts;
    const { samples, loopFrom } = await cache.horn(sound, sampleRate);
    if (signal.aborted || !playback.room) return;
    playback.room.setHorn(samples, loopFrom);
    this.#ready = true;
  }
}

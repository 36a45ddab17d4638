import { untrack } from 'svelte';
import type { BenchSound } from '../../file/bench-file.js';
import type { GeneratedSound } from '../../sounds/kinds.js';
import type { Hertz } from '../../units.js';
import { NewestWins } from '../../workers/link/newest-wins.js';
import type { Bench } from '../bench.svelte.js';
import type { BenchGain } from './bench-gain.svelte.js';
import type { Recording } from './open-recording.js';
import type { OwnRecording } from './own-recording.svelte.js';
import type { Playback } from './playback.svelte.js';
import { Player } from './player.js';
import type { Loop, SoundCache } from './sound-cache.js';

/** One change is followed at once; of changes that come faster than this, only one that stays for so long. */
const SETTLING_MS = 80;

/** What decides which loop plays. */
export interface LoopParts {
  bench: Pick<Bench, 'file' | 'sampleRate'>;
  recording: Pick<OwnRecording, 'current'>;
  cache: Pick<SoundCache, 'loop' | 'ride'>;
  gain: Pick<BenchGain, 'makeRoom' | 'findAnew'>;
  playback: Pick<Playback, 'playing' | 'room' | 'tell'>;
  /** Whether the bench is the one that is to be heard. */
  ready: () => boolean;
  /** Told that the bench's sound is a recording whose file is not open. */
  gone: () => void;
}

/** The loop of the bench's sound: fetched, faded to or ridden to while it plays, its gain first. */
export class PlayedLoop {
  /** Null until there is one, and where the file of a recording is not open. */
  current = $state.raw<Loop | null>(null);
  /** The sound whose loop that is. */
  of = $state.raw<BenchSound | null>(null);

  /** A sound that is tried: while it plays it is heard in the place of the bench's, which stays as it is. */
  tried = $state.raw<GeneratedSound | null>(null);

  #parts: LoopParts;
  /** Whether room was made for a sound that is tried. */
  #roomForTried = false;
  #player: Player | null = null;
  #fetching: NewestWins;
  #changing: NewestWins;
  #changedAt = -Infinity;

  constructor(parts: LoopParts) {
    this.#parts = parts;
    const { tell } = parts.playback;
    this.#fetching = new NewestWins({ replaces: 'running', pause: () => this.#settling(), tell });
    this.#changing = new NewestWins({ replaces: 'running', tell });
  }

  /** The bench's sound by itself: it stays the same one while other things are edited. */
  readonly #sound: BenchSound = $derived.by(() => this.#parts.bench.file.sound);

  /** Keeps it in step with the sound. Call while a component starts. */
  connect(): void {
    const { bench, recording, playback, ready } = this.#parts;
    $effect(() => {
      if (!ready()) return;
      const [sound, own, { sampleRate }] = [this.#sound, recording.current, bench];
      untrack(() => this.#fetching.run((signal) => this.#follow(sound, own, sampleRate, signal)));
      return () => this.#fetching.withdraw();
    });

    $effect(() => {
      const { current, tried } = this;
      if (!current || !playback.playing) return;
      if (tried) {
        untrack(() => this.#changing.run((signal) => this.#try(tried, signal)));
        return () => this.#changing.withdraw();
      }
      if (current === this.#playerInRoom().loop) return;
      // What was chosen while the first sound was being made ready.
      untrack(() => this.#changing.run((signal) => this.#change(current, signal)));
      return () => this.#changing.withdraw();
    });
  }

  /**
   * The loop of this sound, before the first sound.
   * @throws Error with one plain sentence where its file is not open
   */
  async prepare(sound: BenchSound): Promise<Loop> {
    const { bench, recording, cache } = this.#parts;
    const loop = await cache.loop(sound, recording.current, bench.sampleRate);
    if (!loop) throw new Error('Choose a sound first: your recording is not open any more.');
    [this.current, this.of] = [loop, sound];
    return loop;
  }

  /** Has it sound in the room, without a fade. */
  begin(loop: Loop): void {
    this.#playerInRoom().exchange(loop, 0);
  }

  async #follow(
    sound: BenchSound,
    own: Recording | null,
    sampleRate: Hertz,
    signal: AbortSignal
  ): Promise<void> {
    const { cache, playback, gone } = this.#parts;
    const ridden = playback.playing ? await this.#playerInRoom().ride(sound, sampleRate, signal) : null;
    if (signal.aborted) return;
    const loop = ridden ?? (await cache.loop(sound, own, sampleRate));
    if (signal.aborted) return;
    // It is heard before it is drawn.
    if (loop && playback.playing && loop !== this.#playerInRoom().loop) await this.#change(loop, signal);
    if (signal.aborted) return;
    [this.current, this.of] = [loop, sound];
    if (!loop) gone();
  }

  /** Fades to a sound that is tried, as long as it is. */
  async #try(sound: GeneratedSound, signal: AbortSignal): Promise<void> {
    const { bench, cache } = this.#parts;
    const loop = await cache.loop(sound, null, bench.sampleRate);
    if (signal.aborted || !loop) return;
    this.#roomForTried = true;
    await this.#change(loop, signal);
  }

  /** Fades to another loop, its gain first. */
  async #change(loop: Loop, signal: AbortSignal): Promise<void> {
    await this.#parts.gain.makeRoom(loop, signal);
    if (signal.aborted) return;
    this.#playerInRoom().exchange(loop);
    if (!this.#roomForTried || this.tried) return;
    // What was tried has gone: the bench is as loud as before.
    this.#roomForTried = false;
    this.#parts.gain.findAnew();
  }

  /** A lever on its way renders nothing at the notches it only passes. */
  #settling(): Promise<void> | null {
    const now = performance.now();
    const hasty = now - this.#changedAt < 2 * SETTLING_MS;
    this.#changedAt = now;
    return hasty ? new Promise((resolve) => setTimeout(resolve, SETTLING_MS)) : null;
  }

  /** Only to be asked for once the room is open. */
  #playerInRoom(): Player {
    return (this.#player ??= new Player(this.#parts.playback.room!, this.#parts.cache));
  }
}

import { noiseGain, noiseLevelDb } from '../../evaluation/place-noise.js';
import { zeroOfBenchDb } from '../../evaluation/sound-level.js';
import { peak } from '../../listening/peak.js';
import type { PlaceKind } from '../../sounds/places/place-spectra.js';
import type { Hertz } from '../../units.js';
import { NewestWins } from '../../workers/link/newest-wins.js';
import type { LabClient } from '../../workers/sound/client.js';
import type { Bench } from '../bench.svelte.js';
import { mostDrive } from './branches.svelte.js';
import type { Playback } from './playback.svelte.js';
import type { Measured } from './measured-loop.svelte.js';

export interface PlaceSoundParts {
  bench: Pick<Bench, 'file' | 'listener' | 'stands' | 'measuredAgainst' | 'sampleRate'>;
  lab: Pick<LabClient, 'ask'>;
  playback: Pick<Playback, 'playing' | 'room' | 'tell'>;
  /** The peak beside the mounts for which the bench has room. */
  roomBeside: () => number;
}

/** The bench has become softer by then, and the noise may become louder. */
const ROOM_MADE_MS = 350;

/** The noise of the place behind the engine, at its level against it. */
export class PlaceSound {
  #parts: PlaceSoundParts;
  #loop: () => Measured | null = () => null;
  #made = $state.raw<{ place: PlaceKind; sampleRate: Hertz; samples: Float32Array; peak: number } | null>(
    null
  );
  #rendering: NewestWins;
  #inRoom: Float32Array | null = null;
  #level = 0;

  constructor(parts: PlaceSoundParts) {
    this.#parts = parts;
    this.#rendering = new NewestWins({ replaces: 'running', tell: parts.playback.tell });
  }

  /** The factor on its samples; 0 where none is to be heard. */
  readonly #gain: number = $derived.by(() => {
    const { bench } = this.#parts;
    const { noise } = bench.file;
    const loop = this.#loop();
    if (!noise?.heard || !loop) return 0;
    const meanSquare = loop.figures.power.reduce((a, b) => a + b, 0);
    if (!(meanSquare > 0)) return 0;
    const { speaker } = bench.measuredAgainst.installation;
    const zero = zeroOfBenchDb(speaker, bench.file, bench.listener);
    return noiseGain(
      noiseLevelDb({ kind: noise.place, levelDb: noise.levelDb }),
      zero,
      meanSquare,
      mostDrive(bench.stands)
    );
  });

  /** The highest peak of what is to be heard of it. */
  get peak(): number {
    return this.#made ? this.#gain * this.#made.peak : 0;
  }

  /** Keeps it in step with the bench. Call while a component starts. */
  connect(loop: () => Measured | null): void {
    this.#loop = loop;
    const { bench, lab, playback, roomBeside } = this.#parts;
    const place = $derived(bench.file.noise?.heard ? bench.file.noise.place : null);
    $effect(() => {
      const { sampleRate } = bench;
      const wanted = place;
      if (!wanted) return;
      this.#rendering.run(async (signal) => {
        const samples = await lab.ask({ kind: 'place', place: wanted, sampleRate });
        if (!signal.aborted) this.#made = { place: wanted, sampleRate, samples, peak: peak(samples) };
      });
    });
    $effect(() => {
      const made = this.#made;
      // What is being made for another place is not heard meanwhile.
      const wanted = made && made.place === place ? this.#gain : 0;
      const room = playback.playing ? playback.room : null;
      if (!room) return;
      if (made && this.#inRoom !== made.samples) room.setNoise((this.#inRoom = made.samples));
      const level = made ? Math.min(wanted, roomBeside() / made.peak) : 0;
      if (level === this.#level) return;
      const set = (): void => room.setNoiseLevel((this.#level = level));
      if (level < this.#level) return set();
      const timer = setTimeout(set, ROOM_MADE_MS);
      return () => clearTimeout(timer);
    });
  }
}

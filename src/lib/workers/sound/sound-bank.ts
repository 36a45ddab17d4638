import { loopLoudness } from '../../listening/loudness.js';
import type { Signal } from '../../sounds/driving.js';
import { type GeneratedSound, isMoving, type MovingSound } from '../../sounds/kinds.js';
import type { Motion } from '../../sounds/motion/motion.js';
import { renderLoop, renderRide, type Ride } from '../../sounds/motion/ride.js';
import { renderRunPast } from '../../sounds/motion/run-past.js';
import { type Horn, HORN_PRESETS } from '../../sounds/signals/horn.js';
import { renderHeldHorn } from '../../sounds/signals/render-held-horn.js';
import { renderHeldWhistle } from '../../sounds/steam/held-whistle.js';
import { WHISTLE_PRESETS } from '../../sounds/steam/whistle-presets.js';
import { machineKey, soundKey } from '../../sounds/sound-key.js';
import { movingSource, stillSource } from '../../sounds/sources.js';
import type { Hertz, Lufs } from '../../units.js';
import { LruCache } from '../../numeric/lru-cache.js';

/** Every sound is brought to this loudness (BS.1770-5); a machine at the middle of its lever. */
export const ALIGNED: Lufs = -23;
/** A horn stands out of the machine that blows it. */
const BLAST: Lufs = -20;
/** Where a machine's loudness is aligned. */
const MIDDLE_NOTCH = 4;
/** So many loops and gains of machines are kept for the next question. */
const KEPT = { loops: 12, gains: 200 };

/**
 * The gain that brings a loop to a loudness (BS.1770-5); at most 40 dB, so that what is all but silent is not made
 * a sound of, and 1 for silence.
 */
export function aligningGain(samples: Float32Array, sampleRate: Hertz, to: Lufs = ALIGNED): number {
  const loudness = loopLoudness(samples, sampleRate);
  return Number.isFinite(loudness) ? Math.min(100, 10 ** ((to - loudness) / 20)) : 1;
}

/** Makes the sounds, brings them to one loudness, and remembers the newest ones. */
export class SoundBank {
  readonly #machines = new LruCache<Float32Array>(KEPT.loops);
  readonly #gains = new LruCache<number>(KEPT.gains);

  /** Makes a machine's loop that is asked for next, and finds its gain; of other sounds nothing is kept. */
  prepare(sound: GeneratedSound, sampleRate: Hertz): void {
    if (!isMoving(sound)) return;
    this.#machine(sound, sampleRate);
    this.#gainOf(sound, sampleRate);
  }

  /** One seamless loop of a sound, aligned in loudness. */
  loop(sound: GeneratedSound, sampleRate: Hertz): Float32Array {
    if (!isMoving(sound)) {
      const samples = stillSource(sound).render(sound, sampleRate);
      return scaled(samples, aligningGain(samples, sampleRate));
    }
    const gain = this.#gainOf(sound, sampleRate);
    if (!sound.runPast) return this.#machine(sound, sampleRate).map((x) => gain * x);
    return renderRunPast(movingSource(sound), sound, sampleRate, gain, this.blast(sound.signal, sampleRate));
  }

  /** A machine on its way from how it runs to its notch, and its loop there. */
  ride(sound: MovingSound, from: Motion, sampleRate: Hertz): Ride {
    const loop = this.#machine(sound, sampleRate);
    const ride = renderRide(movingSource(sound), sound, from, sampleRate, loop);
    return { ...ride, samples: scaled(ride.samples, this.#gainOf(sound, sampleRate)) };
  }

  /** What the cord blows: its beginning, and the loop that is held. */
  blast(signal: Signal, sampleRate: Hertz): Ride {
    const ride =
      signal === 'whistle'
        ? renderHeldWhistle(WHISTLE_PRESETS[0], sampleRate)
        : renderHeldHorn(hornOf(signal === 'three-note horn' ? 3 : 5), sampleRate);
    const gain = aligningGain(ride.samples.subarray(ride.loopFrom), sampleRate, BLAST);
    return { ...ride, samples: scaled(ride.samples, gain) };
  }

  /** The loop of a machine at its notch as it is made. Not to be written to. */
  #machine(sound: MovingSound, sampleRate: Hertz): Float32Array {
    const key = `${soundKey({ ...sound, runPast: false })} ${sampleRate}`;
    const known = this.#machines.get(key) ?? renderLoop(movingSource(sound), sound, sampleRate);
    this.#machines.set(key, known);
    return known;
  }

  /** What brings a machine to the common loudness; the same at all its notches. */
  #gainOf(sound: MovingSound, sampleRate: Hertz): number {
    const key = `${machineKey(sound)} ${sampleRate}`;
    const middle: MovingSound = { ...sound, notch: MIDDLE_NOTCH };
    const gain = this.#gains.get(key) ?? aligningGain(this.#machine(middle, sampleRate), sampleRate);
    this.#gains.set(key, gain);
    return gain;
  }
}

function hornOf(notes: number): Horn {
  return HORN_PRESETS.find(({ chord }) => chord.length === notes)!;
}

function scaled(samples: Float32Array, gain: number): Float32Array {
  for (let i = 0; i < samples.length; i++) samples[i] *= gain;
  return samples;
}

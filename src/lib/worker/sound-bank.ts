import { loopLoudness } from '../listening/loudness.js';
import type { Signal } from '../sounds/driving.js';
import { type GeneratedSound, isMoving, type MovingSound, movingKind, stillKind } from '../sounds/kinds.js';
import type { Motion } from '../sounds/motion/motion.js';
import { renderLoop, renderRide, type Ride } from '../sounds/motion/ride.js';
import { renderRunPast } from '../sounds/motion/run-past.js';
import { type Horn, HORN_PRESETS } from '../sounds/signals/horn.js';
import { renderHeldHorn } from '../sounds/signals/render-held-horn.js';
import { renderHeldWhistle } from '../sounds/steam/held-whistle.js';
import { WHISTLE_PRESETS } from '../sounds/steam/whistle.js';
import type { Hertz, Lufs } from '../units.js';

/** Every sound is brought to this loudness (BS.1770-5); a machine at the middle of its lever. */
export const ALIGNED: Lufs = -23;
/** A horn stands out of the machine that blows it. */
const BLAST: Lufs = -20;
/** Where a machine's loudness is aligned. */
const MIDDLE_NOTCH = 4;
/** So many loops of machines are kept for the next question. */
const KEPT = 12;

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
  readonly #machines = new Map<string, Float32Array>();
  readonly #gains = new Map<string, number>();

  /** One seamless loop of a sound, aligned in loudness. */
  loop(sound: GeneratedSound, sampleRate: Hertz): Float32Array {
    if (!isMoving(sound)) {
      const samples = stillKind(sound).render(sound, sampleRate);
      return scaled(samples, aligningGain(samples, sampleRate));
    }
    const gain = this.#gainOf(sound, sampleRate);
    if (!sound.runPast) return this.#machine(sound, sampleRate).map((x) => gain * x);
    const blast = { ...this.blast(sound.signal, sampleRate), gain: 1 };
    return renderRunPast(movingKind(sound), sound, sampleRate, gain, blast);
  }

  /** A machine on its way from how it runs to its notch, and its loop there. */
  ride(sound: MovingSound, from: Motion, sampleRate: Hertz): Ride {
    const loop = this.#machine(sound, sampleRate);
    const ride = renderRide(movingKind(sound), sound, from, sampleRate, loop);
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
    const key = mark(sound, sampleRate);
    const known = this.#machines.get(key) ?? renderLoop(movingKind(sound), sound, sampleRate);
    this.#machines.delete(key);
    this.#machines.set(key, known);
    for (const oldest of this.#machines.keys()) {
      if (this.#machines.size <= KEPT) break;
      this.#machines.delete(oldest);
    }
    return known;
  }

  /** What brings a machine to the common loudness; the same at all its notches. */
  #gainOf(sound: MovingSound, sampleRate: Hertz): number {
    const middle: MovingSound = { ...sound, notch: MIDDLE_NOTCH };
    const key = mark(middle, sampleRate);
    let gain = this.#gains.get(key);
    if (gain === undefined) {
      gain = aligningGain(this.#machine(middle, sampleRate), sampleRate);
      if (this.#gains.size > 200) this.#gains.clear();
      this.#gains.set(key, gain);
    }
    return gain;
  }
}

function hornOf(notes: number): Horn {
  return HORN_PRESETS.find(({ chord }) => chord.length === notes)!;
}

/** All that a machine's sound depends on, as a key. */
function mark(sound: MovingSound, sampleRate: Hertz): string {
  return JSON.stringify([{ ...sound, name: '', signal: '', runPast: false }, sampleRate]);
}

function scaled(samples: Float32Array, gain: number): Float32Array {
  for (let i = 0; i < samples.length; i++) samples[i] *= gain;
  return samples;
}

import type { SoundFigures } from '../../listening/sound-figures.js';
import type { Signal } from '../../sounds/driving.js';
import { isMoving, type MovingSound } from '../../sounds/kinds.js';
import type { Motion } from '../../sounds/motion/motion.js';
import type { Ride } from '../../sounds/motion/ride.js';
import { loopStretch } from '../../sounds/recording/loop-stretch.js';
import { soundKey } from '../../sounds/sound-key.js';
import type { Hertz } from '../../units.js';
import type { LabClient } from '../../workers/sound/client.js';
import { LruCache } from '../../numeric/lru-cache.js';
import type { BenchSound } from '../../file/bench-file.js';
import type { Recording } from './open-recording.js';

/** A sound that the worker keeps. */
export interface KeptSound {
  key: string;
  /** What is measured of it: by the worker, when it is asked for first. */
  figures: () => Promise<SoundFigures>;
}

/** A loop that plays. The worker keeps a copy. */
export interface Loop extends KeptSound {
  sound: BenchSound;
  samples: Float32Array;
  sampleRate: Hertz;
}

/** The horn or whistle that the cord blows. */
export type HornSound = Ride & KeptSound;

/** What is blown on a sound that is no machine. */
const USUAL_SIGNAL: Signal = 'five-note horn';

/** So many loops are kept; the one used longest ago is forgotten. */
const KEPT = 8;

/** Sounds by what they are of: each is rendered once, kept by the worker too, and forgotten when others have taken its place. */
export class SoundCache {
  #lab: Pick<LabClient, 'ask'>;
  #loops = new LruCache<Promise<Loop>>(KEPT, (key) => {
    // A worker that died has forgotten it already; its death is told elsewhere.
    this.#lab.ask({ kind: 'forget', key }).catch(() => undefined);
  });
  #horns = new Map<string, Promise<HornSound>>();

  constructor(lab: Pick<LabClient, 'ask'>) {
    this.#lab = lab;
  }

  /** The loop of what the bench file names; null for a recording that is not open (any more). */
  async loop(sound: BenchSound, recording: Recording | null, sampleRate: Hertz): Promise<Loop | null> {
    if (sound.kind !== 'recording')
      return this.#keep(sound, `${soundKey(sound)} ${sampleRate}`, sampleRate, () =>
        this.#lab.ask({ kind: 'sound', sound, sampleRate })
      );
    if (!recording) return null;
    const { id, samples, start, end } = recording;
    const key = `recording ${id} ${start} ${end}`;
    return this.#keep(sound, key, sampleRate, async () => loopStretch(samples, sampleRate, start, end));
  }

  /** A machine's way to its notch, and the loop that it ends in. */
  async ride(
    sound: MovingSound,
    from: Motion,
    sampleRate: Hertz
  ): Promise<{ ride: Ride; loop: Promise<Loop> }> {
    const ride = await this.#lab.ask({ kind: 'ride', sound, from, sampleRate });
    const loop = this.#keep(sound, `${soundKey(sound)} ${sampleRate}`, sampleRate, async () =>
      ride.samples.slice(ride.loopFrom)
    );
    return { ride, loop };
  }

  /** What the cord blows on a sound: the horn or whistle of its machine. */
  horn(sound: BenchSound, sampleRate: Hertz): Promise<HornSound> {
    const signal = isMoving(sound) ? sound.signal : USUAL_SIGNAL;
    const key = `${signal} ${sampleRate}`;
    const known = this.#horns.get(key);
    if (known) return known;
    const horn = this.#lab.ask({ kind: 'blast', signal, sampleRate }).then(async (ride) => {
      await this.#lab.ask({ kind: 'keep', key, samples: ride.samples, sampleRate });
      return { ...ride, key, figures: this.#figuresOf(key) };
    });
    this.#horns.set(key, horn);
    horn.catch(() => this.#horns.delete(key));
    return horn;
  }

  #keep(
    sound: BenchSound,
    key: string,
    sampleRate: Hertz,
    render: () => Promise<Float32Array>
  ): Promise<Loop> {
    const known = this.#loops.get(key);
    if (known) return known;
    const loop = render().then(async (samples): Promise<Loop> => {
      // What is generated is aligned in loudness already.
      const align = sound.kind === 'recording';
      const { gain } = await this.#lab.ask({ kind: 'keep', key, samples, sampleRate, align });
      return {
        key,
        sound,
        samples: align ? samples.map((x) => gain * x) : samples,
        sampleRate,
        figures: this.#figuresOf(key)
      };
    });
    this.#loops.set(key, loop);
    loop.catch(() => this.#loops.delete(key));
    return loop;
  }

  /** Asks for them once, and again after a failure. */
  #figuresOf(key: string): KeptSound['figures'] {
    let asked: Promise<SoundFigures> | null = null;
    return () => {
      if (asked) return asked;
      asked = this.#lab.ask({ kind: 'figures', key });
      asked.catch(() => (asked = null));
      return asked;
    };
  }
}

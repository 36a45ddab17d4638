import type { SoundFigures } from '../../listening/sound-figures.js';
import type { Signal } from '../../sounds/driving.js';
import type { MovingSound } from '../../sounds/kinds.js';
import type { Motion } from '../../sounds/motion/motion.js';
import type { Ride } from '../../sounds/motion/ride.js';
import { loopStretch } from '../../sounds/recording/loop-stretch.js';
import { soundKey } from '../../sounds/sound-key.js';
import type { Hertz } from '../../units.js';
import type { LabClient } from '../../workers/sound/client.js';
import { LruCache } from '../../numeric/lru-cache.js';
import type { BenchSound } from '../../file/bench-file.js';
import type { Recording } from './open-recording.js';

/** A loop that plays, and what was measured of it. The worker keeps a copy under the same key. */
export interface Loop {
  key: string;
  sound: BenchSound;
  samples: Float32Array;
  sampleRate: Hertz;
  figures: SoundFigures;
}

/** What the cord blows, and the key under which the worker keeps it. */
export interface Blast extends Ride {
  key: string;
  figures: SoundFigures;
}

/** So many loops are kept; the one used longest ago is forgotten. */
const KEPT = 8;

/** Fetches loops: each is rendered once, kept by the worker, and forgotten when others have taken its place. */
export class Loops {
  #lab: LabClient;
  #known = new LruCache<Promise<Loop>>(KEPT, (key) => {
    // A worker that died has forgotten it already; its death is told elsewhere.
    this.#lab.ask({ kind: 'forget', key }).catch(() => undefined);
  });
  #blasts = new Map<string, Promise<Blast>>();

  constructor(lab: LabClient) {
    this.#lab = lab;
  }

  /** The loop of what the bench file names; null for a recording that is not open (any more). */
  async of(sound: BenchSound, recording: Recording | null, sampleRate: Hertz): Promise<Loop | null> {
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

  /** What the cord blows. */
  blast(signal: Signal, sampleRate: Hertz): Promise<Blast> {
    const key = `${signal} ${sampleRate}`;
    const known = this.#blasts.get(key);
    if (known) return known;
    const blast = this.#lab.ask({ kind: 'blast', signal, sampleRate }).then(async (ride) => {
      const figures = await this.#lab.ask({ kind: 'keep', key, samples: ride.samples, sampleRate });
      return { ...ride, key, figures };
    });
    this.#blasts.set(key, blast);
    blast.catch(() => this.#blasts.delete(key));
    return blast;
  }

  #keep(
    sound: BenchSound,
    key: string,
    sampleRate: Hertz,
    render: () => Promise<Float32Array>
  ): Promise<Loop> {
    const known = this.#known.get(key);
    if (known) return known;
    const loop = render().then(async (samples): Promise<Loop> => {
      // What is generated is aligned in loudness already.
      const align = sound.kind === 'recording';
      const { gain, ...figures } = await this.#lab.ask({ kind: 'keep', key, samples, sampleRate, align });
      return { key, sound, samples: align ? samples.map((x) => gain * x) : samples, sampleRate, figures };
    });
    this.#known.set(key, loop);
    loop.catch(() => this.#known.delete(key));
    return loop;
  }
}

import type { SoundFigures } from '../../listening/sound-figures.js';
import { PRIME_MOVER } from '../../sounds/engine.js';
import { loopStretch } from '../../sounds/recording/loop-stretch.js';
import type { Hertz } from '../../units.js';
import type { LabClient } from '../../worker/client.js';
import type { BenchFile } from '../file/bench-file.js';
import type { Recording } from './open-recording.js';

/** A loop that plays, and what was measured of it. The worker keeps a copy under the same key. */
export interface Loop {
  key: string;
  samples: Float32Array;
  figures: SoundFigures;
}

/** The notch at which an engine is loudest. */
export const LOUDEST_NOTCH = 8;

const PINK_NOISE_SECONDS = 5;

/** Fetches loops: each is rendered once, kept by the worker, and forgotten when a recording's stretch moves on. */
export class Loops {
  #lab: LabClient;
  #known = new Map<string, Promise<Loop>>();

  constructor(lab: LabClient) {
    this.#lab = lab;
  }

  /** The loop of what the bench file names; null for a recording that is not open (any more). */
  async of(sound: BenchFile['sound'], recording: Recording | null, sampleRate: Hertz): Promise<Loop | null> {
    switch (sound.kind) {
      case 'engine':
        return this.engine(sound.notch, sampleRate);
      case 'pinkNoise':
        return this.#keep(`pink noise ${sampleRate}`, sampleRate, () =>
          this.#lab.ask({ kind: 'pinkNoise', sampleRate, seconds: PINK_NOISE_SECONDS })
        );
      case 'recording': {
        if (!recording) return null;
        const { id, samples, start, end } = recording;
        const key = `recording ${id} ${start} ${end}`;
        return this.#keep(key, sampleRate, async () => loopStretch(samples, sampleRate, start, end));
      }
    }
  }

  engine(notch: number, sampleRate: Hertz): Promise<Loop> {
    return this.#keep(`engine ${notch} ${sampleRate}`, sampleRate, () =>
      this.#lab.ask({ kind: 'engine', engine: PRIME_MOVER, notch, sampleRate })
    );
  }

  horn(sampleRate: Hertz): Promise<Loop> {
    return this.#keep(`horn ${sampleRate}`, sampleRate, () => this.#lab.ask({ kind: 'horn', sampleRate }));
  }

  /** Forgets every stretch of a recording but the one that plays: to be called when it has taken its place. */
  forgetStretchesBut(key: string): void {
    for (const other of this.#known.keys()) {
      if (!other.startsWith('recording') || other === key) continue;
      this.#known.delete(other);
      // A worker that died has forgotten it already; its death is told elsewhere.
      this.#lab.ask({ kind: 'forget', key: other }).catch(() => undefined);
    }
  }

  #keep(key: string, sampleRate: Hertz, render: () => Promise<Float32Array>): Promise<Loop> {
    const known = this.#known.get(key);
    if (known) return known;
    const loop = render().then(async (samples): Promise<Loop> => {
      const figures = await this.#lab.ask({ kind: 'keep', key, samples, sampleRate });
      return { key, samples, figures };
    });
    this.#known.set(key, loop);
    loop.catch(() => this.#known.delete(key));
    return loop;
  }
}

import type { Installation } from '../../acoustics/installation.js';
import { peak } from '../../listening/peak.js';
import type { Hertz } from '../../units.js';
import type { LabClient } from '../../workers/sound/client.js';
import { LruCache } from '../../numeric/lru-cache.js';
import type { Answer } from '../../evaluation/answer.js';
import { powerGain } from '../../evaluation/power-gain.js';
import { reachOfKnobs } from '../../acoustics/mounts/reach-of-knobs.js';
import { filterFor } from '../../evaluation/stand.js';
import { TimeSlice } from '../time-slice.js';
import type { KeptSound } from './sound-cache.js';

/**
 * Peak that the loudest probed size may have at the device. What is left to full scale (1.4 dB) covers sizes
 * between the probed ones and peaks between samples.
 */
export const SAFE_PEAK = 0.85;

/**
 * The most that the bench is turned up. Nearly every sound, aligned in loudness, has room for this; only what comes
 * in short bursts is played softer. So the bench stays as loud when another sound is chosen.
 */
export const USUAL_GAIN = 0.5;

/** Of all sizes, so many are tried in earnest: those behind which a sound has the most power. */
const PROBED = 5;

/** So many peaks are remembered. */
const REMEMBERED = 200;

/** The mounts whose knobs the headroom must allow for, and who tells what they let through. */
export interface Reach {
  installations: Installation[];
  /** What a model says of any of them; the same for the same `where`. */
  answer: (probe: Installation) => Answer | Promise<Answer>;
  /** All that an answer depends on besides the mount: model, air and listener. */
  where: unknown;
  sampleRate: Hertz;
}

/**
 * Finds the one gain of the bench at which the loudest size that the knobs can reach does not clip:
 * measured on the sounds themselves, never by a limiter. Sounds that may sound together (a loop and the horn) are added.
 */
export class Headroom {
  #lab: Pick<LabClient, 'ask'>;
  #peaks = new LruCache<Promise<number>>(REMEMBERED);

  constructor(lab: Pick<LabClient, 'ask'>) {
    this.#lab = lab;
  }

  /** `together`: kept sounds, one list of alternatives for each that can play at the same time; `besides`: the peak of what plays beside the mounts. */
  async gain(reach: Reach, together: KeptSound[][], besides = 0): Promise<number> {
    const probes = reach.installations.flatMap(reachOfKnobs);
    const mark = JSON.stringify([probes, reach.where, reach.sampleRate]);
    let most = besides;
    for (const alternatives of together) {
      let loudest = 0;
      for (const sound of alternatives) {
        const key = sound.key + mark;
        const found = this.#peaks.get(key) ?? this.#peak(sound, probes, reach);
        this.#peaks.set(key, found);
        // What could not be found is asked for anew the next time.
        found.catch(() => this.#peaks.delete(key));
        loudest = Math.max(loudest, await found);
      }
      most += loudest;
    }
    return most > 0 ? Math.min(USUAL_GAIN, SAFE_PEAK / most) : 0;
  }

  /**
   * Whether these samples have room for the usual gain behind whatever the knobs can reach, told without the worker: nothing behind a filter
   * exceeds the largest sample times the sum of the filter's sizes. False says nothing.
   */
  async surelyHasRoom(reach: Reach, samples: Float32Array, besides = 0): Promise<boolean> {
    const largest = peak(samples);
    const slice = new TimeSlice();
    for (const probe of reach.installations.flatMap(reachOfKnobs)) {
      const filter = filterFor(await reach.answer(probe), reach.sampleRate);
      const most = largest * filter.reduce((sum, sample) => sum + Math.abs(sample), 0);
      if (USUAL_GAIN * (most + besides) > SAFE_PEAK) return false;
      await slice.over();
    }
    return true;
  }

  /** The highest peak behind those probes that let most of the sound's power through. */
  async #peak({ key, figures }: KeptSound, probes: Installation[], reach: Reach): Promise<number> {
    const [{ power, binWidth }, answers] = await Promise.all([
      figures(),
      Promise.all(probes.map(reach.answer))
    ]);
    const slice = new TimeSlice();
    const tried: { answer: Answer; through: number }[] = [];
    for (const answer of answers) {
      const gain = powerGain(answer, power.length, binWidth);
      tried.push({ answer, through: gain.reduce((sum, each, k) => sum + each * power[k], 0) });
      await slice.over();
    }
    const strongest = tried.sort((a, b) => b.through - a.through).slice(0, PROBED);
    const impulseResponses = strongest.map(({ answer }) => filterFor(answer, reach.sampleRate));
    return Math.max(0, ...(await this.#lab.ask({ kind: 'peaksThrough', key, impulseResponses })));
  }
}

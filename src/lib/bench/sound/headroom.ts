import type { Air } from '../../acoustics/air.js';
import type { Installation } from '../../acoustics/installation.js';
import type { Listener } from '../../acoustics/listener.js';
import type { Hertz } from '../../units.js';
import type { LabClient } from '../../worker/client.js';
import { reachOfKnobs } from '../reach-of-knobs.js';
import { filterFor } from '../stand.js';

/**
 * Peak that the loudest probed size may have at the device. What is left to full scale (1.4 dB) covers sizes
 * between the probed ones and peaks between samples.
 */
export const SAFE_PEAK = 0.85;

/** The mounts whose knobs the headroom must allow for, and where they are heard. */
export interface Reach {
  installations: Installation[];
  air: Air;
  listener: Listener;
  sampleRate: Hertz;
}

/**
 * Finds the one gain of the bench at which the loudest size that the knobs can reach does not clip:
 * measured on the sounds themselves, never by a limiter. Sounds that may sound together (a loop and the horn) are added.
 */
export class Headroom {
  #lab: LabClient;
  #peaks = new Map<string, number>();

  constructor(lab: LabClient) {
    this.#lab = lab;
  }

  /** `together`: keys of kept loops, one list of alternatives for each sound that can play at the same time. */
  async gain(reach: Reach, together: string[][]): Promise<number> {
    const probes = reach.installations.flatMap(reachOfKnobs);
    const mark = JSON.stringify([probes, reach.air, reach.listener, reach.sampleRate]);
    let filters: Float32Array[] | null = null;
    let peak = 0;
    for (const alternatives of together) {
      let loudest = 0;
      for (const key of alternatives) {
        let known = this.#peaks.get(key + mark);
        if (known === undefined) {
          filters ??= probes.map(
            (probe) => filterFor(probe, reach.air, reach.listener, reach.sampleRate).impulseResponse
          );
          const heard = await this.#lab.ask({ kind: 'heardThrough', key, impulseResponses: filters });
          known = Math.max(0, ...heard.map((one) => one.peak));
          this.#peaks.set(key + mark, known);
        }
        loudest = Math.max(loudest, known);
      }
      peak += loudest;
    }
    return peak > 0 ? SAFE_PEAK / peak : 0;
  }
}

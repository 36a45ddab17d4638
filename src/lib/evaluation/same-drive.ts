import type { Lift } from '../acoustics/speaker/lift.js';
import { sensitivity } from '../acoustics/speaker/sensitivity.js';
import type { BenchFile, BenchView } from '../file/bench-file.js';
import type { Hertz } from '../units.js';
import { driven, type Stand } from './stand.js';

/** The stand that levels are written against: where it cannot be built, the first one that can. */
export function measuredAgainst(stands: readonly Stand[], view: Pick<BenchView, 'measuredAgainst'>): Stand {
  const named = stands[view.measuredAgainst];
  return named.problem ? (stands.find(({ problem }) => !problem) ?? named) : named;
}

/**
 * The same drive for all: each stand with the factor in by which its speaker is more sensitive, at the same voltage, than that of
 * the stand that levels are written against: the ratio of Sd·Bl/(Re·Mms). 0 dB then is that one speaker in an endless plate. The
 * models know each speaker against its own; here, once, the factor comes into all that is drawn, heard and measured, and with it what
 * lifts the low end.
 */
export class SameDrive {
  #made = new WeakMap<Stand, { drive: number; lift: Lift | null; stand: Stand }>();

  /** `own` are stands against their own speakers, for this rate; one is made anew only when it, its factor or the lift was replaced. */
  of(
    own: readonly Stand[],
    { view, air, lift }: Pick<BenchFile, 'view' | 'air' | 'lift'>,
    sampleRate: Hertz
  ): Stand[] {
    const sensitivityOf = ({ installation }: Stand): number => sensitivity(installation.speaker, air);
    const against = sensitivityOf(measuredAgainst(own, view));
    return own.map((stand) => this.#driven(stand, sensitivityOf(stand) / against, lift ?? null, sampleRate));
  }

  #driven(own: Stand, drive: number, lift: Lift | null, sampleRate: Hertz): Stand {
    if (!own.computed || (drive === 1 && !lift)) return own;
    const made = this.#made.get(own);
    if (made?.drive === drive && made.lift === lift) return made.stand;
    const stand = { ...own, computed: driven(own.computed, { drive, lift }, sampleRate) };
    this.#made.set(own, { drive, lift, stand });
    return stand;
  }
}

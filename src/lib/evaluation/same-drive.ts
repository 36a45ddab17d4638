import type { Air } from '../acoustics/air.js';
import { sensitivity } from '../acoustics/speaker/sensitivity.js';
import type { BenchView } from '../file/bench-file.js';
import { driven, type Stand } from './stand.js';

/** The stand that levels are written against: where it cannot be built, the first one that can. */
export function measuredAgainst(stands: readonly Stand[], view: Pick<BenchView, 'measuredAgainst'>): Stand {
  const named = stands[view.measuredAgainst];
  return named.problem ? (stands.find(({ problem }) => !problem) ?? named) : named;
}

/**
 * The same drive for all: each stand with the factor in by which its speaker is more sensitive, at the same voltage, than that of
 * the stand that levels are written against: the ratio of Sd·Bl/(Re·Mms). 0 dB then is that one speaker in an endless plate. The
 * models know each speaker against its own; here, once, the factor comes into all that is drawn, heard and measured.
 */
export class SameDrive {
  #made = new WeakMap<Stand, { drive: number; stand: Stand }>();

  /** `own` are stands against their own speakers; one is made anew only when it or its factor was replaced. */
  of(own: readonly Stand[], view: Pick<BenchView, 'measuredAgainst'>, air: Air): Stand[] {
    const sensitivityOf = ({ installation }: Stand): number => sensitivity(installation.speaker, air);
    const against = sensitivityOf(measuredAgainst(own, view));
    return own.map((stand) => this.#driven(stand, sensitivityOf(stand) / against));
  }

  #driven(own: Stand, drive: number): Stand {
    if (!own.computed || drive === 1) return own;
    const made = this.#made.get(own);
    if (made?.drive === drive) return made.stand;
    const stand = { ...own, computed: driven(own.computed, drive) };
    this.#made.set(own, { drive, stand });
    return stand;
  }
}

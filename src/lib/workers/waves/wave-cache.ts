import type { Hertz } from '../../units.js';
import type { AccuracyName } from '../../waves/mesh/accuracy.js';
import type { SolvedWaves } from '../../waves/curve/heard-waves.js';
import type { MountProblem } from '../../waves/solve/mount-problem.js';
import type { WaveProblem, WaveState } from '../../waves/solve/wave-problem.js';
import { solutionKey } from '../../waves/wave-solution.js';
import { LruCache } from '../../numeric/lru-cache.js';
import type { Holdings, MountAsked } from './wave-protocol.js';

/** A mount solved at one frequency, of which the field anywhere is read off. */
export interface WaveMoment {
  problem: WaveProblem;
  state: WaveState;
}

/**
 * How much one worker keeps. The reference shell (152 × 30 × 45 mm, speaker off-centre) takes 6.4 MB for its matrices and
 * 0.4 MB for its solution at 41 frequencies at `full`, 0.4 and 0.05 MB at `draft`; the largest mounts that can be meshed 32 and
 * 1.3 MB, 6 and 0.4 MB. So solutions are kept by number, and matrices, which are made again in a fraction of the time of a
 * solution, by weight: those of three reference shells, or of one large plate. After four such shells at `full` and twenty
 * drafts a worker was 25 MB in Chromium, four of them with their page 100 MB; eight more solutions each would add 14 MB.
 */
const KEPT = {
  full: { solutions: 12, matricesMB: 20 },
  draft: { solutions: 8, matricesMB: 4 }
} as const satisfies Record<AccuracyName, unknown>;
/** At most 0.03 MB each. */
const MOMENTS = 32;

/** What a worker remembers of the mounts that it was asked about. */
export class WaveCache {
  readonly #solved = {
    full: new LruCache<SolvedWaves>(KEPT.full.solutions),
    draft: new LruCache<SolvedWaves>(KEPT.draft.solutions)
  };
  readonly #meshed = {
    full: new LruCache<MountProblem>(KEPT.full.matricesMB, undefined, megabytes),
    draft: new LruCache<MountProblem>(KEPT.draft.matricesMB, undefined, megabytes)
  };
  readonly #moments = new LruCache<WaveMoment>(MOMENTS);

  /** A solution to be listened to; its problem has no matrices. */
  solved(mount: MountAsked): SolvedWaves | undefined {
    return this.#solved[mount.accuracy].get(keyOf(mount));
  }

  /** Keeps a solution, and its matrices for other frequencies. */
  keepSolved(mount: MountAsked, solved: SolvedWaves): void {
    const { curve, highest } = solved;
    const { problem, c } = curve;
    this.keepMeshed(mount, { problem, c, highest });
    const light = { ...solved, curve: { ...curve, problem: withoutMatrices(problem) } };
    this.#solved[mount.accuracy].set(keyOf(mount), light);
  }

  meshed(mount: MountAsked): MountProblem | undefined {
    return this.#meshed[mount.accuracy].get(keyOf(mount));
  }

  keepMeshed(mount: MountAsked, meshed: MountProblem): void {
    this.#meshed[mount.accuracy].set(keyOf(mount), meshed);
  }

  /** What was kept of one frequency; its problem has no matrices. */
  moment(mount: MountAsked, frequency: Hertz): WaveMoment | undefined {
    return this.#moments.get(momentKey(mount, frequency));
  }

  keepMoment(mount: MountAsked, frequency: Hertz, { problem, state }: WaveMoment): void {
    this.#moments.set(momentKey(mount, frequency), { problem: withoutMatrices(problem), state });
  }

  get holds(): Holdings {
    const keys = (caches: Record<AccuracyName, { keys: string[] }>) => [
      ...caches.full.keys,
      ...caches.draft.keys
    ];
    return { solved: keys(this.#solved), meshed: keys(this.#meshed) };
  }
}

function keyOf({ installation, air, accuracy }: MountAsked): string {
  return solutionKey(installation, air, { accuracy });
}

function momentKey(mount: MountAsked, frequency: Hertz): string {
  return `${frequency} ${keyOf(mount)}`;
}

/** A problem of which a solution can be read, but that cannot be solved again: a tenth of the memory. */
function withoutMatrices(problem: WaveProblem): WaveProblem {
  return {
    ...problem,
    statics: problem.statics.map(() => null),
    pairs: { ...problem.pairs, data: new Float64Array(0) }
  };
}

function megabytes({ problem: { statics, pairs } }: MountProblem): number {
  const bytes = statics.reduce(
    (sum, matrices) => sum + (matrices ? matrices.a0.byteLength + matrices.a1.byteLength : 0),
    pairs.data.byteLength
  );
  return bytes / 1e6;
}

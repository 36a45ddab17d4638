import { untrack } from 'svelte';
import type { Installation } from '../../acoustics/installation.js';
import type { FieldImage } from '../../waves/field/field-on-grid.js';
import type { SectionGrid } from '../../waves/field/section-grid.js';
import { puffField, puffFrequencies, type PuffField } from '../../waves/field/puff.js';
import { NewestWins } from '../../workers/link/newest-wins.js';
import type { WavePool } from '../../workers/waves/wave-pool.js';
import type { AirQuestion } from './air-question.svelte.js';
import type { SectionPicture } from './section-picture.js';

/** So many frequencies of a puff are one question: a worker may take some while another takes others. */
const CHUNK = 4;

/** One puff in a section, and of what it was made, so that what is drawn over it fits it. */
export interface Puff {
  installation: Installation;
  grid: SectionGrid;
  field: PuffField;
}

/** What a puff was made of besides its mount. */
type Around = Pick<AirQuestion, 'medium' | 'plane'>;

/**
 * One puff of the heard mount's cone, worked out on demand at all frequencies it is made of. It is kept as long as the mount
 * stays as it is.
 */
export class PuffAround {
  current = $state.raw<Puff | null>(null);
  /** The one that was seen before, of whatever mount, while the next is worked out. */
  before = $state.raw<Puff | null>(null);
  /** Share that is done, while it is being worked out. */
  progress = $state<number | null>(null);

  #question: AirQuestion;
  #pool: Pick<WavePool, 'ask'>;
  #section: SectionPicture;
  #report: (problem: unknown) => void;
  #newest: NewestWins;
  #made = new WeakMap<Installation, Around & { puff: Puff }>();

  /** `report` hears what went wrong, or null once it has gone well. */
  constructor(
    question: AirQuestion,
    pool: Pick<WavePool, 'ask'>,
    section: SectionPicture,
    report: (problem: unknown) => void
  ) {
    this.#question = question;
    this.#pool = pool;
    this.#section = section;
    this.#report = report;
    this.#newest = new NewestWins({ replaces: 'running', tell: report });
  }

  /** Drops it with what it was made of, or takes up again what was made of that. Call while a component starts. */
  connect(): void {
    $effect(() => {
      // Of another mount, another air or another side it would be a lie.
      const { heard, medium, plane } = this.#question;
      const made = this.#made.get(heard);
      untrack(() => {
        this.stop();
        this.before = this.current ?? this.before;
        this.current = made?.medium === medium && made.plane === plane ? made.puff : null;
      });
    });
  }

  /** Works it out, unless it is there or being worked out. */
  make(): void {
    const { asked, heard, medium, plane, fullySolvedTo } = this.#question;
    if (!asked || this.current || this.progress !== null) return;
    const { installation, air } = asked;
    const frequencies = puffFrequencies(fullySolvedTo);
    const grid = this.#section.grid(installation, plane);
    this.progress = 0;
    this.#newest.run(async (signal) => {
      const shares: number[] = [];
      const ask = (from: number): Promise<FieldImage[]> => {
        const some = frequencies.slice(from, from + CHUNK);
        return this.#pool.ask(
          { kind: 'puff', installation, air, accuracy: 'full', frequencies: some, grid },
          {
            signal,
            onProgress: (share) => {
              shares[from] = share * some.length;
              this.progress = shares.reduce((sum, each) => sum + each, 0) / frequencies.length;
            }
          }
        );
      };
      try {
        const starts = Array.from({ length: Math.ceil(frequencies.length / CHUNK) }, (_, i) => i * CHUNK);
        const images = (await Promise.all(starts.map(ask))).flat();
        this.#section.coverCone(images, grid, installation);
        const puff = { installation, grid, field: puffField(frequencies, images) };
        this.#made.set(heard, { medium, plane, puff });
        this.current = puff;
        this.#report(null);
      } finally {
        if (!signal.aborted) this.progress = null;
      }
    });
  }

  /** Gives up what is being worked out. */
  stop(): void {
    this.#newest.withdraw();
    this.progress = null;
  }
}

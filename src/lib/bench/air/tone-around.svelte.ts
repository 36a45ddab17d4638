import type { Installation } from '../../acoustics/installation.js';
import type { Hertz } from '../../units.js';
import type { FieldImage } from '../../waves/field/field-on-grid.js';
import type { SectionGrid } from '../../waves/field/section-grid.js';
import { NewestWins } from '../../workers/link/newest-wins.js';
import type { WavePool } from '../../workers/waves/wave-pool.js';
import type { AirQuestion } from './air-question.svelte.js';
import type { SectionPicture } from './section-picture.js';

/** The picture beside it has so many times fewer pixels across and down: it is small. */
const COARSER = 3;

/** Pressure in a section around a mount. */
interface Around {
  installation: Installation;
  grid: SectionGrid;
  image: FieldImage;
}

/** The air at one frequency, and of what it was made, so that what is drawn over it fits it. */
export interface Tone extends Around {
  frequency: Hertz;
  /** The same around the mount that levels are written against, coarser; null where it is the heard one, or cannot be solved. */
  beside: Around | null;
}

/** Pressure in a section around the heard mount at the pointed frequency; the last one until the next is there. */
export class ToneAround {
  current = $state.raw<Tone | null>(null);

  #question: AirQuestion;
  #pool: Pick<WavePool, 'ask'>;
  #section: SectionPicture;
  #report: (problem: unknown) => void;
  #newest: NewestWins;

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
    this.#newest = new NewestWins({ replaces: 'waiting', tell: report });
  }

  /** Keeps it in step with what is asked. Call while a component starts. */
  connect(): void {
    $effect(() => {
      const { asked, against, shownFrequency: frequency, plane, mode } = this.#question;
      if (!asked || mode !== 'tone') return this.#newest.withdraw();
      const grid = this.#section.grid(asked.installation, plane);
      const frequencies = Float64Array.of(frequency);
      const around = async (installation: Installation, grid: SectionGrid): Promise<Around> => {
        const question = { kind: 'field', ...asked, installation, frequencies, grid } as const;
        const [image] = await this.#pool.ask(question, { urgent: true });
        this.#section.coverCone([image], grid, installation);
        return { installation, grid, image };
      };
      this.#newest.run(async () => {
        const [heard, beside] = await Promise.all([
          around(asked.installation, grid),
          against && around(against, coarser(this.#section.grid(against, plane, grid)))
        ]);
        this.current = { ...heard, frequency, beside };
        this.#report(null);
      });
    });
  }
}

function coarser(grid: SectionGrid): SectionGrid {
  return { ...grid, columns: Math.round(grid.columns / COARSER), rows: Math.round(grid.rows / COARSER) };
}

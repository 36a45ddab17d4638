import type { Installation } from '../../acoustics/installation.js';
import type { Decibels, Degrees, Hertz } from '../../units.js';
import { NewestWins } from '../../workers/link/newest-wins.js';
import type { WavePool } from '../../workers/waves/wave-pool.js';
import type { AirQuestion } from './air-question.svelte.js';

/** Where the polar picture is asked: every so many degrees all round. */
const ANGLE_STEP: Degrees = 3;

/** Level against angle, and of what it was made, so that what is drawn over it fits it. */
export interface Polar {
  installation: Installation;
  frequency: Hertz;
  anglesDeg: Float64Array;
  levelDb: Float64Array;
  /** The same of the mount that levels are written against; null where it is the heard one, or cannot be solved. */
  againstDb: Float64Array | null;
}

/** Level against angle around the heard mount at the pointed frequency; the last one until the next is there. */
export class PolarAround {
  current = $state.raw<Polar | null>(null);

  #question: AirQuestion;
  #pool: Pick<WavePool, 'ask'>;
  #report: (problem: unknown) => void;
  #newest: NewestWins;

  /** `report` hears what went wrong, or null once it has gone well. */
  constructor(question: AirQuestion, pool: Pick<WavePool, 'ask'>, report: (problem: unknown) => void) {
    this.#question = question;
    this.#pool = pool;
    this.#report = report;
    this.#newest = new NewestWins({ replaces: 'waiting', tell: report });
  }

  /** Keeps it in step with what is asked. Call while a component starts. */
  connect(): void {
    $effect(() => {
      const { asked, against, drivesDb, shownFrequency: frequency, plane, distance } = this.#question;
      if (!asked) return this.#newest.withdraw();
      const anglesDeg = Float64Array.from({ length: 360 / ANGLE_STEP + 1 }, (_, i) => -180 + i * ANGLE_STEP);
      const levels = async (installation: Installation, driveDb: Decibels): Promise<Float64Array> => {
        const question = {
          kind: 'polar',
          ...asked,
          installation,
          frequency,
          plane,
          distance,
          anglesDeg
        } as const;
        const own = await this.#pool.ask(question, { urgent: true });
        return own.map((level) => level + driveDb);
      };
      this.#newest.run(async () => {
        const { installation } = asked;
        const [levelDb, againstDb] = await Promise.all([
          levels(installation, drivesDb.heard),
          against && levels(against, drivesDb.against)
        ]);
        this.current = { installation, frequency, anglesDeg, levelDb, againstDb };
        this.#report(null);
      });
    });
  }
}

import { outlineArea } from '../../acoustics/outline.js';
import type { Installation } from '../../acoustics/installation.js';
import { sentence } from '../../format/sentence.js';
import type { Hertz, Metres } from '../../units.js';
import type { WavePool } from '../../workers/waves/wave-pool.js';
import { AirQuestion, type HeardBench } from './air-question.svelte.js';
import { type Polar, PolarAround } from './polar-around.svelte.js';
import { type Puff, PuffAround } from './puff-around.svelte.js';
import type { SectionPicture } from './section-picture.js';
import { type Tone, ToneAround } from './tone-around.svelte.js';

/** So far from the cone, in an endless plate, the pressure is drawn at full strength. */
const FULL_AT: Metres = 0.04;

/**
 * The air around the heard mount, as far as it is looked at: level against angle and pressure in a section at the pointed
 * frequency, and one puff on demand. The last picture stays until the next is there.
 */
export class AirAround {
  /** One sentence where a picture could not be made. */
  problem = $state<string | null>(null);

  #question: AirQuestion;
  #polar: PolarAround;
  #tone: ToneAround;
  #puff: PuffAround;

  constructor(bench: HeardBench, pool: Pick<WavePool, 'ask'>, section: SectionPicture) {
    const report = (problem: unknown): void => {
      this.problem = problem === null ? null : sentence(problem);
    };
    this.#question = new AirQuestion(bench);
    this.#polar = new PolarAround(this.#question, pool, report);
    this.#tone = new ToneAround(this.#question, pool, section, report);
    this.#puff = new PuffAround(this.#question, pool, section, report);
  }

  /** The frequency that was pointed at last. */
  get frequency(): Hertz {
    return this.#question.frequency;
  }

  set frequency(frequency: Hertz) {
    this.#question.frequency = frequency;
  }

  /** What can be shown: the pointed frequency, within what is solved. */
  get shownFrequency(): Hertz {
    return this.#question.shownFrequency;
  }

  get mode(): 'tone' | 'puff' {
    return this.#question.mode;
  }

  get polar(): Polar | null {
    return this.#polar.current;
  }

  get tone(): Tone | null {
    return this.#tone.current;
  }

  get puff(): Puff | null {
    return this.#puff.current;
  }

  /** The picture that is to be seen: the last one stays while a puff is worked out. */
  get picture(): { puff: Puff } | { tone: Tone } | null {
    const puff =
      this.mode === 'puff' ? (this.puff ?? (this.progress === null ? null : this.#puff.before)) : null;
    if (puff) return { puff };
    return this.tone && (this.mode === 'tone' || this.progress !== null) ? { tone: this.tone } : null;
  }

  /** Share of the puff that is done, while it is being worked out. */
  get progress(): number | null {
    return this.#puff.progress;
  }

  /** Has it computed until what is returned is called: somebody looks. */
  watch(): () => void {
    return this.#question.watch();
  }

  /** Keeps the pictures in step with what is heard and pointed at. Call while a component starts. */
  connect(): void {
    this.#polar.connect();
    this.#tone.connect();
    this.#puff.connect();
  }

  /** Shows one puff of the cone, and works it out first where it is not known. */
  makePuff(): void {
    // The last picture is that of the tone, not a puff from before.
    if (this.mode === 'tone') this.#puff.before = null;
    this.#question.mode = 'puff';
    this.#puff.make();
  }

  showTone(): void {
    this.#puff.stop();
    this.#question.mode = 'tone';
  }

  /** Pressure per cone acceleration that is drawn at full strength, in metres. */
  fullScale({ speaker }: Installation): number {
    return outlineArea(speaker.cone) / (2 * Math.PI * FULL_AT);
  }
}

import type { Speaker } from '../../acoustics/speaker/speaker.js';
import { drawerOf, priceOfCandidate, questionOfCandidate } from '../../evaluation/fit/drawer.js';
import { loudestOf, measuresOf, type TriedSound, type TriedWith } from '../../evaluation/fit/measures.js';
import { ranked, type Measured, type MeasureName } from '../../evaluation/fit/ranking.js';
import { firstToTry, nextToTry } from '../../evaluation/fit/sizes-to-try.js';
import { soundsOf, triedVolts, triedWith } from '../../evaluation/fit/tried-with.js';
import { answerOf, FIELD_MODEL } from '../../evaluation/models.js';
import type { WaveAnswers } from '../../evaluation/wave-answers.svelte.js';
import type { Known, Question } from '../../evaluation/wave-jobs.js';
import type { BenchFile } from '../../file/bench-file.js';
import type { Candidate } from '../../fitting/candidate.js';
import { fittingSteps, misfitSteps, type WhatFits } from '../../fitting/fit.js';
import type { Misfit } from '../../fitting/why-not.js';
import { sentence } from '../../format/sentence.js';
import type { GeneratedSound } from '../../sounds/kinds.js';
import type { Hertz } from '../../units.js';
import type { AccuracyName } from '../../waves/mesh/accuracy.js';
import { fewAtATime } from './few-at-a-time.js';
import { inSlices } from './in-slices.js';

/** What the workers have at a time: the next is there when one is done. */
const AT_ONCE = 4;
/** So many of those in front are solved in full at the end. */
const FINALISTS = 3;
/** The list grows so often at most: more often nobody could read it. */
const GROWS_MS = 300;

/** One mount that was tried. */
export interface FitLine extends Measured {
  candidate: Candidate;
  speaker: Speaker;
  question: Question;
  known: Known;
  /** Whether it is a draft. */
  provisional: boolean;
}

export interface FitParts {
  waves: Pick<WaveAnswers, 'tryOut'>;
  sound: (sound: GeneratedSound) => Promise<TriedSound>;
}

/**
 * Everything that fits into one model, tried: it grows as the answers come, and what has come stays when it is stopped. Of the sizes of a box some
 * are tried first, then those between around what leads, and all the others when that is asked for.
 */
export class FitRun {
  lines = $state.raw<readonly FitLine[]>([]);
  misfits = $state.raw<readonly Misfit[]>([]);
  /** How many sizes fit, tried or not. */
  sizes = $state(0);
  /** What fits and could not be solved, and why. */
  refused = $state.raw<readonly { candidate: Candidate; why: string }[]>([]);
  /** What it is at: null before and after. */
  at = $state<'sizes' | 'drafts' | 'between' | 'limits' | 'finalists' | null>(null);
  done = $state(0);
  total = $state(0);
  stopped = $state(false);
  /** One sentence where it could not go on. */
  problem = $state<string | null>(null);

  /** The bench that was tried. */
  readonly file: BenchFile;

  #parts: FitParts;
  #sampleRate: Hertz;
  #by: () => MeasureName;
  #controller = new AbortController();
  #tried: Promise<TriedWith> | null = null;
  #drawer: Record<string, Speaker>;
  /** What has come, and when it is shown next. */
  #found: readonly FitLine[] = [];
  #fitted: WhatFits = { candidates: [], ladders: [], nothing: [] };
  #showing: ReturnType<typeof setTimeout> | null = null;

  /** @param only keys of the speakers that are to be tried; `by` is asked who is in front */
  constructor(
    file: BenchFile,
    only: readonly string[],
    sampleRate: Hertz,
    by: () => MeasureName,
    parts: FitParts
  ) {
    this.file = file;
    this.#parts = parts;
    this.#sampleRate = sampleRate;
    this.#by = by;
    this.#drawer = Object.fromEntries(Object.entries(drawerOf(file)).filter(([key]) => only.includes(key)));
  }

  get running(): boolean {
    return this.at !== null;
  }

  /** Keys of the sizes of a box in each place (`fit`). */
  get ladders(): readonly (readonly string[])[] {
    return this.#fitted.ladders;
  }

  /** Sizes that fit and were not tried. */
  get untried(): number {
    return this.sizes - this.lines.length - this.refused.length;
  }

  /** Whether beside what leads by a measure some were not tried: it was another measure when they were. */
  hasBetween(by: MeasureName): boolean {
    return nextToTry(this.#fitted, this.lines, this.#refusedKeys, by).length > 0;
  }

  /** The sizes of every place that are far apart, then those between around what leads. */
  async start(): Promise<void> {
    await this.#run(async (tried) => {
      const [model, drawer] = [this.file.model!, this.#drawer];
      const { signal } = this.#controller;
      this.#fitted = await inSlices(fittingSteps(model, drawer, this.file.amplifier?.leastLoad), signal);
      this.sizes = this.#fitted.candidates.length;
      // while the workers solve
      const misfits = inSlices(misfitSteps(model, drawer, this.#fitted), signal);
      await Promise.all([
        misfits.then((found) => (this.misfits = found)),
        tried.then((all) => this.#draftsOf('drafts', firstToTry(this.#fitted), all))
      ]);
    });
  }

  /** Goes on with the sizes between around what leads by now, or with every size that there is. */
  async goOn(all: boolean): Promise<void> {
    await this.#run(async (tried) => {
      const known = [...this.#found.map(({ key }) => key), ...this.#refusedKeys];
      const others = this.#fitted.candidates.filter(({ key }) => !known.includes(key));
      if (all) await this.#draftsOf('between', others, await tried);
    });
  }

  /** What is known by now stays. */
  stop(): void {
    if (!this.running) return;
    this.stopped = true;
    this.#controller.abort();
  }

  /** What all are tried with. */
  triedWith(): Promise<TriedWith> {
    const { file } = this;
    const made = (this.#tried ??= Promise.all(soundsOf(file, file.model!).map(this.#parts.sound)).then(
      (sounds) => triedWith(file, this.#drawer, sounds, triedVolts(file), this.#sampleRate)
    ));
    made.catch(() => (this.#tried = null));
    return made;
  }

  /** What is asked for, then the sizes between around what leads, the limits of all, and those in front in full. */
  async #run(asked: (tried: Promise<TriedWith>) => Promise<void>): Promise<void> {
    if (!this.file.model || this.running) return;
    if (this.stopped) this.#controller = new AbortController();
    this.stopped = false;
    this.problem = null;
    try {
      this.at = 'sizes';
      await asked(this.triedWith());
      const tried = await this.triedWith();
      await this.#between(tried);
      await this.#measureLimits(tried);
      this.at = 'finalists';
      const front = ranked(this.#found, this.#by()).slice(0, FINALISTS);
      await fewAtATime(front, AT_ONCE, ({ line }) => this.#try(line.candidate, 'full', tried));
      await this.#measureLimits(tried);
    } catch (error) {
      if (!this.stopped) this.problem = sentence(error);
    } finally {
      this.#show();
      this.at = null;
    }
  }

  async #between(tried: TriedWith): Promise<void> {
    for (;;) {
      if (this.#by() === 'loudest') await this.#measureLimits(tried);
      const next = nextToTry(this.#fitted, this.#found, this.#refusedKeys, this.#by());
      if (next.length === 0) return;
      await this.#draftsOf('between', next, tried);
    }
  }

  async #draftsOf(
    at: 'drafts' | 'between',
    candidates: readonly Candidate[],
    tried: TriedWith
  ): Promise<void> {
    this.at = at;
    this.total += candidates.length;
    await fewAtATime(candidates, AT_ONCE, async (candidate) => {
      await this.#try(candidate, 'draft', tried);
      this.done++;
    });
    this.#show();
  }

  async #try(candidate: Candidate, accuracy: AccuracyName, tried: TriedWith): Promise<void> {
    const { signal } = this.#controller;
    const speaker = this.#drawer[candidate.speaker];
    try {
      const question = questionOfCandidate(this.file, this.#drawer, candidate);
      const known = await this.#parts.waves.tryOut(question, accuracy, signal);
      // Each in a task of its own, however many come at once.
      await new Promise((resolve) => setTimeout(resolve));
      const answer = answerOf(FIELD_MODEL, question, known);
      const measures = measuresOf(answer, speaker, tried);
      const { key, space } = candidate;
      const price = priceOfCandidate(this.#drawer, candidate);
      const own = { candidate, speaker, question, known, provisional: answer.provisional };
      this.#add({ key, space, price, accuracy, measures, loudest: null, ...own });
    } catch (error) {
      signal.throwIfAborted();
      // Of one that is known the draft stays.
      if (!this.#found.some(({ key }) => key === candidate.key))
        this.refused = [...this.refused, { candidate, why: sentence(error) }];
    }
  }

  /** Of what has none yet: the most it gives within its limits. */
  async #measureLimits(tried: TriedWith): Promise<void> {
    this.at = 'limits';
    for (const line of this.#found) {
      this.#controller.signal.throwIfAborted();
      if (line.loudest) continue;
      const answer = answerOf(FIELD_MODEL, line.question, line.known);
      const loudest = await loudestOf(answer, line.measures.levelDb, line.speaker, tried);
      this.#add({ ...line, loudest });
    }
    this.#show();
  }

  get #refusedKeys(): string[] {
    return this.refused.map(({ candidate }) => candidate.key);
  }

  #add(line: FitLine): void {
    this.#found = [...this.#found.filter(({ key }) => key !== line.key), line];
    // The first is shown at once.
    if (this.lines.length === 0) this.#show();
    else this.#showing ??= setTimeout(() => this.#show(), GROWS_MS);
  }

  #show(): void {
    if (this.#showing !== null) clearTimeout(this.#showing);
    this.#showing = null;
    this.lines = this.#found;
  }
}

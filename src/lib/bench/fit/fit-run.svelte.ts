import type { Speaker } from '../../acoustics/speaker/speaker.js';
import { drawerOf, priceOfCandidate, questionOfCandidate } from '../../evaluation/fit/drawer.js';
import {
  loudestOf,
  measuresOf,
  type Measures,
  type TriedSound,
  type TriedWith
} from '../../evaluation/fit/measures.js';
import { ranked, type Measured, type MeasureName } from '../../evaluation/fit/ranking.js';
import { soundsOf, triedVolts, triedWith } from '../../evaluation/fit/tried-with.js';
import { answerOf, FIELD_MODEL } from '../../evaluation/models.js';
import type { WaveAnswers } from '../../evaluation/wave-answers.svelte.js';
import type { Known, Question } from '../../evaluation/wave-jobs.js';
import type { BenchFile } from '../../file/bench-file.js';
import type { Candidate } from '../../fitting/candidate.js';
import { fittingSteps } from '../../fitting/fit.js';
import { smallChanges, type ChangeName } from '../../fitting/small-changes.js';
import type { Misfit } from '../../fitting/why-not.js';
import { sentence } from '../../format/sentence.js';
import type { GeneratedSound } from '../../sounds/kinds.js';
import type { Hertz } from '../../units.js';
import type { AccuracyName } from '../../waves/mesh/accuracy.js';

/** What the workers have at a time: the next is there when one is done. */
const AT_ONCE = 4;
/** So many of those in front are solved in full at the end. */
const FINALISTS = 3;
/** The list grows so often at most: more often nobody could read it. */
const GROWS_MS = 300;
/** So long a task of the page may take before others get their turn. */
const SLICE_MS = 8;

/** One mount that was tried. */
export interface FitLine extends Measured {
  candidate: Candidate;
  speaker: Speaker;
  question: Question;
  known: Known;
  /** Whether it is a draft. */
  provisional: boolean;
}

/** What a small change does to a line. */
export interface Matter {
  name: ChangeName;
  measures: Measures;
}

export interface FitParts {
  waves: Pick<WaveAnswers, 'tryOut'>;
  sound: (sound: GeneratedSound) => Promise<TriedSound>;
}

/** Everything that fits into one model, tried: it grows as the answers come, and what has come stays when it is stopped. */
export class FitRun {
  lines = $state.raw<readonly FitLine[]>([]);
  misfits = $state.raw<readonly Misfit[]>([]);
  /** What fits and could not be solved, and why. */
  refused = $state.raw<readonly { candidate: Candidate; why: string }[]>([]);
  /** What it is at: null before and after. */
  at = $state<'sizes' | 'drafts' | 'limits' | 'finalists' | null>(null);
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

  async start(): Promise<void> {
    const { model } = this.file;
    if (!model || this.running) return;
    try {
      this.at = 'sizes';
      const candidates = await this.#fitting();
      const tried = await this.#triedWith();
      this.at = 'drafts';
      this.total = candidates.length;
      await this.#each(candidates, async (candidate) => {
        await this.#try(candidate, 'draft', tried);
        this.done++;
      });
      this.#show();
      this.at = 'limits';
      await this.#measureLimits(tried);
      this.at = 'finalists';
      const front = ranked(this.#found, this.#by()).slice(0, FINALISTS);
      await this.#each(
        front.map(({ line }) => line.candidate),
        (candidate) => this.#try(candidate, 'full', tried)
      );
      await this.#measureLimits(tried);
    } catch (error) {
      if (!this.stopped) this.problem = sentence(error);
    } finally {
      this.#show();
      this.at = null;
    }
  }

  /** What is known by now stays. */
  stop(): void {
    if (!this.running) return;
    this.stopped = true;
    this.#controller.abort();
  }

  /** What each small change does to a line, in the order of the changes; drafts, as they come. */
  async matters(
    { question, speaker }: FitLine,
    signal: AbortSignal,
    found: (matter: Matter) => void
  ): Promise<void> {
    const tried = await this.#triedWith();
    for (const { name, installation } of smallChanges(question.installation)) {
      const changed = { ...question, installation };
      let known: Known;
      try {
        known = await this.#parts.waves.tryOut(changed, 'draft', signal);
      } catch (error) {
        if (signal.aborted) throw error;
        // this one cannot be solved: the others can
        continue;
      }
      const answer = answerOf(FIELD_MODEL, changed, known);
      found({ name, measures: measuresOf(answer, { ...speaker, motor: installation.speaker.motor }, tried) });
    }
  }

  /** The draft of a line, against which small changes are told. */
  async draftOf({ question, speaker }: FitLine, signal: AbortSignal): Promise<Measures> {
    const known = await this.#parts.waves.tryOut(question, 'draft', signal);
    return measuresOf(answerOf(FIELD_MODEL, question, known), speaker, await this.#triedWith());
  }

  /** What fits, a few speakers a task. */
  async #fitting(): Promise<readonly Candidate[]> {
    const steps = fittingSteps(this.file.model!, this.#drawer, this.file.amplifier?.leastLoad);
    for (let since = performance.now(); ;) {
      const { done, value } = steps.next();
      if (done) {
        this.misfits = value.misfits;
        return value.candidates;
      }
      if (performance.now() - since < SLICE_MS) continue;
      await new Promise((resolve) => setTimeout(resolve));
      this.#controller.signal.throwIfAborted();
      since = performance.now();
    }
  }

  #triedWith(): Promise<TriedWith> {
    const { file } = this;
    const made = (this.#tried ??= Promise.all(soundsOf(file, file.model!).map(this.#parts.sound)).then(
      (sounds) => triedWith(file, this.#drawer, sounds, triedVolts(file), this.#sampleRate)
    ));
    made.catch(() => (this.#tried = null));
    return made;
  }

  /** Takes one after the other, a few at a time. */
  async #each(
    candidates: readonly Candidate[],
    deed: (candidate: Candidate) => Promise<void>
  ): Promise<void> {
    const waiting = [...candidates];
    const work = async (): Promise<void> => {
      for (let next = waiting.shift(); next; next = waiting.shift()) await deed(next);
    };
    await Promise.all(Array.from({ length: AT_ONCE }, work));
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
      if (!this.#isKnown(candidate)) this.refused = [...this.refused, { candidate, why: sentence(error) }];
    }
  }

  /** Of what has none yet: the most it gives within its limits. */
  async #measureLimits(tried: TriedWith): Promise<void> {
    for (const line of this.#found) {
      this.#controller.signal.throwIfAborted();
      if (line.loudest) continue;
      const answer = answerOf(FIELD_MODEL, line.question, line.known);
      const loudest = await loudestOf(answer, line.measures.levelDb, line.speaker, tried);
      this.#add({ ...line, loudest });
    }
    this.#show();
  }

  #isKnown({ key }: Candidate): boolean {
    return this.#found.some((line) => line.key === key);
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

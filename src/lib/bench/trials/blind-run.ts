import type { BenchFile } from '../../file/bench-file.js';
import { type BlindRun, isUnderWay, SAYINGS, type Saying, type TrialQuestion } from '../../file/blind-run.js';
import { drawTrials } from './draw-trials.js';
import { runMark } from './run-mark.js';

/** What is asked, of which setups, how often. */
export interface RunWish {
  question: TrialQuestion;
  /** Places in the bench's setups. */
  places: number[];
  planned: number;
}

/** The bench with a run begun. `seed` comes from a source of chance. */
export function withRun(file: BenchFile, { question, places, planned }: RunWish, seed: number): BenchFile {
  const run: BlindRun = {
    question,
    mounts: places.map((place) => file.setups[place].name),
    places,
    sound: file.sound.name,
    planned,
    seed: seed >>> 0,
    bench: runMark(file, places),
    answers: []
  };
  return { ...file, trials: [...(file.trials ?? []), run] };
}

/** The run that is under way. */
export function runUnderWay({ trials }: Pick<BenchFile, 'trials'>): BlindRun | null {
  const last = trials?.at(-1);
  return last && isUnderWay(last) ? last : null;
}

/** What stands behind the letters now, as places in the run's mounts. */
export function behindNow(run: BlindRun): number[] {
  return drawTrials(run)[run.answers.length];
}

/** The bench with the present trial answered. */
export function withAnswer(file: BenchFile, said: Saying): BenchFile {
  return changed(file, (run) =>
    (SAYINGS[run.question] as readonly string[]).includes(said)
      ? { ...run, answers: [...run.answers, { behind: behindNow(run), said }] }
      : run
  );
}

/** The bench with the run ended before its time. */
export function withRunEnded(file: BenchFile, ended: NonNullable<BlindRun['ended']>): BenchFile {
  return changed(file, (run) => ({ ...run, ended }));
}

/** Whether the bench is still the one that the run compares. */
export function isSameBench(file: BenchFile, run: BlindRun): boolean {
  return runMark(file, run.places) === run.bench;
}

function changed(file: BenchFile, change: (run: BlindRun) => BlindRun): BenchFile {
  const run = runUnderWay(file);
  return run ? { ...file, trials: [...file.trials!.slice(0, -1), change(run)] } : file;
}

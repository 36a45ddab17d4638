/** What is asked in each trial of a run. */
export type TrialQuestion = 'same' | 'like' | 'better';

/** What stands for mounts that are not named: two or three in a trial, as many as the shelf holds in a vote. */
export const LETTERS = ['A', 'B', 'C', 'D', 'E', 'F'] as const;

/** What can be said to each question: a letter, or whether the two are the same. */
export const SAYINGS = {
  same: ['same', 'different'],
  like: ['B', 'C'],
  better: ['A', 'B']
} as const satisfies Record<TrialQuestion, readonly string[]>;

export type Saying = (typeof SAYINGS)[TrialQuestion][number];

/** A trial that has been answered: what stood behind the letters in their order, as places in the run's `mounts`, and what was said. */
export interface AnsweredTrial {
  behind: number[];
  said: Saying;
}

/** A run of blind trials. It is under way as long as it has fewer answers than planned and has not been ended. */
export interface BlindRun {
  question: TrialQuestion;
  /** What was compared, by the names it had. */
  mounts: string[];
  /** Where it stood among the setups. */
  places: number[];
  /** The sound's name. */
  sound: string;
  /** The number of trials, said beforehand. */
  planned: number;
  /** What the letters are drawn from. */
  seed: number;
  /** Tells whether the bench is still the one that is compared. */
  bench: string;
  answers: AnsweredTrial[];
  /** Stopped before its time, by the listener or by a change of the bench. */
  ended?: 'early' | 'changed';
}

export function isUnderWay({ answers, planned, ended }: BlindRun): boolean {
  return ended === undefined && answers.length < planned;
}

/** What one value of a run says of another; one sentence where it cannot be, null where it can. */
export function runProblem({ question, mounts, places, planned, answers }: BlindRun): string | null {
  const many = question === 'better' ? 6 : 2;
  if (!(mounts.length >= 2 && mounts.length <= many))
    return `mounts must be ${many === 2 ? 'two' : '2 … 6'}, got ${mounts.length}`;
  if (places.length !== mounts.length) return `places must be as many as mounts, got ${places.length}`;
  if (answers.length > planned) return `answers must be at most as many as planned, got ${answers.length}`;
  const letters = question === 'like' ? 3 : 2;
  for (const [i, { behind, said }] of answers.entries()) {
    if (behind.length !== letters || behind.some((place) => place >= mounts.length))
      return `answers[${i}].behind must be ${letters} places in mounts`;
    if (!(SAYINGS[question] as readonly string[]).includes(said))
      return `answers[${i}].said must be ${SAYINGS[question].join(' or ')}, got ${said}`;
  }
  return null;
}

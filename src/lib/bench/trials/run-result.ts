import { type AnsweredTrial, type BlindRun, LETTERS } from '../../file/blind-run.js';
import { type PreferenceRanking, preferenceRanking } from '../../listening/trials/preference-ranking.js';
import {
  hearingOutcome,
  preferenceOutcome,
  type TrialOutcome
} from '../../listening/trials/trial-outcome.js';

/** What came of a run. */
export type RunResult =
  /** Something was right or wrong. */
  | { kind: 'heard'; right: number; trials: number; outcome: TrialOutcome }
  /** One of two was chosen: how often the first of them. */
  | { kind: 'liked'; first: number; trials: number; outcome: TrialOutcome }
  /** Several were compared in pairs. */
  | { kind: 'ranked'; trials: number; ranking: PreferenceRanking }
  /** No trial was answered. */
  | { kind: 'none'; trials: 0 };

export function runResult({ question, mounts, answers }: BlindRun): RunResult {
  const trials = answers.length;
  if (trials === 0) return { kind: 'none', trials };
  if (question !== 'better') {
    const right = answers.filter(isRight).length;
    return { kind: 'heard', right, trials, outcome: hearingOutcome(right, trials) };
  }
  if (mounts.length === 2) {
    const first = answers.filter((answer) => chosen(answer) === 0).length;
    return { kind: 'liked', first, trials, outcome: preferenceOutcome(first, trials) };
  }
  const wins = mounts.map(() => mounts.map(() => 0));
  for (const answer of answers) {
    const winner = chosen(answer);
    for (const place of answer.behind) if (place !== winner) wins[winner][place]++;
  }
  return { kind: 'ranked', trials, ranking: preferenceRanking(wins) };
}

/** Whether an answer to *same or different*, or to *which is like the first*, is right. */
export function isRight({ behind, said }: AnsweredTrial): boolean {
  if (said === 'same' || said === 'different') return (behind[0] === behind[1]) === (said === 'same');
  return chosen({ behind, said }) === behind[0];
}

/** Which mount the said letter stood for, as a place in the run's mounts. */
function chosen({ behind, said }: AnsweredTrial): number {
  return behind[(LETTERS as readonly string[]).indexOf(said)];
}

/** Whether all answers of a run are one and the same word: then little can be read from it. */
export function saysAlwaysTheSame({ answers }: Pick<BlindRun, 'answers'>): boolean {
  return answers.length >= 5 && answers.every(({ said }) => said === answers[0].said);
}

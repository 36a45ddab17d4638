import { pairsOf } from '../../bench/trials/draw-trials.js';
import { type RunResult, saysAlwaysTheSame } from '../../bench/trials/run-result.js';
import { ofHundred } from '../../format/of-hundred.js';
import type { BlindRun, Saying, TrialQuestion } from '../../file/blind-run.js';
import {
  hearingOutcome,
  preferenceOutcome,
  type TrialOutcome
} from '../../listening/trials/trial-outcome.js';
import { TRIALS, trialPlan } from '../../listening/trials/trial-plan.js';

export const QUESTIONS: Readonly<Record<TrialQuestion, { name: string; asks: string }>> = {
  same: { name: 'same or different', asks: 'Are A and B the same, or different?' },
  like: { name: 'which one is like the first', asks: 'A is the first. Which one is like it?' },
  better: { name: 'which do you like better', asks: 'Which do you like better?' }
};

export const SAID: Readonly<Record<Saying, string>> = {
  same: 'the same',
  different: 'different',
  A: 'A',
  B: 'B',
  C: 'C'
};

/** One sentence why a question cannot be asked of so many chosen mounts; null where it can. */
export function choiceProblem(question: TrialQuestion, there: number, chosen: number): string | null {
  if (there < 2) return 'There is one mount only. A comparison needs two: put another one on the shelf.';
  if (chosen < 2) return 'Choose two mounts.';
  if (question !== 'better' && chosen > 2) return `This question compares two mounts; ${chosen} are chosen.`;
  return null;
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** What so many trials can show, said beforehand. */
export function planWords(question: TrialQuestion, mounts: number, planned: number): string[] {
  if (question === 'better' && mounts > 2) {
    const rounds = planned / pairsOf(mounts).length;
    return [
      `Each is compared with each ${rounds === 1 ? 'once' : `${rounds} times`}.`,
      'What comes of it is an order of what you chose. It proves nothing.'
    ];
  }
  const { needed, guessing, power } = trialPlan(planned, question === 'better' ? 2 : 1);
  if (question === 'better')
    return [
      `To show a preference, one of the two must be chosen ${needed} of ${planned} times.`,
      `Without any preference that happens in ${ofHundred(guessing)} of 100 such runs.`,
      `Who prefers one in four of five trials gets there in ${ofHundred(power(0.8))} of 100 runs, who prefers it in three of five in ${ofHundred(power(0.6))}.`
    ];
  return [
    `To show that you hear a difference, ${needed} of ${planned} answers must be right.`,
    `Guessing gets there in ${ofHundred(guessing)} of 100 such runs.`,
    `Who is right in four of five trials gets there in ${ofHundred(power(0.8))} of 100 runs, who is right in three of five in ${ofHundred(power(0.6))}.`
  ];
}

/** What came of a run: first the count, then what it shows, then what it does not. */
export function resultWords(
  run: BlindRun,
  result: RunResult
): { count: string; shows: string[]; not: string[] } {
  const not = [...howItEnded(run), ...(saysAlwaysTheSame(run) ? [alwaysTheSame(run)] : [])];
  if (result.kind === 'none')
    return { count: 'No trial was answered.', shows: ['So there is nothing to tell.'], not: [] };
  if (result.kind === 'heard') return heardWords(run, result, not);
  if (result.kind === 'liked') return likedWords(run, result, not);
  return rankedWords(run, result, not);
}

function heardWords(
  { mounts: [first, second] }: BlindRun,
  { right, trials, outcome }: Extract<RunResult, { kind: 'heard' }>,
  not: string[]
): ReturnType<typeof resultWords> {
  return {
    count: `${right} of ${trials} right.`,
    shows: [
      `By guessing alone ${right === trials ? 'all' : `${right} or more`} of ${trials} are right in ${ofHundred(outcome.chance)} of 100 such runs.`,
      outcome.shown
        ? `That is too rare for guessing: a difference between ${first} and ${second} was heard, on this sound and at one loudness.`
        : `A difference between ${first} and ${second} is not shown.`,
      inTruth('be right', outcome)
    ],
    not: [
      ...not,
      outcome.shown
        ? 'It does not say how large the difference is, nor which of the two is better, nor what other ears hear.'
        : `That does not prove that there is none. ${missed(trials, 1)}`
    ]
  };
}

function likedWords(
  { mounts: [first, second] }: BlindRun,
  { first: times, trials, outcome }: Extract<RunResult, { kind: 'liked' }>,
  not: string[]
): ReturnType<typeof resultWords> {
  const [more, less, most] = times * 2 >= trials ? [first, second, times] : [second, first, trials - times];
  return {
    count: `${first} was chosen ${times} of ${trials} times, ${second} ${trials - times}.`,
    shows: [
      `Without any preference one of the two is chosen ${most === trials ? 'every time' : `${most} times or more`} in ${ofHundred(outcome.chance)} of 100 such runs.`,
      outcome.shown
        ? `That is too rare for chance: on this sound and at one loudness ${more} is preferred to ${less}.`
        : 'A preference is not shown.',
      inTruth(`choose ${first}`, outcome)
    ],
    not: [
      ...not,
      outcome.shown
        ? 'It holds for you, this sound and this model. It does not say that it is the better one for others.'
        : `That does not prove that there is none. ${missed(trials, 2)}`
    ]
  };
}

function rankedWords(
  { mounts }: BlindRun,
  { ranking: { won, compared, worth } }: Extract<RunResult, { kind: 'ranked' }>,
  not: string[]
): ReturnType<typeof resultWords> {
  const order = inOrder(won, compared);
  const best = order.filter((i) => won[i] === won[order[0]] && compared[i] === compared[order[0]]);
  const [first, second] = order;
  return {
    count:
      best.length > 1
        ? `${best.map((i) => mounts[i]).join(' and ')} were chosen most often, equally.`
        : `${mounts[first]} was chosen most often, ${won[first]} of ${compared[first]} times.`,
    shows: [
      worth
        ? `By the model of Bradley and Terry ${mounts[first]} would be chosen before ${mounts[second]} in ${percent(worth[first] / (worth[first] + worth[second]))} of all comparisons.`
        : 'How far they are apart cannot be told: some of them lost no comparison with the rest.'
    ],
    not: [
      ...not,
      'It is an order of what you chose on this sound. Neighbours in it may well change places another time.'
    ]
  };
}

/** Places of a ranking, the most chosen first. */
export function inOrder(won: readonly number[], compared: readonly number[]): number[] {
  const share = (i: number): number => (compared[i] ? won[i] / compared[i] : 0);
  return won.map((_, i) => i).sort((a, b) => share(b) - share(a));
}

function inTruth(deed: string, { interval: [low, high] }: TrialOutcome): string {
  return `In the long run you would ${deed} in ${percent(low)} to ${percent(high)} of all trials (95 % confidence, exact).`;
}

/** How often a weak difference stays hidden. */
function missed(trials: number, sides: 1 | 2): string {
  if (trials < TRIALS.fewest)
    return (sides === 1 ? hearingOutcome : preferenceOutcome)(trials, trials).shown
      ? `Of so few trials all ${trials} must be right to show anything.`
      : 'So few trials can show nothing.';
  const hidden = 1 - trialPlan(trials, sides).power(0.6);
  return sides === 1
    ? `Who is right in three of five trials is missed by ${trials} trials in ${ofHundred(hidden)} of 100 runs.`
    : `Who prefers one in three of five trials is missed by ${trials} trials in ${ofHundred(hidden)} of 100 runs.`;
}

function howItEnded({ ended, answers, planned }: BlindRun): string[] {
  if (ended === 'early')
    return [
      `Stopped after ${answers.length} of ${planned} trials. Who stops when it looks well passes by chance more often than these figures say.`
    ];
  if (ended === 'changed')
    return [
      `The bench was changed after ${answers.length} of ${planned} trials. What came before and what would come after is not the same; the run ended there.`
    ];
  return [];
}

function alwaysTheSame({ question, answers }: BlindRun): string {
  const said = answers[0].said;
  return question === 'same'
    ? `Every answer was “${SAID[said]}”. That tells of the answers rather than of the mounts.`
    : `Every answer was ${said}. What stood behind it changed: that tells of the letter rather than of the mounts.`;
}

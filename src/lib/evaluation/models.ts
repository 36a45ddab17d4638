import type { Installation } from '../acoustics/installation.js';
import type { Listener } from '../acoustics/listener.js';
import { hasOpenings, withoutOpenings, type Mount } from '../acoustics/mounts/mount.js';
import { checkInFront } from '../acoustics/rule/rule-of-thumb.js';
import type { ModelName } from '../file/bench-file.js';
import type { AccuracyName } from '../waves/mesh/accuracy.js';
import { checkListener } from '../waves/curve/heard-waves.js';
import { type Answer, ruleAnswer, type SpeakerKind, waveAnswer } from './answer.js';
import type { Known, Question } from './wave-jobs.js';

/** What a model can do. Whoever wants to know whether something goes asks here, and not which model it is. */
export interface Model {
  /** Whether it knows the sound at any angle; otherwise straight in front of the cone alone. */
  offAxis: boolean;
  /** Whether it knows what a hard board under the mount does. */
  board: boolean;
  /** Whether it knows leaks, a chassis, a grille, a body round the mount. */
  openings: boolean;
  /** Whether it knows the air around: levels all round, pressure in a section, a puff. */
  field: boolean;
  /** Whether it knows the acoustic load of the cone. */
  load: boolean;
  /** Whether its curve shows what rings and ripples: humps and holes, the ring of a shell. */
  ripples: boolean;
  /** Whether a size that changes none of the rule's figures changes nothing of its answer. */
  figuresTellAll: boolean;
  /** How finely it can be solved, the coarsest first; nothing for a closed form. */
  accuracies: readonly AccuracyName[];
  /** Who stands in while its answers are awaited from the workers, and is drawn beside them; null where it answers at once. */
  standIn: ModelName | null;
  /** @throws RangeError with one sentence where it cannot listen there */
  checkListener: (listener: Listener) => void;
  /** Its answer, from what is known of its solution; null as long as that is awaited. */
  answer: (question: Question, known: Known | null, speaker: SpeakerKind) => Answer | null;
}

export const models: Readonly<Record<ModelName, Model>> = {
  rule: {
    offAxis: false,
    board: false,
    openings: false,
    field: false,
    load: false,
    ripples: false,
    figuresTellAll: true,
    accuracies: [],
    standIn: null,
    checkListener: checkInFront,
    answer: ({ installation, air, listener }, _, speaker) => ruleAnswer(installation, air, listener, speaker)
  },
  wave: {
    offAxis: true,
    board: true,
    openings: true,
    field: true,
    load: true,
    ripples: true,
    figuresTellAll: false,
    accuracies: ['draft', 'full'],
    standIn: 'rule',
    checkListener,
    answer: ({ installation, air }, known, speaker) =>
      known && waveAnswer(known.heard, known.accuracy, installation, air, speaker)
  }
};

/** All models, in the order in which they are offered. */
export const MODEL_NAMES = Object.keys(models) as ModelName[];

/** The model that `predict` asks unless told. */
export const USUAL_MODEL: ModelName = 'rule';

/** The model that is asked where the air is to be seen. */
export const FIELD_MODEL: ModelName = MODEL_NAMES.find((name) => models[name].field)!;

/** Whether a model knows the answer where one listens, for some mounts: not every one knows a board, or openings. */
export function isOffered(name: ModelName, { board }: Listener, mounts: readonly Mount[] = []): boolean {
  const { board: knowsBoard, openings } = models[name];
  return (knowsBoard || !board) && (openings || !mounts.some(hasOpenings));
}

/** The model that answers there: the chosen one, or if it knows nothing of board or openings the first that does. */
export function modelAt(chosen: ModelName, listener: Listener, mounts: readonly Mount[] = []): ModelName {
  return isOffered(chosen, listener, mounts)
    ? chosen
    : MODEL_NAMES.find((name) => isOffered(name, listener, mounts))!;
}

/** The model after this one, round and round, of those that know the answer. */
export function nextModel(name: ModelName, listener: Listener, mounts: readonly Mount[] = []): ModelName {
  const next = MODEL_NAMES[(MODEL_NAMES.indexOf(name) + 1) % MODEL_NAMES.length];
  return modelAt(next, listener, mounts);
}

/** Whether a model's answers come from the workers, later. */
export function isAwaited(name: ModelName): boolean {
  return models[name].standIn !== null;
}

/** Where a model listens for somebody who listens there: straight in front, in the hand, if it knows nothing else. */
export function whereItListens(name: ModelName, listener: Listener): Listener {
  const { offAxis, board } = models[name];
  const known = board || !listener.board ? listener : withoutBoard(listener);
  return offAxis || known.angleDeg === 0 ? known : { ...known, angleDeg: 0 };
}

/** What of a question a model knows: somebody straight in front of a bare mount in the hand, if nothing else. */
export function asItKnows<Asked extends Question>(name: ModelName, question: Asked): Asked {
  return {
    ...question,
    installation: knownOf(name, question.installation),
    listener: whereItListens(name, question.listener)
  };
}

function knownOf(name: ModelName, installation: Installation): Installation {
  const { board, openings } = models[name];
  const placed = board || !installation.board ? installation : withoutBoard(installation);
  const { mount } = placed;
  return openings || !hasOpenings(mount) ? placed : { ...placed, mount: withoutOpenings(mount) };
}

function withoutBoard<Placed extends { board?: unknown }>(placed: Placed): Placed {
  const free = { ...placed };
  delete free.board;
  return free;
}

/**
 * The one way from a question to an answer, for the page (which has what its workers found by now) as for the terminal (which
 * solves at once): the model's own, or that of the one that stands in while it is awaited.
 * @throws RangeError when it is asked to respond, as the model does
 */
export function answerOf(
  name: ModelName,
  question: Question,
  known: Known | null,
  speaker: SpeakerKind = 'full'
): Answer {
  const { answer, standIn } = models[name];
  const own = answer(question, known, speaker);
  if (own) return own;
  return answerOf(standIn!, asItKnows(standIn!, question), null, speaker);
}

import { soundSpeed } from '../acoustics/air.js';
import { checkInstallation } from '../acoustics/mounts/check-installation.js';
import type { ModelName } from '../file/bench-file.js';
import { ACCURACY, type AccuracyName } from '../waves/mesh/accuracy.js';
import { hearWaves } from '../waves/curve/heard-waves.js';
import { mountMesh } from '../waves/mesh/mount-mesh.js';
import { solveMount } from '../waves/wave-solution.js';
import { type Answer, type SpeakerKind } from './answer.js';
import { answerOf } from './models.js';
import type { Known, Question } from './wave-jobs.js';

/** How a model that the page awaits from its workers is solved on the spot. */
interface Solver {
  /** The quick part, which says whether it can be solved at all. */
  check: (question: Question, accuracy: AccuracyName) => void;
  solve: (question: Question, accuracy: AccuracyName) => Known;
}

/** Apart from the table of models, because the page has no use for it: its workers hold what solves. */
const SOLVERS: Readonly<Record<ModelName, Solver | null>> = {
  rule: null,
  wave: {
    check: ({ installation, air }, accuracy) => {
      mountMesh(installation, soundSpeed(air), ACCURACY[accuracy]);
    },
    solve: ({ installation, air, listener }, accuracy) => ({
      accuracy,
      heard: hearWaves(solveMount(installation, air, { accuracy }), listener)
    })
  }
};

/** @throws RangeError with one sentence where the mount cannot be built, or cannot be solved by this model */
export function checkSolvable(name: ModelName, question: Question, accuracy: AccuracyName): void {
  checkInstallation(question.installation);
  SOLVERS[name]?.check(question, accuracy);
}

/**
 * A model's answer, solved here and now: long work, for a terminal.
 *
 * @param accuracy of a model that is solved; a closed form has no use for it
 * @throws RangeError with one sentence where it cannot be solved
 */
export function answerNow(
  name: ModelName,
  question: Question,
  accuracy: AccuracyName,
  speaker: SpeakerKind
): Answer {
  return answerOf(name, question, SOLVERS[name]?.solve(question, accuracy) ?? null, speaker);
}

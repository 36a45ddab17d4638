import { sensitivity } from '../../acoustics/speaker/sensitivity.js';
import type { Installation } from '../../acoustics/installation.js';
import { type Answer, drivenAnswer } from '../../evaluation/answer.js';
import { answerOf, asItKnows, isAwaited, whereItListens } from '../../evaluation/models.js';
import type { WaveAnswers } from '../../evaluation/wave-answers.svelte.js';
import type { Question } from '../../evaluation/wave-jobs.js';
import type { ModelName } from '../../file/bench-file.js';
import type { Bench } from '../bench.svelte.js';
import type { Reach } from './headroom.js';

/**
 * What a bench must have room for: all that the knobs of its mounts can reach, by a model. As it is played: the most sensitive speaker
 * as if it were alone, the others softer by what they lack (`Branches`).
 */
export function reachOfBench(
  { file, listener: place, stands, sampleRate }: Pick<Bench, 'file' | 'listener' | 'stands' | 'sampleRate'>,
  waves: Pick<WaveAnswers, 'draft'> | null,
  model: ModelName
): Reach {
  const listener = whereItListens(model, place);
  const installations = stands.filter(({ problem }) => !problem).map(({ installation }) => installation);
  const { air } = file;
  const lift = file.lift ?? null;
  const drafted = async (question: Question): Promise<Answer> => {
    // As on the shelf, another model stands in for what cannot be solved.
    const known = await waves!.draft(question).catch(() => null);
    return answerOf(model, question, known);
  };
  const most = Math.max(...installations.map(({ speaker }) => sensitivity(speaker, air)));
  const awaited = isAwaited(model) && waves !== null;
  const answer = (installation: Installation): Answer | Promise<Answer> => {
    const question = asItKnows(model, { installation, air, listener: place });
    const drive = sensitivity(installation.speaker, air) / most;
    return awaited
      ? drafted(question).then((drafted) => drivenAnswer(drafted, { drive, lift }))
      : drivenAnswer(answerOf(model, question, null), { drive, lift });
  };
  return { installations, answer, where: [model, air, listener, most, lift], sampleRate };
}

import type { Hertz } from '../../units.js';
import { ACCURACY } from '../../waves/mesh/accuracy.js';
import type { Answer } from '../../evaluation/answer.js';
import type { ModelName } from '../../file/bench-file.js';
import { frequencyWords } from '../../format/frequency-words.js';

/** What is said beside the choice of the model. */
export interface ModelStatus {
  text: string;
  /** Whether the chosen model cannot do what is asked of it. */
  alarm: boolean;
}

/** What a model that answers at once is good for; null where there is more to be said. */
const AT_ONCE: Readonly<Record<ModelName, string | null>> = {
  rule: 'a first-order curve, straight in front only',
  wave: null
};

/** How far the heard mount's answer has come, and what it is good for. */
export function modelStatus({
  model,
  answer,
  awaited,
  refused,
  progress,
  stopped,
  standsIn
}: {
  model: ModelName;
  answer: Answer | null;
  /** Whether a better answer is on its way. */
  awaited: boolean;
  /** Why it could not be solved. */
  refused: string | null;
  progress: number | null;
  stopped: boolean;
  /** What plays is not yet what is drawn. */
  standsIn: boolean;
}): ModelStatus {
  const calm = (text: string): ModelStatus => ({ text, alarm: false });
  const atOnce = AT_ONCE[model];
  if (atOnce !== null) return calm(atOnce);
  if (refused) {
    const instead = answer?.model === model ? 'Only a draft' : 'The rule of thumb stands in';
    return { text: `${instead}: ${refused}`, alarm: true };
  }
  if (answer?.model !== model) return calm(answer ? 'being solved: you hear the rule of thumb' : '');
  if (standsIn) return calm('drawn; for a moment you still hear the rule of thumb');
  const { errorDb } = ACCURACY[answer.accuracy!];
  const good = `within ${errorDb} dB up to ${frequencyWords(rounded(answer.solvedTo))}`;
  if (!answer.provisional)
    return calm(awaited ? 'of the size before; being solved' : `solved in full: ${good}`);
  if (stopped) return calm(`a draft: ${good}; stopped there`);
  return calm(progress === null ? `a draft: ${good}` : `a draft, ${good}; in full in a moment`);
}

function rounded(frequency: Hertz): Hertz {
  return Math.round(frequency / 100) * 100;
}

import type { Installation } from '../../acoustics/installation.js';
import { type Answer, ruleAnswer, waveAnswer } from '../../evaluation/answer.js';
import type { WaveAnswers } from '../../evaluation/wave-answers.svelte.js';
import type { Bench } from '../bench.svelte.js';
import type { Reach } from './headroom.js';

/** What a bench must have room for: all that the knobs of its mounts can reach, by the model that it shows. */
export function reachOfBench(
  { file, listener, stands, sampleRate }: Pick<Bench, 'file' | 'listener' | 'stands' | 'sampleRate'>,
  waves: Pick<WaveAnswers, 'draft'> | null
): Reach {
  const installations = stands.filter(({ problem }) => !problem).map(({ installation }) => installation);
  const { air, view } = file;
  const rule = (probe: Installation): Answer => ruleAnswer(probe, air, { ...listener, angleDeg: 0 });
  const wave = async (probe: Installation): Promise<Answer> => {
    try {
      const known = await waves!.draft({ installation: probe, air, listener });
      return waveAnswer(known.heard, known.accuracy, probe, air);
    } catch {
      // As on the shelf, the rule stands in for what cannot be solved.
      return rule(probe);
    }
  };
  const answer = view.model === 'wave' && waves ? wave : rule;
  return { installations, answer, where: [view.model, air, listener], sampleRate };
}

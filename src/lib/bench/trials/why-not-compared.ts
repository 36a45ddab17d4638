import type { Stand } from '../../evaluation/stand.js';
import type { Lufs } from '../../units.js';
import { LEAST_LEVELLING } from '../sounding/levels.svelte.js';

const MOST_APART = Math.round(-20 * Math.log10(LEAST_LEVELLING));

/** One sentence why these cannot be compared by ear; null where they can. `loudness` in their order, null where it is not known yet. */
export function whyNotCompared(
  stands: readonly Pick<Stand, 'problem' | 'setup'>[],
  loudness: readonly (Lufs | null)[],
  { sameLoudness = true }: { sameLoudness?: boolean } = {}
): string | null {
  const unbuilt = stands.find(({ problem }) => problem);
  if (unbuilt) return `${unbuilt.setup.name} cannot be built as it stands.`;
  const silent = loudness.findIndex((level) => level === -Infinity);
  if (silent >= 0)
    return `${stands[silent].setup.name} is silent on this sound: there is nothing to compare.`;
  const known = loudness.filter((level) => level !== null);
  if (sameLoudness && Math.max(...known) - Math.min(...known) > MOST_APART)
    return `They are more than ${MOST_APART} dB apart on this sound. So far apart they are not brought to one loudness.`;
  return null;
}

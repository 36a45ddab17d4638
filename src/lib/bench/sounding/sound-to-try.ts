import type { SoundFigures } from '../../listening/sound-figures.js';
import type { Strain } from '../../listening/strain.js';
import type { LabClient } from '../../workers/sound/client.js';
import type { Loop } from './sound-cache.js';

/** A sound that mounts can be tried on. */
export interface SoundToTry {
  figures: SoundFigures;
  strain: (impulseResponses: Float32Array[]) => Promise<{ own: Strain; through: Strain[] }>;
  /** Its highest peak behind a filter. */
  peak: (filter: Float32Array) => Promise<number>;
}

/** What is measured of a generated sound, and what measures it behind filters. */
export async function soundToTry(
  lab: Pick<LabClient, 'ask'>,
  loop: Promise<Loop | null>
): Promise<SoundToTry> {
  const { key, figures } = (await loop)!;
  return {
    figures: await figures(),
    strain: (impulseResponses) => lab.ask({ kind: 'strainThrough', key, impulseResponses }),
    peak: async (filter) => (await lab.ask({ kind: 'peaksThrough', key, impulseResponses: [filter] }))[0]
  };
}

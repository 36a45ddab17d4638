import type { BenchFile, BenchSpeaker, Setup } from '../file/bench-file.js';

/** What one setup costs, in whatever money its prices are in. */
export interface Price {
  /** Its speaker, or both. */
  speakers: number;
  mount: number;
}

/**
 * What a mount costs beside its speakers where that is not told: a bought box about doubles the price of the speaker (common practice); the
 * others are made of what lies about, or are there anyway.
 */
export function usualMountPrice({ mount }: Pick<Setup, 'mount'>, { price = 0 }: BenchSpeaker): number {
  return mount.kind === 'box' ? price : 0;
}

/** What a setup costs; null where the price of its speaker is not told. */
export function priceOf({ speakers }: Pick<BenchFile, 'speakers'>, setup: Setup): Price | null {
  const speaker = speakers[setup.speaker];
  if (speaker.price === undefined) return null;
  return {
    speakers: (setup.second ? 2 : 1) * speaker.price,
    mount: setup.price ?? usualMountPrice(setup, speaker)
  };
}

import type { Decibels } from '../../units.js';

export interface Folded {
  samples: Float32Array;
  /**
   * How much the channels cancel each other: 0 dB for equal channels, 3.01 dB for unrelated ones however many
   * there are, +Infinity where nothing is left.
   */
  cancellationDb: Decibels;
}

/** A channel this far below the loudest one counts as silent. */
const SILENT_BELOW: Decibels = -60;

/**
 * Folds channels to one: the mean of all of them, sample by sample.
 *
 * cancellationDb = 10·log10(mean power of the sounding channels / power of their own mean), less
 * 10·log10(n) − 3.01 dB for n > 2 sounding channels, so that unrelated channels score 3.01 dB whatever their
 * number and one threshold (6 dB) serves all. Channels 60 dB or more below the loudest count as silent: they dilute
 * the fold, which is a lower level and no cancellation, so a recording on one side only scores 0 dB.
 *
 * @param channels one array of equal length a channel, at least one
 * @throws RangeError without channels or for unequal lengths
 */
export function foldToMono(channels: Float32Array[]): Folded {
  if (channels.length === 0) throw new RangeError('a recording must have at least 1 channel, got 0');
  const length = channels[0].length;
  if (channels.some((channel) => channel.length !== length))
    throw new RangeError('all channels of a recording must have the same length');

  const samples = new Float32Array(length);
  for (const channel of channels) for (let i = 0; i < length; i++) samples[i] += channel[i] / channels.length;

  const powers = channels.map(power);
  const floor = Math.max(...powers) * 10 ** (SILENT_BELOW / 10);
  const sounding = powers.filter((p) => p > floor);
  if (sounding.length === 0) return { samples, cancellationDb: 0 };

  const mean = sounding.reduce((a, b) => a + b) / sounding.length;
  const fold = power(samples) * (channels.length / sounding.length) ** 2;
  const loss = sounding.length > 2 ? 10 * Math.log10(sounding.length / 2) : 0;
  return { samples, cancellationDb: 10 * Math.log10(mean / fold) - loss };
}

function power(samples: Float32Array): number {
  let sum = 0;
  for (let i = 0; i < samples.length; i++) sum += samples[i] * samples[i];
  return samples.length ? sum / samples.length : 0;
}

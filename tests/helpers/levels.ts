/** Root of the mean square of a sound. */
export function rms(samples: Float32Array): number {
  return Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);
}

/** How far the highest peak of a sound stands above its RMS, in dB. */
export function crestDb(samples: Float32Array): number {
  return 20 * Math.log10(samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0) / rms(samples));
}

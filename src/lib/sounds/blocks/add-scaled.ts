/** Adds gain·signal to a sum, from the first sample of both on. */
export function addScaled(sum: Float32Array, signal: Float32Array, gain: number): void {
  const length = Math.min(sum.length, signal.length);
  for (let i = 0; i < length; i++) sum[i] += gain * signal[i];
}

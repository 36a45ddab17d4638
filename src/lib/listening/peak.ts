/** Largest absolute sample; 0 for no samples. */
export function peak(samples: Float32Array): number {
  let largest = 0;
  for (let i = 0; i < samples.length; i++) {
    const size = Math.abs(samples[i]);
    if (size > largest) largest = size;
  }
  return largest;
}

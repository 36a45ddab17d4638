/** Peaks of a sound in `columns` equal parts, scaled so that the largest is 1; zeros for silence. */
export function overview(samples: Float32Array, columns: number): Float64Array {
  const peaks = new Float64Array(columns);
  for (let i = 0; i < samples.length; i++) {
    const column = Math.min(columns - 1, Math.floor((i / samples.length) * columns));
    const value = Math.abs(samples[i]);
    if (value > peaks[column]) peaks[column] = value;
  }
  const largest = Math.max(...peaks);
  return largest > 0 ? peaks.map((peak) => peak / largest) : peaks;
}

/**
 * The outline of a waveform as it is drawn: the largest |x| in each of `columns` equal parts of a sound, over the largest of
 * all, so within 0 … 1; zeros for silence. Sample i of N lies in part ⌊i·columns/N⌋; a part without a sample is 0.
 *
 * @param columns a whole number of at least 1
 * @throws RangeError for any other number of columns
 */
export function waveformPeaks(samples: Float32Array, columns: number): Float64Array {
  if (!(columns >= 1 && Number.isInteger(columns)))
    throw new RangeError(`columns of a waveform must be a whole number of at least 1, got ${columns}`);
  const peaks = new Float64Array(columns);
  for (let i = 0; i < samples.length; i++) {
    const column = Math.min(columns - 1, Math.floor((i / samples.length) * columns));
    const value = Math.abs(samples[i]);
    if (value > peaks[column]) peaks[column] = value;
  }
  const largest = Math.max(...peaks);
  return largest > 0 ? peaks.map((peak) => peak / largest) : peaks;
}

/**
 * Frequencies evenly spaced on a logarithmic scale from `from` to `to`, both included exactly, with at
 * least `pointsPerOctave` steps an octave.
 *
 * @throws RangeError unless 0 < from < to and pointsPerOctave > 0, all finite
 */
export function logGrid(from: number, to: number, pointsPerOctave: number): Float64Array {
  if (!(from > 0 && to > from && Number.isFinite(to)))
    throw new RangeError(`a logarithmic grid must run from above 0 upwards, got ${from} … ${to}`);
  if (!(pointsPerOctave > 0 && Number.isFinite(pointsPerOctave)))
    throw new RangeError(`points per octave must be above 0, got ${pointsPerOctave}`);
  const steps = Math.ceil(Math.log2(to / from) * pointsPerOctave - 1e-9);
  const grid = new Float64Array(steps + 1);
  for (let i = 0; i <= steps; i++) grid[i] = from * Math.pow(to / from, i / steps);
  grid[steps] = to;
  return grid;
}

/**
 * Adds level·wave(phase) to a signal, the wave being a table of one period. Phase and level are slow beside the sound: they
 * are worked out every `step` samples and are straight in between.
 *
 * @param table a power of two of points, and the first one again; straight between them
 * @param phase in periods, at a sample; asked for up to and including the end
 * @param level at a sample, likewise
 */
export function addTable(
  signal: Float32Array,
  table: Float32Array,
  step: number,
  phase: (sample: number) => number,
  level: (sample: number) => number
): void {
  const points = table.length - 1;
  let here = { phase: phase(0), level: level(0) };
  for (let from = 0; from < signal.length; from += step) {
    const to = Math.min(signal.length, from + step);
    const next = { phase: phase(to), level: level(to) };
    const turn = ((next.phase - here.phase) * points) / (to - from);
    const rise = (next.level - here.level) / (to - from);
    const x = (here.phase - Math.floor(here.phase)) * points;
    addStraight(signal, from, to, table, x, turn, here.level, rise);
    here = next;
  }
}

/** One step of it: from place `x` of the table on, in steps of `turn`. */
function addStraight(
  signal: Float32Array,
  from: number,
  to: number,
  table: Float32Array,
  x: number,
  turn: number,
  level: number,
  rise: number
): void {
  const last = table.length - 2;
  for (let i = from; i < to; i++) {
    const whole = Math.floor(x);
    const low = table[whole & last];
    signal[i] += level * (low + (x - whole) * (table[(whole & last) + 1] - low));
    x += turn;
    level += rise;
  }
}

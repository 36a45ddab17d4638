/** Amplitude of a line of a signal: of a sine, its peak value. Hann window over the whole signal. */
export function lineAmplitude(signal: Float32Array, sampleRate: number, frequency: number): number {
  return amplitudeIn(windowed(signal), sampleRate, frequency);
}

/** Signals that were asked for a line before; none is changed between two questions. */
const seen = new WeakMap<Float32Array, Float64Array>();

/** Through a Hann window. */
function windowed(signal: Float32Array): Float64Array {
  const before = seen.get(signal);
  if (before) return before;
  const turn = (2 * Math.PI) / signal.length;
  const through = Float64Array.from(signal, (x, i) => x * (1 - Math.cos(turn * i)));
  seen.set(signal, through);
  return through;
}

/** The line of a windowed signal by Goertzel's recursion: one product a sample. */
function amplitudeIn(signal: Float64Array, sampleRate: number, frequency: number): number {
  const turn = (2 * Math.PI * frequency) / sampleRate;
  const twice = 2 * Math.cos(turn);
  let last = 0;
  let before = 0;
  for (let i = 0; i < signal.length; i++) {
    const now = signal[i] + twice * last - before;
    before = last;
    last = now;
  }
  return (2 * Math.hypot(last - before * Math.cos(turn), before * Math.sin(turn))) / signal.length;
}

/** How many looks a resolution of the signal: at every `FINE`th first, at all of them where the strongest may be. */
const FINE = 4;

/** Half a resolution beside a line a look still sees 0.85 of it, through a Hann window. */
const SEEN_BESIDE = 0.8;

/**
 * The strongest line between two frequencies: looked for four times as finely as the signal resolves, then with a parabola
 * through the logarithms of the three highest points (right within a hundredth of the resolution for a single sine).
 */
export function strongestLine(
  signal: Float32Array,
  sampleRate: number,
  from: number,
  to: number
): { frequency: number; amplitude: number } {
  const through = windowed(signal);
  const step = sampleRate / signal.length / FINE;
  const at = (k: number) => amplitudeIn(through, sampleRate, from + k * step);
  const last = Math.ceil((to - from) / step);
  const looks = new Map<number, number>();
  for (let k = 0; k < last + FINE; k += FINE) looks.set(Math.min(k, last), at(Math.min(k, last)));
  const bar = SEEN_BESIDE * Math.max(...looks.values());
  for (const [near, amplitude] of [...looks])
    if (amplitude >= bar)
      for (let k = Math.max(0, near - FINE + 1); k <= Math.min(last, near + FINE - 1); k++)
        if (!looks.has(k)) looks.set(k, at(k));
  const amplitude = Math.max(...looks.values());
  const top = Math.min(...[...looks].filter(([, one]) => one === amplitude).map(([k]) => k));
  const [a, b, c] = [-1, 0, 1].map((k) => Math.log(at(top + k)));
  return { frequency: from + (top + (a - c) / (2 * (a - 2 * b + c))) * step, amplitude };
}

/** How the strength of a signal comes and goes: its size averaged over stretches of 1/`rate` seconds, over its mean. */
export function envelopeOf(signal: Float32Array, sampleRate: number, rate: number): Float32Array {
  const count = Math.floor((signal.length * rate) / sampleRate);
  const envelope = Float32Array.from({ length: count }, (_, k) => {
    const from = Math.floor((k * signal.length) / count);
    const to = Math.floor(((k + 1) * signal.length) / count);
    let sum = 0;
    for (let i = from; i < to; i++) sum += Math.abs(signal[i]);
    return sum / (to - from);
  });
  const mean = envelope.reduce((sum, x) => sum + x, 0) / count;
  return envelope.map((x) => x / mean - 1);
}

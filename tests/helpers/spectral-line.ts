/** Amplitude of a line of a signal: of a sine, its peak value. Hann window over the whole signal. */
export function lineAmplitude(signal: Float32Array, sampleRate: number, frequency: number): number {
  return amplitudeIn(windowed(signal), sampleRate, frequency);
}

/** Through a Hann window. */
function windowed(signal: Float32Array): Float64Array {
  const turn = (2 * Math.PI) / signal.length;
  return Float64Array.from(signal, (x, i) => x * (1 - Math.cos(turn * i)));
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
  const seen = windowed(signal);
  const step = sampleRate / signal.length / 4;
  const at = (k: number) => amplitudeIn(seen, sampleRate, from + k * step);
  const amplitudes = Array.from({ length: Math.ceil((to - from) / step) + 1 }, (_, k) => at(k));
  const top = amplitudes.indexOf(Math.max(...amplitudes));
  const [a, b, c] = [-1, 0, 1].map((k) => Math.log(at(top + k)));
  return { frequency: from + (top + (a - c) / (2 * (a - 2 * b + c))) * step, amplitude: amplitudes[top] };
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

/** Amplitude of a line of a signal: of a sine, its peak value. Hann window over the whole signal. */
export function lineAmplitude(signal: Float32Array, sampleRate: number, frequency: number): number {
  const { length } = signal;
  const turn = (2 * Math.PI * frequency) / sampleRate;
  const [turnCos, turnSin] = [Math.cos(turn), Math.sin(turn)];
  const hann = (2 * Math.PI) / length;
  const [hannCos, hannSin] = [Math.cos(hann), Math.sin(hann)];
  let [cos, sin, windowCos, windowSin, re, im] = [1, 0, 1, 0, 0, 0];
  for (let i = 0; i < length; i++) {
    const x = signal[i] * (1 - windowCos);
    re += x * cos;
    im += x * sin;
    const turned = cos * turnCos - sin * turnSin;
    sin = sin * turnCos + cos * turnSin;
    cos = turned;
    const moved = windowCos * hannCos - windowSin * hannSin;
    windowSin = windowSin * hannCos + windowCos * hannSin;
    windowCos = moved;
  }
  return (2 * Math.hypot(re, im)) / length;
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
  const step = sampleRate / signal.length / 4;
  const count = Math.ceil((to - from) / step) + 1;
  const amplitudes = Array.from({ length: count }, (_, k) =>
    lineAmplitude(signal, sampleRate, from + k * step)
  );
  const top = amplitudes.indexOf(Math.max(...amplitudes));
  const [a, b, c] = [-1, 0, 1].map((k) =>
    Math.log(lineAmplitude(signal, sampleRate, from + (top + k) * step))
  );
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

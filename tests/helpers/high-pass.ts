/** Kaiser's window: stop band of 140 dB (J. F. Kaiser, Proc. IEEE Int. Symp. Circuits and Systems (1974) 20). */
const ATTENUATION_DB = 140;
const BETA = 0.1102 * (ATTENUATION_DB - 8.7);

/** Modified Bessel function of the first kind and order zero, by its power series. */
function besselI0(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > 1e-17 * sum; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}

/**
 * The part of a signal above `frequency` (Hz), by a linear-phase filter that passes it within 10⁻⁷ and holds back
 * everything below `frequency` − `transition` by 140 dB. Only where the filter lies wholly within the signal.
 */
export function highPass(
  signal: Float32Array,
  { sampleRate, frequency, transition }: { sampleRate: number; frequency: number; transition: number }
): Float64Array {
  const half = Math.ceil((ATTENUATION_DB - 8) / (2.285 * 2 * Math.PI * (transition / sampleRate)) / 2);
  const cut = (frequency - transition / 2) / sampleRate;
  const taps = Float64Array.from({ length: 2 * half + 1 }, (_, i) => {
    const t = i - half;
    const lowPass = t === 0 ? 2 * cut : Math.sin(2 * Math.PI * cut * t) / (Math.PI * t);
    const window = besselI0(BETA * Math.sqrt(1 - (t / half) ** 2)) / besselI0(BETA);
    return (t === 0 ? 1 : 0) - lowPass * window;
  });
  const out = new Float64Array(Math.max(0, signal.length - 2 * half));
  for (let n = 0; n < out.length; n++) {
    let sum = taps[half] * signal[n + half];
    for (let i = 0; i < half; i++) sum += taps[i] * (signal[n + i] + signal[n + 2 * half - i]);
    out[n] = sum;
  }
  return out;
}

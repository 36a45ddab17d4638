import { filter, section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';
import { turnedRound } from './late-noise.js';

/** A slowly wandering number at a sample of the span, of about RMS 1; each voice (0, 1, 2 …) wanders by itself. */
export type SlowNoise = (voice: number, sample: number) => number;

/** It wanders up to this frequency. */
const EDGE = 3;
/** From voice to voice the noise below is read so much later, in seconds. */
const APART = 0.43;
/** The noise is averaged over about so many samples before it is filtered. */
const COARSE = 64;
/** Brings noise of RMS 1 at 48 kHz, low-passed at the edge, back to about RMS 1. */
const GAIN = 75;

/** What wanders along a span: speeds that hunt, tones that flutter. It is white noise, low-passed at 3 Hz. */
export function slowNoise(span: Span): SlowNoise {
  const voices: Float32Array[] = [];
  const count = Math.max(1, Math.round(span.length / COARSE));
  const width = span.length / count;
  const coarse = { sampleRate: span.sampleRate / width, cyclic: span.cyclic };
  const lowPass = section('lowPass', EDGE, 0.6, coarse.sampleRate);

  const white = span.noise(0);
  const means = new Float32Array(count);
  for (let n = 0; n < count; n++) {
    const [from, to] = [Math.floor(n * width), Math.floor((n + 1) * width)];
    for (let i = from; i < to; i++) means[n] += white[i] / (to - from);
  }
  const voice = (number: number) => {
    const late = Math.round((number + 1) * APART * coarse.sampleRate);
    return filter(turnedRound(means, late), lowPass, coarse, GAIN);
  };

  const within = (n: number) =>
    span.cyclic ? ((n % count) + count) % count : Math.min(count - 1, Math.max(0, n));

  return (number, sample) => {
    const known = (voices[number] ??= voice(number));
    const x = sample / width - 0.5;
    const i = Math.floor(x);
    const here = known[within(i)];
    return here + (x - i) * (known[within(i + 1)] - here);
  };
}

import type { Hertz } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import type { Span } from '../blocks/span.js';
import type { Course } from '../motion/course.js';
import { eventChance } from '../blocks/event-chance.js';
import { exhaustFlow } from './exhaust-flow.js';
import type { Steam } from './steam.js';

/**
 * The bands of the torn steam: frequency, Q, gain, and the powers of the flow that each follows, as shares of the
 * first, second and third. The higher the band, the steeper: the sound of a jet grows with a high power of its speed
 * and shifts upward (M. J. Lighthill, Proc. R. Soc. A 211 (1952) 564).
 */
const BANDS: [Hertz, number, number, [number, number, number]][] = [
  [135, 0.6, 2.2, [1, 0, 0]],
  [430, 0.6, 1.5, [0.5, 0.5, 0]],
  [1300, 0.6, 1.2, [0.2, 0.8, 0]],
  [2900, 0.6, 0.78, [0.05, 0.6, 0.35]],
  [7200, 0.6, 0.18, [0, 0.4, 0.6]]
];

/** The bands below this do not reach far above it. */
const DULL: Hertz = 2000;

/** Rough resonances of chimney and smokebox: frequency, Q, gain. */
const RESONANCES: [Hertz, number, number][] = [
  [92, 2.5, 0.9],
  [178, 3, 1],
  [330, 3, 0.9],
  [560, 2.5, 0.7],
  [960, 2.5, 0.5]
];

/** So strong is the bare push of the flow beside its noise. */
const THUMP = 0.28;

/** The exhaust as heard at the chimney: the noise and the push of the flow, through smokebox and chimney. */
export function blast(sound: Steam, course: Course, span: Span): Float32Array {
  const { length, sampleRate, cyclic } = span;
  const flow = exhaustFlow(sound, course, span);
  // Two noises: filters of one would cancel where their bands meet.
  const white = span.noise(1);
  const dull = filter(span.noise(0), section('lowPass', DULL, 0.5, sampleRate), span);
  const bands = BANDS.filter(([frequency]) => frequency < 0.45 * sampleRate).map(
    ([frequency, q, gain, powers]) => ({
      noise: filter(
        frequency < DULL ? dull : white,
        section('bandPass', frequency, q, sampleRate),
        span,
        gain
      ),
      powers
    })
  );
  const out = new Float32Array(length);
  for (const { noise, powers } of bands) {
    const [first, second, third] = powers;
    for (let i = 0; i < length; i++) {
      const f = flow[i];
      out[i] += noise[i] * f * (first + f * (second + f * third));
    }
  }
  // Radiated pressure follows the change of the flow.
  const change = (THUMP * sampleRate) / 1000;
  let before = cyclic ? flow[length - 1] : flow[0];
  const sum = new Float32Array(length);
  for (let i = 0; i < length; i++) {
    sum[i] = out[i] + change * (flow[i] - before) * 2;
    before = flow[i];
  }
  RESONANCES.forEach(([usual, q, gain], k) => {
    const frequency = usual * (1 + 0.05 * eventChance(sound.seed, 2, k).gaussian());
    filter(sum, section('bandPass', frequency, q, sampleRate), span, gain, out);
  });
  return out;
}

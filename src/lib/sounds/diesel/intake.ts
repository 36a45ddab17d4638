import { addPulse } from '../blocks/pulse.js';
import type { Span } from '../blocks/span.js';
import { type Diesel, dieselSize } from './diesel.js';
import type { Firing } from './firings.js';
import { lateNoise } from './late-noise.js';
import { addResonances } from './resonances.js';

/** Crank angle from top dead centre to the strongest suction: in a two-stroke engine the ports, else the next stroke. */
const SUCTION = { 'four-stroke': 400, 'two-stroke': 150 };

/** Adds the intake: every cylinder draws a gulp of air through filter and duct, which resonate, and it hisses. */
export function addIntake(signal: Float32Array, sound: Diesel, firings: Firing[], span: Span): void {
  const { sampleRate, spare } = span;
  const size = dieselSize(sound);
  const gulps = spare.take();
  for (const { at, cylinder, degree, effort } of firings) {
    const when = at + SUCTION[sound.cycle] * degree * sampleRate;
    addPulse(gulps, span, when, 8 * degree * cylinder.width * sampleRate, 0.55 + 0.45 * effort);
  }
  const white = lateNoise(span, 0.63);
  hiss(gulps, white);
  addResonances(
    gulps,
    [
      { frequency: 105 / size, q: 2.5, gain: 0.5 },
      { frequency: 265 / size, q: 3, gain: 0.5 },
      { frequency: 560 / size, q: 1.5, gain: 0.6 },
      { frequency: 1250 / size, q: 0.6, gain: 0.5 }
    ],
    span,
    signal
  );
  spare.giveBack(gulps, white);
}

function hiss(gulps: Float32Array, white: Float32Array): void {
  for (let i = 0; i < gulps.length; i++) gulps[i] *= 1 + 0.15 * white[i];
}

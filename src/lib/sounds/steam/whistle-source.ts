import { validSampleRate } from '../blocks/sample-rate.js';
import { loopSpan } from '../blocks/span.js';
import { checkKnobs } from '../knob.js';
import type { StillSource } from '../sound-kind.js';
import { blownWhistle } from './blown-whistle.js';
import { valveCurve } from './valve-curve.js';
import { type Whistle, WHISTLE_KNOBS } from './whistle.js';
import { WHISTLE_KIND } from './whistle-kind.js';

/** A long blast, a short one, and silence before it goes round. */
const LASTS = 5.6;
const BLASTS = [
  { from: 0.15, to: 2.75 },
  { from: 3.35, to: 4.05 }
];

/** A steam whistle blown long and short, with the chiff at each beginning. */
export const WHISTLE_SOURCE: StillSource<Whistle> = {
  ...WHISTLE_KIND,
  render(sound, sampleRate) {
    checkKnobs(WHISTLE_KNOBS, sound);
    validSampleRate(sampleRate);
    const span = loopSpan(Math.round(LASTS * sampleRate), sampleRate, sound.seed);
    return blownWhistle(sound, valveCurve(LASTS, BLASTS), span);
  }
};

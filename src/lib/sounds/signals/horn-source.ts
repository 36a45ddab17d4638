import type { Hertz, Seconds } from '../../units.js';
import { loopSpan } from '../blocks/span.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { checkKnobs } from '../knob.js';
import type { StillSource } from '../sound-kind.js';
import { HORN_KNOBS, type Horn } from './horn.js';
import { HORN_KIND } from './horn-kind.js';
import { hornBells } from './horn-bells.js';
import { type Blow, hornSound } from './horn-sound.js';

/** Long, long, short, long, then a pause. */
const BLOWS: readonly Blow[] = [
  { from: 0.1, until: 1.35 },
  { from: 1.9, until: 3.15 },
  { from: 3.65, until: 4.05 },
  { from: 4.5, until: 6.1 }
];
const LOOP: Seconds = 7;

/** A horn that gives a signal: long, long, short, long, in a loop of seven seconds. */
export const HORN_SOURCE: StillSource<Horn> = {
  ...HORN_KIND,
  render(horn: Horn, sampleRate: Hertz) {
    checkKnobs(HORN_KNOBS, horn);
    validSampleRate(sampleRate);
    const span = loopSpan(Math.round(LOOP * sampleRate), sampleRate, horn.seed);
    return hornSound(horn, hornBells(horn, sampleRate), [...BLOWS], span, 0, LOOP);
  }
};

import type { Hertz, Seconds } from '../../units.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { leadingSpan, loopSpan } from '../blocks/span.js';
import { checkKnobs } from '../knob.js';
import type { Ride } from '../motion/ride.js';
import { blownWhistle } from './blown-whistle.js';
import { VALVE_TICK, valveCurve } from './valve-curve.js';
import { type Whistle, WHISTLE_KNOBS } from './whistle.js';

/** What is held goes round after this time; every bell has a whole number of periods in it. */
const HELD: Seconds = 5;
/** After this time the bells have settled. */
const SETTLES: Seconds = 1.2;
/** The valve opens this long after the sound begins. */
const OPENS: Seconds = 0.01;

/**
 * A whistle whose cord is pulled and held: its beginning with the chiff, then a seamless loop of five seconds. The loop's
 * pitches are within 0.1 Hz of the tempered ones.
 *
 * @throws RangeError for knobs or a sample rate out of range
 */
export function renderHeldWhistle(sound: Whistle, sampleRate: Hertz): Ride {
  checkKnobs(WHISTLE_KNOBS, sound);
  validSampleRate(sampleRate);
  const round = loopSpan(Math.round(HELD * sampleRate), sampleRate, sound.seed);
  const lasts = round.length / sampleRate;
  const loop = blownWhistle(sound, new Float32Array(Math.round(HELD / VALVE_TICK) + 1).fill(1), round, {
    lasts,
    from: 0
  });

  const ahead = Math.round(SETTLES * sampleRate);
  const pressure = valveCurve(SETTLES, [{ from: OPENS, to: Infinity }]);
  const lead = blownWhistle(sound, pressure, leadingSpan(ahead, round), { lasts, from: -ahead / sampleRate });
  const samples = new Float32Array(ahead + loop.length);
  samples.set(lead);
  samples.set(loop, ahead);
  return { samples, loopFrom: ahead };
}

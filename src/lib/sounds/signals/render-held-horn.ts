import type { Hertz, Seconds } from '../../units.js';
import { SpareArrays } from '../blocks/spare-arrays.js';
import { leadingSpan, loopSpan, type Span } from '../blocks/span.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { checkKnobs } from '../knob.js';
import type { Ride } from '../motion/ride.js';
import { HORN_KNOBS, type Horn } from './horn.js';
import { hornBells, type HornBell } from './horn-bells.js';
import { hornSound } from './horn-sound.js';
import { OUTDOORS } from './outdoors.js';

/** The held loop lasts between these times, the one that suits the pitches best. */
const SHORTEST: Seconds = 3;
const LONGEST: Seconds = 4.5;
const STEP: Seconds = 0.001;
/** Echoes and filters are settled this long after the last bell speaks fully. */
const SETTLING: Seconds = OUTDOORS + 0.15;

/**
 * A horn while its cord is pulled: the attack, then the held chord, which goes round without a seam from `loopFrom` on.
 * In the loop every bell makes a whole number of periods; its length is the one of 3 … 4.5 s for which no bell has to
 * be retuned by more than a fraction of a cent.
 *
 * @param sampleRate 8 … 192 kHz
 * @throws RangeError for knobs or a sample rate out of range
 */
export function renderHeldHorn(horn: Horn, sampleRate: Hertz): Ride {
  checkKnobs(HORN_KNOBS, horn);
  validSampleRate(sampleRate);
  const bells = hornBells(horn, sampleRate);
  const length = bestLength(bells, sampleRate);
  const seconds = length / sampleRate;
  const tuned = bells.map((bell) => ({
    ...bell,
    frequency: Math.round(bell.frequency * seconds) / seconds
  }));
  const spoken = Math.max(...bells.map(({ delay, rise }) => delay + rise));
  const loopFrom = Math.ceil((spoken + SETTLING) * sampleRate);
  const span = heldSpan(loopFrom, loopSpan(length, sampleRate, horn.seed));
  const start = -loopFrom / sampleRate;
  const samples = hornSound(horn, tuned, [{ from: start, until: Infinity }], span, start, seconds);
  return { samples, loopFrom };
}

function bestLength(bells: HornBell[], sampleRate: Hertz): number {
  let best = { length: 0, off: Infinity };
  for (let seconds = SHORTEST; seconds <= LONGEST; seconds += STEP) {
    const length = Math.round(seconds * sampleRate);
    const off = Math.max(
      ...bells.map(({ frequency }) => {
        const periods = (frequency * length) / sampleRate;
        return Math.abs(periods - Math.round(periods)) / periods;
      })
    );
    if (off < best.off) best = { length, off };
  }
  return best.length;
}

/** What leads into a loop and the loop once after it, in one stretch. */
function heldSpan(before: number, loop: Span): Span {
  const lead = leadingSpan(before, loop);
  const noise = (stream: number) => {
    const whole = new Float32Array(before + loop.length);
    whole.set(lead.noise(stream));
    whole.set(loop.noise(stream), before);
    return whole;
  };
  return { ...lead, length: before + loop.length, noise, spare: new SpareArrays(before + loop.length) };
}

import type { Hertz, Metres, Seconds } from '../../units.js';
import { filter, section } from '../blocks/filter.js';
import { random } from '../blocks/random.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { loopSpan } from '../blocks/span.js';
import { checkKnobs } from '../knob.js';
import type { StillSource } from '../sound-kind.js';
import { addBurst } from './burst.js';
import { outdoors } from './outdoors.js';
import { SLACK_KNOBS, type Slack } from './slack.js';
import { SLACK_KIND } from './slack-kind.js';
import { cast, type Pattern, strike } from './struck-metal.js';

const BEFORE: Seconds = 0.1;
const AFTER: Seconds = 1.6;
/** The listener stands so far from the nearest coupler; cars are so long. */
const NEAREST: Metres = 12;
const CAR: Metres = 12;
/** What air, ground and the cars between take from the treble: the corner is halved at this distance. */
const DULLING: Metres = 70;

/** A car as something struck at its end: frame and floor, walls, couplers; Hz and seconds. */
const FRAME: readonly Pattern[] = [
  { name: 'frame', ratio: 74, decay: 0.7, level: 0.9 },
  { name: 'frame', ratio: 118, decay: 0.77, level: 1 },
  { name: 'frame', ratio: 171, decay: 0.7, level: 0.9 },
  { name: 'floor', ratio: 236, decay: 0.63, level: 0.8 },
  { name: 'floor', ratio: 327, decay: 0.63, level: 0.7 },
  { name: 'wall', ratio: 431, decay: 0.7, level: 0.6 },
  { name: 'wall', ratio: 562, decay: 0.63, level: 0.6 },
  { name: 'wall', ratio: 733, decay: 0.56, level: 0.5 },
  { name: 'wall', ratio: 949, decay: 0.49, level: 0.5 }
];
const COUPLER: readonly Pattern[] = [
  { name: 'coupler', ratio: 1240, decay: 0.35, level: 0.6 },
  { name: 'coupler', ratio: 1610, decay: 0.3, level: 0.6 },
  { name: 'coupler', ratio: 2130, decay: 0.28, level: 0.6 },
  { name: 'coupler', ratio: 2790, decay: 0.22, level: 0.5 },
  { name: 'coupler', ratio: 3600, decay: 0.18, level: 0.5 },
  { name: 'coupler', ratio: 4700, decay: 0.14, level: 0.4 },
  { name: 'coupler', ratio: 6300, decay: 0.1, level: 0.3 }
];
const LEVEL = 0.1;

/**
 * When each coupler is reached, in seconds after the first: the mean interval is that of the knob. They come a little
 * faster as the train gathers way (from 1.15 down to 0.85 of the mean), with a standard deviation of 8 % of their own.
 */
export function slackTimes({ cars, interval, seed }: Slack): Seconds[] {
  const chance = random(seed ^ 0x51ac);
  const gaps = Array.from(
    { length: cars - 1 },
    (_, k) =>
      (1.15 - (0.3 * k) / Math.max(1, cars - 2)) * (1 + 0.08 * Math.max(-3, Math.min(3, chance.gaussian())))
  );
  const scale = (interval * gaps.length) / gaps.reduce((sum, gap) => sum + gap, 0);
  let t = 0;
  return [0, ...gaps.map((gap) => (t += gap * scale))];
}

/**
 * Slack that runs out along a train: couplers meet one after another, farther and farther away. Every car has a ring of
 * its own. Level falls with distance, r⁻⁰·⁵, and so does the treble. The loop begins and ends in silence.
 */
export const SLACK_SOURCE: StillSource<Slack> = {
  ...SLACK_KIND,
  render(slack: Slack, sampleRate: Hertz) {
    checkKnobs(SLACK_KNOBS, slack);
    validSampleRate(sampleRate);
    const { hardness, seed } = slack;
    const times = slackTimes(slack);
    const length = Math.round((BEFORE + times[times.length - 1] + AFTER) * sampleRate);
    const span = loopSpan(length, sampleRate, seed);
    const steel = new Float32Array(length);
    const knock = new Float32Array(length);
    const noise = span.noise(1);
    times.forEach((time, car) => {
      const chance = random(Math.imul(seed + 1, 4241) + car);
      const distance = Math.hypot(NEAREST, CAR * car);
      const near = (NEAREST / distance) ** 0.5;
      const dull = 1 / (1 + distance / DULLING);
      const strength = near * 10 ** ((2 * chance.gaussian()) / 20);
      const own = 0.85 + 0.3 * chance.uniform();
      const own2 = 0.9 + 0.2 * chance.uniform();
      const frame = cast(FRAME, own, 1, 0.05, Math.imul(seed + 3, 733) + car);
      const coupler = cast(COUPLER, own2, 1, 0.05, Math.imul(seed + 5, 839) + car);
      // A meeting is a knock and two to four rebounds, each softer than the last.
      const rebounds = 2 + Math.floor(3 * chance.uniform());
      let at = (BEFORE + time) * sampleRate;
      let left = 1;
      for (let n = 0; n <= rebounds; n++) {
        const reach = dull * (500 + 2800 * hardness * left);
        strike(steel, span, frame, at, strength * left, 1200 * dull + reach, chance);
        strike(steel, span, coupler, at, strength * left * (0.25 + 0.9 * hardness), reach, chance);
        addBurst(knock, span, noise, at, 0.001, 0.014 - 0.007 * hardness, 0.7 * strength * left * dull);
        addBurst(knock, span, noise, at, 0.006, 0.11, 0.2 * strength * left * dull);
        at += (0.015 + 0.06 * chance.uniform()) * sampleRate;
        left *= 0.45 + 0.35 * chance.uniform();
      }
    });
    filter(knock, section('bandPass', 420, 0.5, sampleRate), span, 2.2, steel);
    filter(knock, section('bandPass', 1000 + 1500 * hardness, 0.5, sampleRate), span, 0.5 + hardness, steel);
    return outdoors(steel, span).map((x) => LEVEL * x);
  }
};

import { highPass } from './high-pass.js';

/** Above this there is nothing in the programme of the click tests, so whatever is there is a click. */
const CLICK_BAND = 8000;

/**
 * The loudest click in a recording of a programme that ends at 1 kHz: the largest sample above 8 kHz, in dB against
 * the largest sample of the recording, and the frame where it is.
 */
export function clickLevel(
  recording: Float32Array,
  sampleRate: number
): { clickDb: number; clickFrame: number; peak: number } {
  const { peak, clicks } = clicksIn(recording, sampleRate);
  let at = 0;
  for (let n = 0; n < clicks.length; n++) if (Math.abs(clicks[n]) > Math.abs(clicks[at])) at = n;
  const delay = (recording.length - clicks.length) / 2;
  return { clickDb: 20 * Math.log10(Math.abs(clicks[at]) / peak), clickFrame: at + delay, peak };
}

/** How many clicks there are of more than `leastDb` against the largest sample, counted at most once in 50 ms. */
export function countClicks(recording: Float32Array, sampleRate: number, leastDb: number): number {
  const { peak, clicks } = clicksIn(recording, sampleRate);
  const least = peak * 10 ** (leastDb / 20);
  let count = 0;
  let last = -Infinity;
  clicks.forEach((x, n) => {
    if (!(Math.abs(x) > least) || n - last < 0.05 * sampleRate) return;
    count++;
    last = n;
  });
  return count;
}

function clicksIn(recording: Float32Array, sampleRate: number): { peak: number; clicks: Float64Array } {
  return {
    peak: recording.reduce((most, x) => Math.max(most, Math.abs(x)), 0),
    clicks: highPass(recording, { sampleRate, frequency: CLICK_BAND, transition: 1000 })
  };
}

import type { Air } from '../air.js';
import { motorFigures } from '../speaker/motor-figures.js';
import { outlineArea } from '../outline.js';
import type { Response } from '../response.js';
import { secondOrderHighPass } from './second-order.js';
import type { Speaker } from '../speaker/speaker.js';

/**
 * What a speaker gives in an endless plate, where nothing of its back comes round: its own second-order high-pass
 * (R. H. Small, J. Audio Eng. Soc. 20 (1972) 383), 0 dB in the middle of its range. By what a mount departs from that is
 * the mount's own doing.
 *
 * @param frequency Hz, each at least 0; the response holds this same array as its grid
 */
export function frontAlone({ motor, cone }: Speaker, air: Air, frequency: Float64Array): Response {
  const { fs, qts } = motorFigures(motor, outlineArea(cone), air);
  return { frequency, ...secondOrderHighPass(frequency, fs, qts) };
}

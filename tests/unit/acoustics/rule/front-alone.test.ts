import { expect, it } from 'vitest';
import { frontAlone } from '../../../../src/lib/acoustics/rule/front-alone.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { levelDb } from '../../../../src/lib/numeric/level-db.js';
import { close } from '../../../helpers/close.js';
import { AIR } from '../../../helpers/demo-installations.js';

/** R. H. Small, J. Audio Eng. Soc. 20 (1972) 383: |H| = Qts at fs, 12 dB an octave below, 0 dB above. */
it('the oval: as loud at 348.13 Hz as its quality factor of 1.5901, an octave is 12 dB below, nothing above', () => {
  const frequency = Float64Array.of(5, 10, 348.13, 16000);
  const level = levelDb(frontAlone(SPEAKERS.oval, AIR, frequency));
  close(level[2], 20 * Math.log10(1.5901), { abs: 0.002, because: 'fs and Qts to four figures, by hand' });
  close(level[1] - level[0], 12.04, {
    abs: 0.01,
    because: 'far below fs twice the frequency is four times the pressure'
  });
  close(level[3], 0, { abs: 0.01, because: 'far above fs' });
});

it('keeps the grid that it is given', () => {
  const frequency = Float64Array.of(100);
  expect(frontAlone(SPEAKERS.oval, AIR, frequency).frequency).toBe(frequency);
});

import { ruleOfThumb } from '../../src/lib/acoustics/rule/rule-of-thumb.js';
import { integratedLoudness, loopLoudness } from '../../src/lib/listening/loudness.js';
import { LoopFilter } from '../../src/lib/numeric/filter-with.js';
import { fftFrequencies, impulseResponse } from '../../src/lib/numeric/impulse-response.js';
import { renderPinkNoise } from '../../src/lib/sounds/test-signals/pink-noise.js';
import { AIR, DEMO, IN_FRONT } from '../helpers/demo-installations.js';
import type { SpeedCase } from './speed-case.js';

const SAMPLE_RATE = 48000;
const TAPS = 4096;
const tenSeconds = () => renderPinkNoise(10, SAMPLE_RATE, 1);

/** What the figures on the shelf cost: the loudness of ten seconds of sound behind a mount. */
const cases: SpeedCase[] = [
  {
    name: 'loop filter made ready, 10 s',
    prepare: () => {
      const loop = tenSeconds();
      return () => new LoopFilter(loop, TAPS);
    }
  },
  {
    name: 'loop behind one mount, 10 s',
    prepare: () => {
      const filter = new LoopFilter(tenSeconds(), TAPS);
      const bins = ruleOfThumb(DEMO['flat plate'], AIR, IN_FRONT, fftFrequencies(TAPS, SAMPLE_RATE), 'full');
      const response = impulseResponse(bins);
      return () => filter.through(response);
    }
  },
  {
    name: 'loudness of a loop, 10 s',
    prepare: () => {
      const loop = tenSeconds();
      return () => loopLoudness(loop, SAMPLE_RATE);
    }
  },
  {
    name: 'integrated loudness, 10 s',
    prepare: () => {
      const samples = tenSeconds();
      return () => integratedLoudness([samples], SAMPLE_RATE);
    }
  }
];

export default cases;

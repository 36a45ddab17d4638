import { ruleOfThumb } from '../../src/lib/acoustics/rule/rule-of-thumb.js';
import { fftFrequencies, impulseResponse } from '../../src/lib/numeric/impulse-response.js';
import { AIR, DEMO, IN_FRONT } from '../helpers/demo-installations.js';
import type { SpeedCase } from './speed-case.js';

const SAMPLE_RATE = 48000;
const TAPS = 4096;

/** What a drag costs: from a size to the filter that is heard. */
const cases: SpeedCase[] = [
  ...['flat plate', 'closed box'].map((name) => ({
    name: `rule of thumb, ${name}, 2049 bins`,
    prepare: () => {
      const frequency = fftFrequencies(TAPS, SAMPLE_RATE);
      return () => ruleOfThumb(DEMO[name], AIR, IN_FRONT, frequency, 'full');
    }
  })),
  {
    name: 'impulse response of 4096 taps',
    prepare: () => {
      const frequency = fftFrequencies(TAPS, SAMPLE_RATE);
      const bins = ruleOfThumb(DEMO['flat plate'], AIR, IN_FRONT, frequency, 'full');
      return () => impulseResponse(bins);
    }
  }
];

export default cases;

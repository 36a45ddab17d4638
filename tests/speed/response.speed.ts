import { ruleOfThumb } from '../../src/lib/acoustics/rule/rule-of-thumb.js';
import { fftFrequencies, impulseResponse } from '../../src/lib/numeric/impulse-response.js';
import { waveAnswer } from '../../src/lib/evaluation/answer.js';
import { hearWaves } from '../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../src/lib/waves/wave-solution.js';
import { AIR, DEMO, IN_FRONT } from '../helpers/demo-installations.js';
import type { SpeedCase } from './speed-case.js';

const SAMPLE_RATE = 48000;
const TAPS = 4096;

const heardPlate = () => hearWaves(solveMount(DEMO['flat plate'], AIR, { accuracy: 'draft' }), IN_FRONT);

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
    name: 'wave solution, flat plate, another size, 2049 bins',
    prepare: () => {
      const [frequency, heard] = [fftFrequencies(TAPS, SAMPLE_RATE), heardPlate()];
      return () => waveAnswer({ ...heard }, 'draft', DEMO['flat plate'], AIR).respond(frequency);
    }
  },
  {
    name: 'wave solution, flat plate, another motor, 2049 bins',
    prepare: () => {
      const [frequency, heard] = [fftFrequencies(TAPS, SAMPLE_RATE), heardPlate()];
      return () => waveAnswer(heard, 'draft', DEMO['flat plate'], AIR).respond(frequency);
    }
  },
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

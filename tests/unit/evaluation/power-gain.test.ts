import { expect, test } from 'vitest';
import { waveAnswer } from '../../../src/lib/evaluation/answer.js';
import { powerGain } from '../../../src/lib/evaluation/power-gain.js';
import { bandLevels } from '../../../src/lib/listening/band-levels.js';
import { thirdOctaveBands } from '../../../src/lib/numeric/third-octave-bands.js';
import { hearWaves } from '../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../src/lib/waves/wave-solution.js';
import { byRule } from '../../helpers/by-rule.js';
import { close } from '../../helpers/close.js';
import { AIR, DEMO, IN_FRONT } from '../../helpers/demo-installations.js';

const BINS = 4097;
const WIDTH = 48000 / 8192;
const flat = new Float64Array(BINS).fill(1);
const bands = thirdOctaveBands(50, 16000);

for (const [name, answer] of [
  ['the flat plate by the rule of thumb', byRule(DEMO['flat plate'])],
  [
    'the cab body by the wave solution, which rings',
    waveAnswer(hearWaves(solveMount(DEMO['cab body'], AIR), IN_FRONT), 'full', DEMO['cab body'], AIR)
  ]
] as const)
  test(`few questions do for many bins: ${name}`, () => {
    let asked = 0;
    const counted = (frequency: Float64Array) => {
      asked += frequency.length;
      return answer.respond(frequency);
    };
    const found = bandLevels(flat, WIDTH, bands, powerGain({ respond: counted }, BINS, WIDTH));
    expect(asked).toBeLessThan(BINS / 6);
    const { re, im } = answer.respond(Float64Array.from({ length: BINS }, (_, k) => k * WIDTH));
    const every = re.map((x, k) => x * x + im[k] * im[k]);
    bandLevels(flat, WIDTH, bands, every).forEach((level, i) =>
      close(found[i], level, { abs: 0.02, because: `a tenth of what is drawn, third octave ${i}` })
    );
  });

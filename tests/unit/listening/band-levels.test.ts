import { expect, test } from 'vitest';
import { bandLevels } from '../../../src/lib/listening/band-levels.js';
import { powerSpectrum } from '../../../src/lib/listening/power-spectrum.js';
import { thirdOctaveBands } from '../../../src/lib/numeric/third-octave-bands.js';
import { random } from '../../../src/lib/sounds/blocks/random.js';
import { close } from '../../helpers/close.js';

const RATE = 48000;
const BIN = RATE / 8192;
const db = (power: number) => 10 * Math.log10(power);

test('an even spectrum gives each band its width, also where bands are narrower than bins', () => {
  const power = new Float64Array(4097).fill(BIN);
  power[0] = power[4096] = BIN / 2;
  const bands = thirdOctaveBands(10, 16000);
  bandLevels(power, BIN, bands).forEach((level, i) => {
    close(level, db(bands[i].upper - bands[i].lower), { abs: 1e-9, because: 'rounding' });
  });
});

test('bands side by side add up to the whole', () => {
  const chance = random(1);
  const power = Float64Array.from({ length: 4097 }, () => chance.uniform());
  const edges = [0, 3, 7, 31, 31.5, 100, 2000, 15000, 24000];
  const bands = edges.slice(1).map((upper, i) => ({ lower: edges[i], upper }));
  const total = bandLevels(power, BIN, bands).reduce((sum, level) => sum + 10 ** (level / 10), 0);
  close(
    total,
    power.reduce((a, b) => a + b),
    { rel: 1e-12, because: 'rounding' }
  );
});

test('a sine shows its level in its band and little elsewhere', () => {
  const sine = Float32Array.from({ length: RATE }, (_, i) => Math.sin((2 * Math.PI * 1000 * i) / RATE));
  const { power, binWidth } = powerSpectrum(sine, RATE);
  const bands = thirdOctaveBands(100, 10000);
  bandLevels(power, binWidth, bands).forEach((level, i) => {
    if (bands[i].nominal === 1000) close(level, db(0.5), { abs: 0.01, because: 'side lobes of the window' });
    else expect(level).toBeLessThan(-60);
  });
});

test('the weight acts on every bin', () => {
  const power = new Float64Array(100).fill(1);
  const weight = Float64Array.from({ length: 100 }, (_, k) => (k < 50 ? 0.25 : 0));
  const bands = [
    { lower: 100, upper: 200 },
    { lower: 600, upper: 700 }
  ];
  const [low, high] = bandLevels(power, 10, bands, weight);
  close(low, db(10 * 0.25), { abs: 1e-9, because: 'ten bins of a quarter' });
  expect(high).toBe(-Infinity);
});

test('a band above half the sample rate is empty, one across it has what is below', () => {
  const power = new Float64Array(101).fill(1);
  const [across, above] = bandLevels(power, 10, [
    { lower: 900, upper: 1200 },
    { lower: 1001, upper: 1200 }
  ]);
  close(across, db(0.5 + 9 + 1), { abs: 1e-9, because: 'half of bin 90, 91 … 99, all of bin 100' });
  expect(above).toBe(-Infinity);
});

test('a weight of another length is refused', () => {
  expect(() => bandLevels(new Float64Array(5), 1, [], new Float64Array(4))).toThrow(
    'weight must have 5 bins, got 4'
  );
});

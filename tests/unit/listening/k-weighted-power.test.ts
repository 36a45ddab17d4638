import { expect, test } from 'vitest';
import { KFilter } from '../../../src/lib/listening/k-weighting.js';
import { kWeightedPower } from '../../../src/lib/listening/k-weighted-power.js';
import { close } from '../../helpers/close.js';

const db = (f: number, rate = 48000) => 10 * Math.log10(kWeightedPower(Float64Array.of(f), rate)[0]);

test('0.69 dB at 997 Hz, as BS.1770-5 has it by its constant of −0.691; 4 dB at the top, nothing at 0 Hz', () => {
  close(db(997), 0.691, { abs: 0.005, because: 'the standard rounds its constant to a thousandth' });
  close(db(15000), 4, { abs: 0.1, because: 'the shelf of the standard’s figure 4 is about 4 dB' });
  expect(kWeightedPower(Float64Array.of(0), 48000)[0]).toBeLessThan(1e-20);
});

test.each([44100, 48000, 96000])('at %i Hz it is what the filter does to a sine', (rate) => {
  for (const f of [60, 300, 2000, 9000]) {
    const sine = Float32Array.from({ length: rate }, (_, i) => Math.sin((2 * Math.PI * f * i) / rate));
    const filter = new KFilter(rate);
    filter.energy(sine, 0, rate);
    const power = filter.energy(sine, 0, rate) / rate / 0.5;
    close(db(f, rate), 10 * Math.log10(power), { abs: 0.01, because: 'whole periods, settled for a second' });
  }
});

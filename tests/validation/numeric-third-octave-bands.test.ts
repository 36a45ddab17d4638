import { expect, it } from 'vitest';
import { thirdOctaveBands } from '../../src/lib/numeric/third-octave-bands.js';
import { close } from '../helpers/close.js';

/** IEC 61260-1:2014, annex E, table E.1: nominal and exact midband frequencies, base ten, five digits (from memory). */
const TABLE = [
  [50, 50.119],
  [63, 63.096],
  [80, 79.433],
  [100, 100],
  [125, 125.89],
  [160, 158.49],
  [200, 199.53],
  [250, 251.19],
  [315, 316.23],
  [400, 398.11],
  [500, 501.19],
  [630, 630.96],
  [800, 794.33],
  [1000, 1000],
  [1250, 1258.9],
  [1600, 1584.9],
  [2000, 1995.3],
  [2500, 2511.9],
  [3150, 3162.3],
  [4000, 3981.1],
  [5000, 5011.9],
  [6300, 6309.6],
  [8000, 7943.3],
  [10000, 10000],
  [12500, 12589],
  [16000, 15849]
];

it('has the nominal and exact midband frequencies of IEC 61260-1:2014, table E.1', () => {
  const bands = thirdOctaveBands(50, 16000);
  expect(bands.map((b) => b.nominal)).toEqual(TABLE.map(([nominal]) => nominal));
  bands.forEach(({ centre }, i) =>
    close(centre, TABLE[i][1], { rel: 5e-5, because: 'five digits in the table' })
  );
});

it('has the edges of IEC 61260-1:2014, 5.5: 891.25 and 1122.0 Hz for the band at 1 kHz', () => {
  const [band] = thirdOctaveBands(1000, 1000);
  close(band.lower, 891.25, { abs: 0.005, because: 'five digits' });
  close(band.upper, 1122.0, { abs: 0.05, because: 'five digits' });
  // the octave ratio of base ten is 10^{3/10}, so ten bands make a decade, and three an octave band
  const [low, , high] = thirdOctaveBands(800, 1250);
  close(high.upper / low.lower, 10 ** 0.3, { rel: 1e-12, because: 'rounding' });
});

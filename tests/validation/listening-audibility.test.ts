import { expect, test } from 'vitest';
import { aWeightedLevel, aWeightingDb } from '../../src/lib/listening/a-weighting.js';
import { bandLevels } from '../../src/lib/listening/band-levels.js';
import { hearingThresholdDb } from '../../src/lib/listening/hearing-threshold.js';
import { criticalBandwidth, maskedThreshold } from '../../src/lib/listening/masked-threshold.js';
import { powerSpectrum } from '../../src/lib/listening/power-spectrum.js';
import { RealFft } from '../../src/lib/numeric/fft.js';
import { thirdOctaveBands } from '../../src/lib/numeric/third-octave-bands.js';
import { PLACE_BANDS, placeNoise, PLACE_NOISES } from '../../src/lib/sounds/places/place-spectra.js';
import { renderPlaceNoise } from '../../src/lib/sounds/places/render-place-noise.js';
import { close } from '../helpers/close.js';

/** IEC 61672-1:2013, table 3: nominal frequency and A-weighting in dB, one decimal (from memory). */
const A_WEIGHTING = [
  [20, -50.5],
  [25, -44.7],
  [31.5, -39.4],
  [40, -34.6],
  [50, -30.2],
  [63, -26.2],
  [80, -22.5],
  [100, -19.1],
  [125, -16.1],
  [160, -13.4],
  [200, -10.9],
  [250, -8.6],
  [315, -6.6],
  [400, -4.8],
  [500, -3.2],
  [630, -1.9],
  [800, -0.8],
  [1000, 0],
  [1250, 0.6],
  [1600, 1.0],
  [2000, 1.2],
  [2500, 1.3],
  [3150, 1.2],
  [4000, 1.0],
  [5000, 0.5],
  [6300, -0.1],
  [8000, -1.1],
  [10000, -2.5],
  [12500, -4.3],
  [16000, -6.6],
  [20000, -9.3]
];

/**
 * Class 1 of third-octave filters: places on the relative frequency axis as octave exponents of G, least and most attenuation in dB
 * (IEC 61260-1:1995, table 1, from memory; the limits of 2014 are the same or wider). Between them the limits are interpolated;
 * a filter is asked at the places themselves.
 */
const CLASS_1 = [
  [0, -0.3, 0.3],
  [1 / 8, -0.3, 0.4],
  [1 / 4, -0.3, 0.6],
  [3 / 8, -0.3, 1.3],
  [1 / 2, 2, 5],
  [1, 17.5, Infinity],
  [2, 42, Infinity],
  [3, 61, Infinity],
  [4, 70, Infinity]
];
const G = 10 ** 0.3;

/** Where a place of the octave filter lies for a third-octave filter (IEC 61260-1, 5.10). */
function placeOf(exponent: number): number {
  const octave = G ** exponent;
  return 1 + ((G ** (1 / 6) - 1) / (G ** (1 / 2) - 1)) * (octave - 1);
}

test('the A-weighting is that of the table', () => {
  for (const [nominal, weighting] of A_WEIGHTING) {
    const [{ centre }] = thirdOctaveBands(nominal, nominal);
    close(aWeightingDb(centre), weighting, { abs: 0.0501, because: 'printed with one decimal' });
  }
});

test('pink noise of 0 dB a third octave from 20 Hz to 20 kHz has the sum of the table as its A-weighted level', () => {
  const bands = thirdOctaveBands(20, 20000);
  const sum = A_WEIGHTING.reduce((all, [, weighting]) => all + 10 ** (weighting / 10), 0);
  close(aWeightedLevel(bands, new Float64Array(bands.length)), 10 * Math.log10(sum), {
    abs: 0.02,
    because: 'the table has one decimal'
  });
});

test('a third octave keeps the limits of class 1 from 250 Hz on, as the sounds of the bench are measured', () => {
  const rate = 48_000;
  for (const nominal of [250, 1000, 4000]) {
    const [band] = thirdOctaveBands(nominal, nominal);
    for (const [exponent, least, most] of CLASS_1)
      for (const place of exponent === 0 ? [1] : [placeOf(exponent), 1 / placeOf(exponent)]) {
        const frequency = band.centre * place;
        const sine = Float32Array.from({ length: rate }, (_, i) =>
          Math.sin((2 * Math.PI * Math.round(frequency) * i) / rate)
        );
        const { power, binWidth } = powerSpectrum(sine, rate);
        const attenuation = 10 * Math.log10(0.5) - bandLevels(power, binWidth, [band])[0];
        expect(attenuation, `${nominal} Hz band at ${frequency} Hz`).toBeGreaterThanOrEqual(least);
        expect(attenuation, `${nominal} Hz band at ${frequency} Hz`).toBeLessThanOrEqual(most);
      }
  }
});

test('the threshold of hearing is that of ISO 226:2003, and lies between its values beside them', () => {
  // Five values of table 1, from memory.
  const known = [
    [20, 78.5],
    [100, 26.5],
    [1000, 2.4],
    [3150, -6.0],
    [12500, 12.3]
  ];
  for (const [nominal, level] of known)
    close(hearingThresholdDb(thirdOctaveBands(nominal, nominal)[0].centre), level, {
      abs: 1e-9,
      because: 'a value of the table at its own frequency'
    });
  close(hearingThresholdDb(Math.sqrt(100 * 125.8925)), (26.5 + 22.1) / 2, { abs: 1e-4, because: 'half-way' });
  expect(() => hearingThresholdDb(16000)).toThrow('frequency must be within 20 … 12500 Hz, got 16000');
});

test('a critical band is 100 Hz wide in the bass and a sixth of its frequency at 1 kHz', () => {
  // Zwicker's own table of critical bands: 100 Hz at 50 … 450 Hz, 160 Hz at 1 kHz, 900 Hz at 5.8 kHz … from memory
  close(criticalBandwidth(100), 100, { abs: 2, because: 'the formula follows the table within 10 %' });
  close(criticalBandwidth(1000), 160, { rel: 0.1, because: 'the formula follows the table within 10 %' });
  close(criticalBandwidth(4800), 900, { rel: 0.1, because: 'the formula follows the table within 10 %' });
});

test('in white noise a tone is heard where its level over the density is Fletcher’s critical ratio', () => {
  const bands = thirdOctaveBands(50, 12500);
  const density = 40;
  const noise = bands.map(({ lower, upper }) => density + 10 * Math.log10(upper - lower));
  const masked = maskedThreshold(bands, noise);
  // Hawkins and Stevens, J. Acoust. Soc. Am. 22 (1950) 6, figure 6, from memory: critical ratios in dB
  const known = [
    [500, 17],
    [1000, 18.5],
    [2000, 20.5],
    [4000, 23]
  ];
  for (const [nominal, ratio] of known)
    close(masked[bands.findIndex((band) => band.nominal === nominal)] - density, ratio, {
      abs: 2,
      because: 'read off a figure; critical bands less 4 dB are a fit to it'
    });
});

test('in silence the threshold of hearing is all there is', () => {
  const bands = thirdOctaveBands(50, 12500);
  const masked = maskedThreshold(
    bands,
    bands.map(() => -Infinity)
  );
  bands.forEach(({ centre }, i) => expect(masked[i]).toBe(hearingThresholdDb(centre)));
});

test('speech is 70 dB in all, as Byrne and others bring every talker to', () => {
  const power = placeNoise('clubNight').spectrumDb.reduce((sum, level) => sum + 10 ** (level / 10), 0);
  close(10 * Math.log10(power), 70, {
    abs: 0.1,
    because: 'levels printed with one decimal; 70 dB in all, from memory'
  });
});

test.each(PLACE_NOISES)('the noise of the $name has its spectrum, at −20 dBFS', ({ kind, spectrumDb }) => {
  const rate = 48_000;
  const samples = renderPlaceNoise(kind, rate);
  const bands = thirdOctaveBands(PLACE_BANDS.from, PLACE_BANDS.to);
  // Line by line over the whole loop, so that no window smears one band into the next.
  const { re, im } = new RealFft(samples.length).forward(samples);
  const power = Float64Array.from(re, (x, k) => (2 * (x * x + im[k] * im[k])) / samples.length ** 2);
  const got = bandLevels(power, rate / samples.length, bands);
  const off = got[0] - spectrumDb[0];
  got.forEach((level, i) =>
    close(level - off, spectrumDb[i], { abs: 0.5, because: 'half a decibel is what is promised' })
  );
  const meanSquare = samples.reduce((sum, x) => sum + x * x, 0) / samples.length;
  close(10 * Math.log10(meanSquare), -20, { abs: 0.01, because: 'set as it is made' });
});

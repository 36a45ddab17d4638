import { describe, expect, test } from 'vitest';
import { RealFft } from '../../src/lib/numeric/fft.js';
import { BURSTS_SOURCE } from '../../src/lib/sounds/test-signals/bursts.js';
import { PINK_NOISE_SOURCE, PINK_NOISE_PRESETS } from '../../src/lib/sounds/test-signals/pink-noise.js';
import { PUFF_SOURCE } from '../../src/lib/sounds/test-signals/puff.js';
import { STEPPED_TONES_SOURCE } from '../../src/lib/sounds/test-signals/stepped-tones.js';
import { SWEEP_SOURCE } from '../../src/lib/sounds/test-signals/sweep.js';
import { WHITE_NOISE_SOURCE, WHITE_NOISE_PRESETS } from '../../src/lib/sounds/test-signals/white-noise.js';
import { close } from '../helpers/close.js';

const RATE = 48000;

/** Σ x·e^{−j2πft}/rate: the spectrum of a stretch of sound at any frequency, in units of a second. */
function spectrumAt(
  x: Float32Array,
  frequency: number,
  rate = RATE
): { re: number; im: number; size: number } {
  let [re, im] = [0, 0];
  x.forEach((value, i) => {
    const angle = (2 * Math.PI * frequency * i) / rate;
    re += (value * Math.cos(angle)) / rate;
    im -= (value * Math.sin(angle)) / rate;
  });
  return { re, im, size: Math.hypot(re, im) };
}

describe('noise', () => {
  /** Slope in dB an octave of the power in equal slices of frequency: a straight line through octave bands' densities. */
  function slope(loop: Float32Array): number {
    const { re, im } = new RealFft(loop.length).forward(loop);
    const points: [number, number][] = [];
    for (let low = 31.25; low < 16000; low *= 2) {
      const [from, to] = [low, 2 * low].map((f) => Math.round((f * loop.length) / RATE));
      let power = 0;
      for (let k = from; k < to; k++) power += re[k] ** 2 + im[k] ** 2;
      points.push([Math.log2(low), 10 * Math.log10(power / (to - from))]);
    }
    const [mx, my] = [0, 1].map((c) => points.reduce((sum, p) => sum + p[c], 0) / points.length);
    const top = points.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0);
    return top / points.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
  }

  // Power ∝ 1/f halves with every octave: 10·log10 ½ = −3.0103 dB.
  test('pink noise falls 3.01 dB an octave', () => {
    const loop = PINK_NOISE_SOURCE.render(PINK_NOISE_PRESETS[0], RATE);
    close(slope(loop), -3.0103, { abs: 0.02, because: 'lines are exact; bands begin on whole lines' });
  });

  test('white noise is flat', () => {
    const loop = WHITE_NOISE_SOURCE.render(WHITE_NOISE_PRESETS[0], RATE);
    close(slope(loop), 0, { abs: 0.02, because: 'lines are exact; bands begin on whole lines' });
  });
});

describe('the sweep', () => {
  const sweep = { kind: 'sweep' as const, name: '', from: 50, to: 12800, seconds: 4 };
  const loop = SWEEP_SOURCE.render(sweep, RATE);

  // A. Farina, AES 108th Convention (2000), preprint 5093: x(t) = sin(2π·f1·T/ln(f2/f1)·(e^{t·ln(f2/f1)/T} − 1)).
  test('is the formula, sample by sample', () => {
    const l = Math.log(12800 / 50);
    for (let i = 0.1 * RATE; i < 3.9 * RATE; i += 97) {
      const x = 0.5 * Math.sin(((2 * Math.PI * 50 * 4) / l) * (Math.exp((i / RATE) * (l / 4)) - 1));
      close(loop[i], x, { abs: 1e-6, because: 'single precision; clear of the fades' });
    }
  });

  // Eight octaves in four seconds: two octaves a second, so that the frequency at t is 50·4^t.
  test.each([0.5, 1, 2, 3, 3.5])('after %f s its frequency is 50·4^t', (t) => {
    // Counted from rising crossings of zero on either side of t; the mean over so short a time is that of the middle.
    const frequency = 50 * 4 ** t;
    const half = Math.max(1.5 / frequency, 0.0025);
    const crossings: number[] = [];
    for (let i = Math.round((t - half) * RATE); i < (t + half) * RATE; i++)
      if (loop[i] < 0 && loop[i + 1] >= 0) crossings.push((i + loop[i] / (loop[i] - loop[i + 1])) / RATE);
    const [first, last] = [crossings[0], crossings[crossings.length - 1]];
    const middle = 50 * 4 ** ((first + last) / 2);
    close((crossings.length - 1) / (last - first), middle, {
      rel: 2e-3,
      because: 'straight lines between samples'
    });
  });

  test('a downward one runs through the same frequencies the other way', () => {
    const down = SWEEP_SOURCE.render({ ...sweep, from: 12800, to: 50 }, RATE);
    const l = Math.log(50 / 12800);
    for (let i = 0.1 * RATE; i < 3.9 * RATE; i += 131) {
      const x = 0.5 * Math.sin(((2 * Math.PI * 12800 * 4) / l) * (Math.exp((i / RATE) * (l / 4)) - 1));
      close(down[i], x, { abs: 1e-6, because: 'single precision' });
    }
  });
});

describe('stepped tones', () => {
  // IEC 61260-1:2014, 5.4 and annex E: exact mid-band frequencies 1000·10^(x/10) Hz, to five digits.
  const EXACT = [100, 125.89, 158.49, 199.53, 251.19, 316.23, 398.11, 501.19, 630.96, 794.33, 1000];
  const tones = { kind: 'steppedTones' as const, name: '', from: 100, to: 1000, seconds: 0.4 };

  test('lie at the exact mid-band frequencies', () => {
    const rate = 8000;
    const loop = STEPPED_TONES_SOURCE.render(tones, rate);
    const step = loop.length / EXACT.length;
    EXACT.forEach((exact, n) => {
      const tone = loop.subarray(n * step, (n + 1) * step);
      // From one stretch to the next the phase turns by 2π·f·Δt: what it turns more than at `exact` is the error.
      const stretch = Math.round(0.15 * rate);
      const [first, second] = [0.04 * rate, 0.04 * rate + stretch].map((from) => {
        const piece = tone.subarray(from, from + stretch);
        const windowed = piece.map((x, i) => x * Math.sin((Math.PI * (i + 0.5)) / stretch) ** 2);
        const { re, im } = spectrumAt(windowed, exact, rate);
        return Math.atan2(im, re) / (2 * Math.PI);
      });
      const turns = second - first - (exact * stretch) / rate;
      const frequency = exact + ((turns - Math.round(turns)) * rate) / stretch;
      close(frequency, exact, { rel: 1e-4, because: '0.01 %; five digits of the table are 0.005 %' });
    });
  });

  test('the marks are the same frequencies', () => {
    STEPPED_TONES_SOURCE.marks(tones).forEach(({ frequency }, i) =>
      close(frequency, EXACT[i], { rel: 5e-5, because: 'five digits of the table' })
    );
  });
});

describe('bursts', () => {
  const bursts = { kind: 'bursts' as const, name: '', frequency: 1000, cycles: 8, pause: 0.5 };
  const loop = BURSTS_SOURCE.render(bursts, RATE);
  const burst = loop.subarray(0, 0.1 * RATE);

  // The transform of a Hann window of length T: T/2·sinc(fT)/(1 − (fT)²) (F. J. Harris, Proc. IEEE 66 (1978) 51).
  test('have the spectrum of a tone in a Hann window', () => {
    const lasts = 8 / 1000;
    const hann = (f: number) => {
      const x = f * lasts;
      if (Math.abs(Math.abs(x) - 1) < 1e-9) return lasts / 4;
      const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
      return ((lasts / 2) * sinc) / (1 - x * x);
    };
    // Both lines of the sine count; the burst is odd about its middle, so the two have opposite signs.
    for (const f of [0, 300, 625, 800, 875, 950, 1000, 1100, 1180, 1300, 2000]) {
      const expected = (0.5 / 2) * Math.abs(hann(f - 1000) - hann(f + 1000));
      close(spectrumAt(burst, f).size, expected, { abs: 1e-8, because: 'single precision' });
    }
  });

  test('have exactly their cycles: eight rising crossings of zero', () => {
    const rising = Array.from(burst).filter((x, i) => i > 0 && x > 1e-9 && burst[i - 1] <= 1e-9).length;
    expect(rising).toBe(8);
    expect(burst.findLastIndex((x) => x !== 0)).toBeLessThan(0.008 * RATE);
  });

  test('come at the stated rate', () => {
    const starts = [...loop].flatMap((x, i) =>
      x !== 0 && loop.subarray(Math.max(0, i - 200), i).every((y) => y === 0) ? [i] : []
    );
    expect(starts).toHaveLength(8);
    starts.forEach((at, n) =>
      close(at / RATE, n * 0.508, { abs: 2 / RATE, because: 'the first samples are near 0' })
    );
  });
});

describe('the puff', () => {
  // The transform of e^(−(2πst)²/2) is e^(−f²/2s²)/(s·√(2π)), s = upper/√(2·ln 10) for 20 dB at the upper frequency.
  test.each([200, 2000, 8000])('up to %i Hz has the spectrum of its formula', (upper) => {
    const loop = PUFF_SOURCE.render({ kind: 'puff', name: '', upper, pause: 0.25 }, RATE);
    const one = loop.subarray(0, 0.25 * RATE);
    const s = upper / Math.sqrt(2 * Math.log(10));
    for (const share of [0, 0.1, 0.3, 0.7, 1, 1.3]) {
      const f = share * upper;
      const expected = (0.5 * Math.exp(-(f ** 2) / (2 * s * s))) / (s * Math.sqrt(2 * Math.PI));
      close(spectrumAt(one, f).size, expected, { abs: 2e-9, rel: 1e-4, because: 'single precision' });
    }
    const fall = spectrumAt(one, upper).size / spectrumAt(one, 0).size;
    close(20 * Math.log10(fall), -20, { abs: 0.01, because: 'so the knob is defined' });
  });
});

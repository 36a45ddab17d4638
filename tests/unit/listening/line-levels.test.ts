import { describe, expect, it } from 'vitest';
import { lineLevels } from '../../../src/lib/listening/line-levels.js';
import { powerSpectrum, WINDOW } from '../../../src/lib/listening/power-spectrum.js';
import { random } from '../../../src/lib/sounds/blocks/random.js';
import { close } from '../../helpers/close.js';

const RATE = 48000;
const BIN = RATE / WINDOW;

/** A loop of exactly `seconds`, of sines [frequency, amplitude]; whole periods where frequency·seconds is whole. */
function sines(lines: [number, number][], seconds = 4): Float32Array {
  return Float32Array.from({ length: RATE * seconds }, (_, i) =>
    lines.reduce((sum, [f, a]) => sum + a * Math.sin((2 * Math.PI * f * i) / RATE), 0)
  );
}

describe('lineLevels', () => {
  it('gives sines of known amplitude their level wherever they fall between the bins', () => {
    // 17.07, 40.96, 85.33, 171.35 and 1433.5 bins: near, beside and just short of half-way between two.
    const lines: [number, number][] = [
      [100, 0.5],
      [240, 0.25],
      [500, 0.05],
      [1004, 0.01],
      [8399.5, 0.001]
    ];
    const { power, binWidth } = powerSpectrum(sines(lines), RATE);
    const levels = lineLevels(
      power,
      binWidth,
      lines.map(([f]) => f)
    );
    lines.forEach(([, amplitude], i) =>
      close(levels[i], 20 * Math.log10(amplitude / 0.5), {
        abs: 0.1,
        because: 'the bins within ±1.5 of a sine hold 98 … 100 % of a Hann window, 0 … −0.09 dB'
      })
    );
  });

  it('takes a tone alone for what its bin loses', () => {
    // Harris, table I, Hann: scallop loss 1.42 dB, noise bandwidth 1.50 bins (1.76 dB).
    for (const [place, loss] of [
      [200, 1.76],
      [200.5, 1.76 + 1.42]
    ]) {
      const { power, binWidth } = powerSpectrum(sines([[place * BIN, 1]]).subarray(0, WINDOW * 16), RATE);
      const bin = 10 * Math.log10(Math.max(...power));
      close(bin, 10 * Math.log10(0.5) - loss, { abs: 0.01, because: 'two decimals of the table' });
      const [line] = lineLevels(power, binWidth, [place * BIN]);
      expect(line).toBe(0);
    }
  });

  it('tells the two sines of the worked example apart, 40 dB and 5.5 bins from one another', () => {
    // F. J. Harris, Proc. IEEE 66 (1978) 51, section VI (values from memory): amplitude 1.00 at 10.5 bins, 0.01 at 16.0.
    // By hand: power d bins from a line is [sinc d/(1 − d²)]² of its own, over 1.5 as it is here.
    const hann = (d: number) => (Math.sin(Math.PI * d) / (Math.PI * d) / (1 - d * d)) ** 2 / 1.5;
    const leak = hann(4.5) + hann(5.5) + hann(6.5);
    close(leak, 1.25e-5, { rel: 0.05, because: 'three figures of the hand calculation' });
    const strong = hann(1.5) * 2 + hann(0.5) * 2;
    const expected = 10 * Math.log10((1e-4 + leak) / strong);
    // 128 windows' worth: the lines go through all phases against one another, their products cancel.
    const loop = Float32Array.from(
      { length: 64 * WINDOW },
      (_, i) => Math.sin((2 * Math.PI * 10.5 * i) / WINDOW) + 0.01 * Math.sin((2 * Math.PI * 16 * i) / WINDOW)
    );
    const { power, binWidth } = powerSpectrum(loop, RATE);
    const levels = lineLevels(power, binWidth, [10.5 * BIN, 16 * BIN]);
    expect(levels[0]).toBe(0);
    close(levels[1], expected, {
      abs: 0.6,
      because: 'windows half a length apart leave part of the products'
    });
    close(levels[1], -40, { abs: 1.2, because: 'the leak of the strong line adds a tenth to the weak one' });
  });

  it('counts noise between the lines for three bins of it', () => {
    const chance = random(5);
    const noise = Float32Array.from({ length: RATE * 60 }, () => chance.gaussian());
    const { power, binWidth } = powerSpectrum(noise, RATE);
    const frequencies = Array.from({ length: 300 }, (_, i) => (100 + 10 * i) * BIN);
    const levels = lineLevels(power, binWidth, [...frequencies, 12 * BIN]);
    const strongest = Math.max(...frequencies.map((f) => threeBins(power, Math.round(f / BIN))));
    const mean = levels.slice(0, 300).reduce((sum, each) => sum + 10 ** (each / 10), 0) / 300;
    close(mean * strongest, 3 / (WINDOW / 2), { rel: 0.05, because: 'three standard errors of 300 lines' });
  });

  it('says nothing of what the spectrum cannot show', () => {
    const power = new Float64Array(101).fill(1);
    expect([...lineLevels(power, 10, [15, 985, 1200])]).toEqual([0, 0, NaN]);
    expect([...lineLevels(power, 10, [14, 200, 986])]).toEqual([NaN, 0, NaN]);
    const spaced = [...lineLevels(power, 10, [300, 334, 500, 535])];
    expect(spaced.map((level) => Number.isNaN(level))).toEqual([true, true, false, false]);
    expect([...lineLevels(power, 10, [200, 200])]).toEqual([NaN, NaN]);
  });

  it('is −∞ in silence and empty for no lines', () => {
    expect([...lineLevels(new Float64Array(101), 10, [200, 400])]).toEqual([-Infinity, -Infinity]);
    expect(lineLevels(new Float64Array(101), 10, [])).toHaveLength(0);
  });

  it('refuses a bin width of nothing', () => {
    const power = new Float64Array(10);
    expect(() => lineLevels(power, 0, [40])).toThrow('bin width must be above 0 Hz, got 0');
  });
});

function threeBins(power: Float64Array, middle: number): number {
  return power[middle - 1] + power[middle] + power[middle + 1];
}

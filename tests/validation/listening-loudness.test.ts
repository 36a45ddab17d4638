import { describe, expect, test } from 'vitest';
import { integratedLoudness, loopLoudness } from '../../src/lib/listening/loudness.js';
import { close } from '../helpers/close.js';
import ffmpeg from '../reference/loudness.json';

interface Part {
  kind: string;
  frequency?: number;
  seed?: number;
  level: number;
  from: number;
  to: number;
}

/** A signal as tests/reference/loudness.py makes it. */
function signal(parts: Part[], rate: number, seconds: number): Float32Array {
  const samples = new Float64Array(Math.round(seconds * rate));
  for (const { kind, frequency = 0, seed = 0, level, from, to } of parts) {
    let x = seed;
    for (let n = Math.round(from * rate); n < Math.round(to * rate); n++) {
      x = (Math.imul(1664525, x) + 1013904223) >>> 0;
      samples[n] +=
        level * (kind === 'sine' ? Math.sin((2 * Math.PI * frequency * n) / rate) : x / 2 ** 31 - 1);
    }
  }
  return Float32Array.from(samples);
}

/** A 1000 Hz sine in stretches of seconds and dBFS (peak). */
function tones(rate: number, ...stretches: [number, number][]): Float32Array {
  let from = 0;
  const parts = stretches.map(([seconds, dbfs]) => {
    const part = { kind: 'sine', frequency: 1000, level: 10 ** (dbfs / 20), from, to: from + seconds };
    from += seconds;
    return part;
  });
  return signal(parts, rate, from);
}

test.each([
  [48000, 0.01, 'the standard gives two decimals'],
  [44100, 0.01, 'the standard gives two decimals'],
  [96000, 0.01, 'the standard gives two decimals'],
  [16000, 0.06, 'the bilinear transform bends the shelf near half the rate']
])(
  'at %i Hz a full-scale 997 Hz sine in one channel is −3.01 LUFS (ITU-R BS.1770-5, Annex 1)',
  (rate, abs, because) => {
    const sine = signal([{ kind: 'sine', frequency: 997, level: 1, from: 0, to: 4 }], rate, 4);
    close(integratedLoudness(sine, rate), -3.01, { abs, because });
    close(loopLoudness(sine, rate), -3.01, { abs, because });
  }
);

// EBU Tech 3341 (2016), table 1, cases 1 to 6: 1000 Hz sines, levels of their peaks, accepted ±0.1 LU.
// Cases 7 and 8 are recorded programmes, the others concern true peaks and short-term meters.
describe.each([48000, 44100])('EBU Tech 3341 at %i Hz', (rate) => {
  const because = 'EBU Tech 3341 accepts ±0.1 LU';

  test.each<[number, number, [number, number][]]>([
    [1, -23, [[20, -23]]],
    [2, -33, [[20, -33]]],
    [
      3,
      -23,
      [
        [10, -36],
        [60, -23],
        [10, -36]
      ]
    ],
    [
      4,
      -23,
      [
        [10, -72],
        [10, -36],
        [60, -23],
        [10, -36],
        [10, -72]
      ]
    ],
    [
      5,
      -23,
      [
        [20, -26],
        [20.1, -20],
        [20, -26]
      ]
    ]
  ])('case %i, two equal channels: %f LUFS', (_, expected, stretches) => {
    const channel = tones(rate, ...stretches);
    close(integratedLoudness([channel, channel], rate), expected, { abs: 0.1, because });
    close(integratedLoudness(channel, rate) + 10 * Math.log10(2), expected, { abs: 0.1, because });
    close(loopLoudness(channel, rate) + 10 * Math.log10(2), expected, { abs: 0.1, because });
  });

  test('case 6, five channels: −23 LUFS', () => {
    const [front, centre, surround] = [-28, -24, -30].map((dbfs) => tones(rate, [20, dbfs]));
    const loudness = integratedLoudness(
      [front, front, centre, surround, surround],
      rate,
      [1, 1, 1, 1.41, 1.41]
    );
    close(loudness, -23, { abs: 0.1, because });
  });
});

// tests/reference/loudness.json holds values of ffmpeg's ebur128 and its recipe.
describe(`${ffmpeg.tool}`, () => {
  test.each(ffmpeg.signals)('$name: $integrated LUFS', ({ channels, rate, seconds, weights, integrated }) => {
    const sound = channels.map((parts) => signal(parts, rate, seconds));
    close(integratedLoudness(sound, rate, weights), integrated, {
      abs: 0.02,
      because:
        'its histogram of blocks has steps of 0.01 LU, and its filter at 44.1 kHz is another bilinear one'
    });
  });

  test('there is something to compare', () => expect(ffmpeg.signals.length).toBeGreaterThanOrEqual(8));
});

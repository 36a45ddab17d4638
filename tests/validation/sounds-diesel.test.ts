import { describe, expect, test } from 'vitest';
import { RealFft } from '../../src/lib/numeric/fft.js';
import { turboSpeed } from '../../src/lib/sounds/diesel/chargers.js';
import { type Diesel, dieselRpm, firingRate, patternRate } from '../../src/lib/sounds/diesel/diesel.js';
import { DIESEL_KIND } from '../../src/lib/sounds/diesel/diesel-kind.js';
import { DIESEL_PRESETS } from '../../src/lib/sounds/diesel/diesel-presets.js';
import { bladeOrder } from '../../src/lib/sounds/diesel/rotors.js';
import { renderLoop } from '../../src/lib/sounds/motion/ride.js';
import { close } from '../helpers/close.js';

const RATE = 16000;
const SIZE = 2 ** 17;
const [CAB, ROAD, SWITCHER, RAILBUS] = DIESEL_PRESETS;

// Usual speeds of medium-speed engines at idle and at full load, published in operators' handbooks (from memory).
describe('published speeds', () => {
  test.each<[Diesel['cycle'], number, number, number]>([
    ['four-stroke', 16, 450, 60],
    ['four-stroke', 16, 1050, 140],
    ['two-stroke', 16, 315, 84],
    ['two-stroke', 16, 904, 241],
    ['four-stroke', 12, 400, 40],
    ['four-stroke', 12, 1000, 100]
  ])('%s, %i cylinders, %i rpm: %f firings a second', (cycle, cylinders, rpm, expected) => {
    close(firingRate({ ...CAB, cycle, cylinders }, rpm), expected, {
      rel: 0.0005,
      because: 'the values are rounded to whole hertz'
    });
  });

  test('the engines of the roster idle and run as such engines do', () => {
    const speeds = (sound: Diesel) => [0, 8].map((notch) => dieselRpm({ ...sound, notch }));
    expect(speeds(CAB)).toEqual([400, 1000]);
    expect(speeds(ROAD)).toEqual([315, 904]);
  });

  test('a turbocharger turns 18 000 times a minute at full load, fans of 8 and 9 blades beat at 225 to 285 Hz', () => {
    close(turboSpeed(CAB, 1) * 60, 18000, { rel: 1e-9, because: 'it is the definition' });
    const beat = (sound: Diesel, fan: 0 | 1) =>
      bladeOrder(sound, fan) * (dieselRpm({ ...sound, notch: 8 }) / 60);
    // "Near twice engine speed", "near 240 to 270 Hz": one of the two fans is within, the other within a semitone of it.
    for (const sound of [CAB, ROAD]) {
      const beats = [beat(sound, 0), beat(sound, 1)];
      expect(beats.some((x) => x > 240 && x < 270)).toBe(true);
      for (const x of beats) expect(x > 240 / 1.08 && x < 270 * 1.08).toBe(true);
    }
  });
});

/** Level in dB of the spectrum of an endless loop, over eight seconds of it, with a Hann window. */
function spectrumOf(loop: Float32Array): Float64Array {
  const fft = new RealFft(SIZE);
  const windowed = Float64Array.from(
    { length: SIZE },
    (_, i) => loop[i % loop.length] * Math.sin((Math.PI * i) / SIZE) ** 2
  );
  const { re, im } = fft.forward(windowed);
  return Float64Array.from(re, (x, k) => 10 * Math.log10(x * x + im[k] * im[k] + 1e-30));
}

/** A line of a spectrum and by how many dB it stands above the median of its neighbourhood. */
interface Line {
  frequency: number;
  prominence: number;
}

/** The highest line within a range, between the bins: a parabola through the levels of the three highest bins. */
function highest(spectrum: Float64Array, from: number, to: number): Line {
  const bin = RATE / SIZE;
  let top = Math.ceil(from / bin);
  for (let k = top; k <= to / bin; k++) if (spectrum[k] > spectrum[top]) top = k;
  const [a, b, c] = [spectrum[top - 1], spectrum[top], spectrum[top + 1]];
  const off = (a - c) / (2 * (a - 2 * b + c));
  const around = [...spectrum.subarray(Math.floor(from / bin), Math.ceil(to / bin))].sort((x, y) => x - y);
  return { frequency: (top + off) * bin, prominence: b - around[around.length >> 1] };
}

/** The rate whose multiples carry the most, within 4 % of a guess: the mean level on the first `count` of them. */
function combRate(spectrum: Float64Array, guess: number, count: number): number {
  const bin = RATE / SIZE;
  const level = (frequency: number) => {
    const k = Math.floor(frequency / bin);
    const part = frequency / bin - k;
    return spectrum[k] + part * (spectrum[k + 1] - spectrum[k]);
  };
  let best = { rate: 0, score: -Infinity };
  for (let step = -800; step <= 800; step++) {
    const rate = guess * (1 + step * 5e-5);
    let score = 0;
    for (let n = 1; n <= count; n++) score += level(n * rate);
    if (score > best.score) best = { rate, score };
  }
  return best.rate;
}

// Kinematics says where the lines are. They are looked for in the rendered sound, by their height alone.
describe('spectral lines', () => {
  const engines: [string, Diesel][] = [
    [CAB.name, CAB],
    [ROAD.name, ROAD],
    [SWITCHER.name, SWITCHER],
    [RAILBUS.name, RAILBUS],
    ['sixteen-cylinder four-stroke', { ...CAB, cylinders: 16, idleRpm: 450, fullRpm: 1050, seed: 5 }],
    ['five in line, two-stroke', { ...SWITCHER, cylinders: 5, cycle: 'two-stroke', seed: 6 }]
  ];
  const cases = engines.flatMap(([name, engine]) => [0, 3, 8].map((notch) => [name, notch, engine] as const));

  test.each(cases)('%s at notch %i', (_, notch, engine) => {
    const sound = { ...engine, notch };
    const rpm = dieselRpm(sound);
    const spectrum = spectrumOf(renderLoop(DIESEL_KIND, sound, RATE));
    const pattern = patternRate(sound, rpm);
    const firing = firingRate(sound, rpm);

    // Between the lines of the pattern beside it, nothing but the firing rate stands out.
    const line = highest(spectrum, firing - 0.75 * pattern, firing + 0.75 * pattern);
    expect(line.prominence).toBeGreaterThan(10);
    close(line.frequency, firing, {
      rel: 0.001,
      because:
        'half a bin of the spectrum is 0.06 Hz; the rounding of the loop to whole samples is a hundred times less'
    });

    close(combRate(spectrum, 1.013 * pattern, 3 * engine.cylinders), pattern, {
      rel: 0.001,
      because: 'steps of 0.005 %; at the highest multiple 0.1 % is a fifth of a bin or more'
    });
  });
});

import { describe, expect, test } from 'vitest';
import { RealFft } from '../../src/lib/numeric/fft.js';
import { addCharger } from '../../src/lib/sounds/diesel/chargers.js';
import { type Diesel, dieselRpm, firingRate, patternRate } from '../../src/lib/sounds/diesel/diesel.js';
import { DIESEL_SOURCE } from '../../src/lib/sounds/diesel/diesel-source.js';
import { DIESEL_PRESETS } from '../../src/lib/sounds/diesel/diesel-presets.js';
import { addFans, bladeOrder } from '../../src/lib/sounds/diesel/rotors.js';
import { renderLoop } from '../../src/lib/sounds/motion/ride.js';
import { close } from '../helpers/close.js';
import { lineAmplitude, strongestLine } from '../helpers/spectral-line.js';
import { steady } from '../unit/sounds/diesel/steady.js';

const RATE = 16000;
const SIZE = 2 ** 17;
const [CAB, ROAD, SWITCHER, RAILBUS] = DIESEL_PRESETS;

// Usual speeds of medium-speed engines: about 300 to 900 rpm (two-stroke), 400 to 1000 (four-stroke), rounded; operators'
// handbooks, from memory.
describe('published speeds', () => {
  test.each<[Diesel['cycle'], number, number, number]>([
    ['four-stroke', 16, 400, 53.33],
    ['four-stroke', 16, 1000, 133.33],
    ['two-stroke', 16, 300, 80],
    ['two-stroke', 16, 900, 240],
    ['four-stroke', 12, 420, 42],
    ['four-stroke', 12, 980, 98]
  ])('%s, %i cylinders, %i rpm: %f firings a second', (cycle, cylinders, rpm, expected) => {
    close(firingRate({ ...CAB, cycle, cylinders }, rpm), expected, {
      rel: 0.0005,
      because: 'the values are rounded to hundredths of a hertz'
    });
  });

  test('the engines of the roster idle and run as such engines do', () => {
    const speeds = (sound: Diesel) => [0, 8].map((notch) => dieselRpm({ ...sound, notch }));
    for (const [sound, idle, full] of [
      [CAB, 400, 1000],
      [ROAD, 300, 900]
    ] as const) {
      const [slow, fast] = speeds(sound);
      // Between "about 300" of two strokes and "about 400" of four at idle, "about 900" and "about 1000" at full load.
      expect(slow).toBeGreaterThan(300);
      close(Math.max(slow, 400), 400, { rel: 0.05, because: '"about"' });
      close(Math.min(fast, 900), 900, { rel: 0.05, because: '"about"' });
      expect(fast).toBeLessThan(1000);
      // And none of them is what the books say of one engine.
      expect([slow, fast]).not.toContain(idle);
      expect([slow, fast]).not.toContain(full);
    }
  });

  // "Eight notches, the first often at idle speed" (from memory).
  test('the first of eight notches of a medium-speed engine runs near idle speed, and pulls', () => {
    for (const sound of [CAB, ROAD, SWITCHER]) {
      const [idle, first] = [0, 1].map((notch) => DIESEL_SOURCE.target({ ...sound, notch }));
      close(first.speed, idle.speed, {
        rel: 0.09,
        because: '"at or near": a notch of even steps is 17 to 21 % faster'
      });
      expect(first.effort).toBeGreaterThan(1.3 * idle.effort);
    }
  });

  // "About 18 000 rpm at full load" (from memory). Heard: seven full blades a turn.
  test('a turbocharger is heard to turn 18 000 times a minute at full load', () => {
    const { course, span } = steady({ speed: 1000 / 60, effort: 1, spool: 1, turns: 100 / 6 }, RATE);
    const signal = new Float32Array(span.length);
    addCharger(signal, CAB, course, span, () => 0);
    const { frequency } = strongestLine(signal, RATE, 1500, 3500);
    close((frequency / 7) * 60, 18000, { rel: 0.02, because: '"about"' });
  });

  // "Fans of 8 or 9 blades near twice engine speed: a tone near 240 to 270 Hz" (from memory).
  test.each(
    [CAB, ROAD, SWITCHER].flatMap((sound) => [0, 1].map((fan) => [sound.name, fan as 0 | 1, sound] as const))
  )('%s, fan %i is heard between 240 and 270 Hz at full speed, and nothing beside both', (_, fan, sound) => {
    const speed = dieselRpm({ ...sound, notch: 8 }) / 60;
    const { course, span } = steady({ speed, turns: 60 }, RATE);
    const signal = new Float32Array(span.length);
    addFans(signal, { ...sound, fans: 1 }, course, span, () => 0);
    const loudest = strongestLine(signal, RATE, 150, 400).frequency;
    expect(loudest).toBeGreaterThan(240);
    expect(loudest).toBeLessThan(270);
    const tone = bladeOrder(sound, fan) * speed;
    const heard = strongestLine(signal, RATE, tone - 3, tone + 3);
    expect(heard.frequency).toBeGreaterThan(240);
    expect(heard.frequency).toBeLessThan(270);
    for (const outside of [200, 226, 233, 276, 283, 292])
      expect(heard.amplitude).toBeGreaterThan(5 * lineAmplitude(signal, RATE, outside));
  });

  test.each([
    [CAB, 8],
    [ROAD, 9]
  ] as const)('the fans of $name turn near twice engine speed', (sound, blades) => {
    for (const fan of [0, 1] as const)
      close(bladeOrder(sound, fan) / blades, 2, {
        rel: 0.07,
        because: '"near"; blades pass whole in a pattern'
      });
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
    const spectrum = spectrumOf(renderLoop(DIESEL_SOURCE, sound, RATE));
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

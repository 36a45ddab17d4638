import { describe, expect, test } from 'vitest';
import { powerSpectrum } from '../../src/lib/listening/power-spectrum.js';
import { loopSpan } from '../../src/lib/sounds/blocks/span.js';
import { usualValues } from '../../src/lib/sounds/knob.js';
import { courseThrough } from '../../src/lib/sounds/motion/course.js';
import { settledAt } from '../../src/lib/sounds/motion/motion.js';
import { renderLoop } from '../../src/lib/sounds/motion/ride.js';
import { blast } from '../../src/lib/sounds/steam/blast.js';
import { renderHeldWhistle } from '../../src/lib/sounds/steam/held-whistle.js';
import { beatRate, driverRate, type Steam, STEAM_KNOBS } from '../../src/lib/sounds/steam/steam.js';
import { STEAM_SOURCE } from '../../src/lib/sounds/steam/steam-source.js';
import { whistlePitches } from '../../src/lib/sounds/steam/whistle.js';
import { WHISTLE_SOURCE } from '../../src/lib/sounds/steam/whistle-source.js';
import { WHISTLE_PRESETS } from '../../src/lib/sounds/steam/whistle-presets.js';
import { close } from '../helpers/close.js';
import { envelopeOf, lineAmplitude, strongestLine } from '../helpers/spectral-line.js';

const RATE = 16000;
const MPH = 0.44704;
const INCH = 0.0254;
const ENVELOPE = 400;

/** At notch 4 this engine runs at 30 mph. */
const ENGINE: Steam = {
  ...usualValues(STEAM_KNOBS),
  kind: 'steam',
  name: 'engine of the tables',
  topSpeed: 60 * MPH,
  notch: 4
};

const envelope = (engine: Steam, sampleRate = RATE) =>
  envelopeOf(renderLoop(STEAM_SOURCE, engine, sampleRate), sampleRate, ENVELOPE);

// Beats a second of two-cylinder engines at 30 mph by the diameter of their drivers, as in published tables.
describe.each([
  [63, 10.7],
  [69, 9.7],
  [80, 8.4]
])('drivers of %i in at 30 mph beat %f times a second', (inches, beats) => {
  const engine = { ...ENGINE, driverDiameter: inches * INCH };

  test('by kinematics', () => {
    close(beatRate(engine, 30 * MPH), beats, { abs: 0.05, because: 'the table is rounded to a tenth' });
  });

  test('in the sound', () => {
    const exact = (4 * 30 * MPH) / (Math.PI * inches * INCH);
    const found = strongestLine(envelope(engine), ENVELOPE, 0.6 * exact, 1.6 * exact);
    close(found.frequency, exact, { rel: 0.005, because: 'asked for; the beats are no clockwork' });
  });
});

test('three cylinders beat six times a turn', () => {
  const engine = { ...ENGINE, cylinders: 3, driverDiameter: 80 * INCH, notch: 2 };
  const exact = (6 * 15 * MPH) / (Math.PI * 80 * INCH);
  const found = strongestLine(envelope(engine), ENVELOPE, 0.4 * exact, 1.6 * exact);
  close(found.frequency, exact, { rel: 0.005, because: 'asked for; the beats are no clockwork' });
});

// Common practice: valves are never quite square, and the ear takes the turn of the drivers from it.
test('unequal beats are a line at the turn of the drivers', () => {
  const turn = driverRate(ENGINE, 30 * MPH);
  const line = (unevenness: number) =>
    lineAmplitude(envelope({ ...ENGINE, rods: 0, unevenness }), ENVELOPE, turn);
  expect(line(0.6)).toBeGreaterThan(4 * line(0));
  expect(line(0.6)).toBeGreaterThan(0.05);
});

// The sound of a jet shifts upward with its speed (M. J. Lighthill, Proc. R. Soc. A 211 (1952) 564).
describe('the blast opens', () => {
  const share = (signal: Float32Array, rate: number) => {
    const { power, binWidth } = powerSpectrum(signal, rate);
    const all = power.reduce((sum, x) => sum + x, 0);
    return power.reduce((sum, x, k) => sum + (k * binWidth > 2000 ? x : 0), 0) / all;
  };
  /** Share above 2 kHz of four seconds of blast alone. */
  const treble = (knobs: Partial<Steam>) => {
    const engine = { ...ENGINE, ...knobs };
    const { speed, effort } = STEAM_SOURCE.target(engine);
    const motions = Array.from({ length: 4001 }, (_, tick) => ({
      ...settledAt({ speed, effort }),
      turns: (speed * tick) / 1000,
      seconds: tick / 1000
    }));
    return share(blast(engine, courseThrough(motions, RATE), loopSpan(4 * RATE, RATE, engine.seed)), RATE);
  };

  test('with the load', () => {
    const shares = [0, 0.5, 1].map((load) => treble({ load }));
    expect(shares[1]).toBeGreaterThan(1.4 * shares[0]);
    expect(shares[2]).toBeGreaterThan(1.3 * shares[1]);
  });

  test('with the cutoff', () => {
    const shares = [0.15, 0.45, 0.8].map((cutoff) => treble({ cutoff }));
    expect(shares[1]).toBeGreaterThan(1.1 * shares[0]);
    expect(shares[2]).toBeGreaterThan(1.1 * shares[1]);
  });

  test('and it is heard in the whole sound', () => {
    const [light, heavy] = [0.1, 1].map((load) =>
      share(renderLoop(STEAM_SOURCE, { ...ENGINE, load, notch: 6 }, RATE), RATE)
    );
    expect(heavy).toBeGreaterThan(1.2 * light);
  });
});

// Equal temperament on A = 440 Hz, ISO 16:1975.
describe('whistles are in tune within 2 cents', () => {
  const because = 'asked for; bells wander by a few cents about their pitch';
  const cents = (found: number, exact: number) => 1200 * Math.log2(found / exact);

  test.each(WHISTLE_PRESETS.map((whistle) => [whistle.name, whistle] as const))('%s, held', (_, whistle) => {
    const { samples, loopFrom } = renderHeldWhistle(whistle, RATE);
    for (const pitch of whistlePitches(whistle)) {
      const found = strongestLine(samples.subarray(loopFrom), RATE, pitch * 0.993, pitch * 1.007);
      close(cents(found.frequency, pitch), 0, { abs: 2, because });
    }
  });

  // Alone: in a chord, partials of two bells can lie two cents apart.
  test.each([[-8], [0], [7], [14]])('the third partial of a single bell at %i semitones', (semitones) => {
    const alone = { ...WHISTLE_PRESETS[0], chord: [semitones] };
    const { samples, loopFrom } = renderHeldWhistle(alone, RATE);
    const exact = 3 * 440 * 2 ** (semitones / 12);
    const found = strongestLine(samples.subarray(loopFrom), RATE, exact * 0.993, exact * 1.007);
    close(cents(found.frequency, exact), 0, { abs: 2, because });
  });

  test.each(WHISTLE_PRESETS.map((whistle) => [whistle.name, whistle] as const))(
    '%s, in its loop',
    (_, whistle) => {
      const blast = WHISTLE_SOURCE.render(whistle, RATE).subarray(0.7 * RATE, 2.7 * RATE);
      for (const pitch of whistlePitches(whistle)) {
        const found = strongestLine(blast, RATE, pitch * 0.99, pitch * 1.01);
        close(cents(found.frequency, pitch), 0, { abs: 2, because });
      }
    }
  );

  test('440 Hz is nought', () => {
    expect(whistlePitches({ chord: [0, 3, 12] }).map((f) => f.toFixed(3))).toEqual([
      '440.000',
      '523.251',
      '880.000'
    ]);
  });
});

import { describe, expect, test, vi } from 'vitest';
import { loopLoudness } from '../../../../src/lib/listening/loudness.js';
import { measureSound } from '../../../../src/lib/listening/measure-sound.js';
import type { SoundFigures } from '../../../../src/lib/listening/sound-figures.js';
import { random } from '../../../../src/lib/sounds/blocks/random.js';
import { DIESEL_SOURCE } from '../../../../src/lib/sounds/diesel/diesel-source.js';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import { Desk } from '../../../../src/lib/workers/sound/answer.js';
import type { Kept, Question } from '../../../../src/lib/workers/sound/protocol.js';
import { ALIGNED } from '../../../../src/lib/workers/sound/sound-bank.js';
import { peak } from '../../../../src/lib/listening/peak.js';
import type { Lufs } from '../../../../src/lib/units.js';
import { close } from '../../../helpers/close.js';

const RATE = 16000;
const chance = random(6);
const samples = Float32Array.from({ length: 3 * RATE + 77 }, () => 0.1 * chance.gaussian());

/** An impulse response of `taps` samples with these first ones. */
function response(taps: number, ...first: number[]): Float32Array {
  const h = new Float32Array(taps);
  h.set(first);
  return h;
}

describe('a kept sound', () => {
  const desk = new Desk();
  const kept = desk.answer({ kind: 'keep', key: 'own', samples, sampleRate: RATE });
  const measured = desk.answer({ kind: 'figures', key: 'own' });
  const loudness = (...impulseResponses: Float32Array[]) =>
    desk.answer({ kind: 'loudnessThrough', key: 'own', impulseResponses }) as Lufs[];
  const peaks = (...impulseResponses: Float32Array[]) =>
    desk.answer({ kind: 'peaksThrough', key: 'own', impulseResponses }) as number[];

  test('is kept as it is, and measured when that is asked', () => {
    expect(kept).toEqual({ gain: 1 });
    expect(measured).toEqual(measureSound(samples, RATE));
  });

  test('can be brought to the common loudness when it is kept', () => {
    const other = new Desk();
    const { gain } = other.answer({
      kind: 'keep',
      key: 'own',
      samples,
      sampleRate: RATE,
      align: true
    }) as Kept;
    const aligned = other.answer({ kind: 'figures', key: 'own' }) as SoundFigures;
    close(aligned.loudness, ALIGNED, { abs: 1e-3, because: 'single precision' });
    close(aligned.peak, gain * peak(samples), { rel: 1e-6, because: 'single precision' });
  });

  test('is heard unchanged behind a unit impulse, late or not', () => {
    const own = measureSound(samples, RATE);
    const units = [response(64, 1), response(64, 0, 0, 0, 1)];
    for (const level of loudness(...units))
      close(level, own.loudness, { abs: 0.02, because: 'blocks begin three samples later' });
    for (const peak of peaks(...units)) close(peak, own.peak, { rel: 1e-5, because: 'single precision' });
  });

  test('is heard through every response in its order, whatever their lengths', () => {
    const [plain, half, two] = loudness(response(64, 1), response(128, 0.5), response(64, 1, 1));
    close(half, plain - 6.0206, { abs: 1e-3, because: 'single precision' });
    const doubled = samples.map((x, i) => x + samples[(i + samples.length - 1) % samples.length]);
    close(two, loopLoudness(doubled, RATE), { abs: 1e-3, because: 'single precision' });
    const halved = peaks(response(64, 1), response(128, 0.5), response(64, -1));
    expect(halved.map((each) => each / halved[0])).toEqual([1, 0.5, 1]);
    expect(loudness()).toEqual([]);
  });

  test('is silent behind a response of zeros', () => {
    expect([loudness(response(64)), peaks(response(64))]).toEqual([[-Infinity], [0]]);
  });

  test('needs responses of a power of two', () => {
    expect(() => loudness(response(100, 1))).toThrow(
      'length of an impulse response must be a power of two, got 100'
    );
    expect(() => loudness(response(0))).toThrow('must be a power of two, got 0');
  });

  test('needs finite numbers', () => {
    expect(() => loudness(response(4, 1, NaN))).toThrow(
      'samples of an impulse response must be finite numbers, got NaN'
    );
    const broken = {
      kind: 'keep',
      key: 'b',
      samples: Float32Array.of(1, Infinity),
      sampleRate: RATE
    } as const;
    expect(() => desk.answer(broken)).toThrow('samples of a sound must be finite numbers, got Infinity');
  });

  test('can be replaced under its key', () => {
    const other = new Desk();
    const ask = () =>
      other.answer({ kind: 'loudnessThrough', key: 'a', impulseResponses: [response(64, 1)] }) as Lufs[];
    other.answer({ kind: 'keep', key: 'a', samples, sampleRate: RATE });
    const before = ask()[0];
    other.answer({ kind: 'keep', key: 'a', samples: samples.map((x) => x / 2), sampleRate: RATE });
    close(ask()[0], before - 6.0206, { abs: 1e-3, because: 'single precision' });
  });
});

test('a sound that was never kept, or forgotten, is named', () => {
  const desk = new Desk();
  const ask = () => desk.answer({ kind: 'loudnessThrough', key: 'own', impulseResponses: [response(4, 1)] });
  expect(ask).toThrow('no sound is kept under "own"');
  desk.answer({ kind: 'keep', key: 'own', samples, sampleRate: RATE });
  expect(ask).not.toThrow();
  expect(desk.answer({ kind: 'forget', key: 'own' })).toBeNull();
  expect(ask).toThrow('no sound is kept under "own"');
});

test('questions nobody knows and values out of range are refused in a sentence', () => {
  const desk = new Desk();
  expect(() => desk.answer({ kind: 'weather' } as unknown as Question)).toThrow(
    'nothing here answers "weather"'
  );
  expect(() => desk.answer({ kind: 'blast', signal: 'whistle', sampleRate: 1 })).toThrow(
    'sample rate must be within'
  );
  const empty = { kind: 'keep', key: 'e', samples: new Float32Array(0), sampleRate: RATE } as const;
  expect(() => desk.answer(empty)).toThrow('at least 1 sample');
  expect(() => desk.answer({ kind: 'loudnessThrough', key: 'e', impulseResponses: [] })).toThrow(
    'no sound is kept'
  );
});

test('what is prepared is there when it is asked for, and no other sound for it', () => {
  const sound = usualSound('diesel');
  const [prepared, other] = [new Desk(), new Desk()];
  expect(prepared.answer({ kind: 'prepare', sound, sampleRate: 8000 })).toBeNull();
  const made = vi.spyOn(DIESEL_SOURCE, 'render');
  try {
    const loop = prepared.answer({ kind: 'sound', sound, sampleRate: 8000 });
    expect(made).not.toHaveBeenCalled();
    expect(loop).toEqual(other.answer({ kind: 'sound', sound, sampleRate: 8000 }));
    expect(made).toHaveBeenCalledOnce();
    // What is not a machine is made when it is asked for.
    expect(prepared.answer({ kind: 'prepare', sound: usualSound('puff'), sampleRate: 8000 })).toBeNull();
  } finally {
    made.mockRestore();
  }
});

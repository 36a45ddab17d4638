import { describe, expect, test } from 'vitest';
import { BenchFileError } from '../../../src/lib/file/bench-file-error.js';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import { usualSound } from '../../../src/lib/sounds/roster.js';
import { demoBenchText } from '../../helpers/demo-bench-text.js';

describe('the sound', () => {
  const sound = (value: object) => readBenchFile(demoBenchText((bench) => (bench.sound = value))).sound;

  test('an engine as it was called once is the first diesel, at its notch', () => {
    expect(sound({ kind: 'engine', notch: 6 })).toEqual({ ...usualSound('diesel'), loading: 0, notch: 6 });
    expect(sound({ kind: 'engine' })).toEqual({ ...usualSound('diesel'), loading: 0 });
  });

  test('what is not said of a sound is as it comes', () => {
    expect(sound({ kind: 'steam', cutoff: 0.5 })).toEqual({ ...usualSound('steam'), cutoff: 0.5 });
  });

  test.each<[object, string]>([
    [{ kind: 'diesel', cylinders: 0 }, 'sound.cylinders must be a whole number within 1 … 20, got 0'],
    [{ kind: 'diesel', cylinders: null }, 'sound.cylinders must be a whole number within 1 … 20, got null'],
    [{ kind: 'horn', chord: [] }, 'sound.chord must have 1 … 6 notes, got a list'],
    [{ kind: 'horn', chord: 'A♭' }, 'sound.chord must have 1 … 6 notes, got "A♭"'],
    [{ kind: 'steam', drainCocks: 'open' }, 'sound.drainCocks must be true or false, got "open"'],
    [{ kind: 'diesel', layout: 'radial' }, 'sound.layout must be "in-line" or "vee", got "radial"'],
    [{ kind: 'bell', name: '' }, 'sound.name must not be empty, got ""'],
    [{ kind: 'bell', notch: 3 }, 'sound has an unknown key "notch"'],
    [
      { kind: 'diesel', idleRpm: 1000, fullRpm: 500 },
      'sound: full speed must be at least the idle speed of 1000 rpm, got 500'
    ]
  ])('%j is refused', (value, expected) => {
    expect(() => sound(value)).toThrow(new BenchFileError(expected));
  });
});

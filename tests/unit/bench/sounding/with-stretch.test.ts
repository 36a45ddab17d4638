import { expect, test } from 'vitest';
import { withStretch, type Recording } from '../../../../src/lib/bench/sounding/open-recording.js';
import { MAX_STRETCH } from '../../../../src/lib/sounds/recording/check-recording.js';
import { MIN_STRETCH } from '../../../../src/lib/sounds/recording/loop-stretch.js';
import { random } from '../../../../src/lib/sounds/blocks/random.js';

function recording(duration: number): Recording {
  return {
    ...{ id: 1, name: 'mine.wav', samples: new Float32Array(8), sampleRate: 48000 },
    ...{ duration, start: 0, end: Math.min(duration, MAX_STRETCH), warning: null }
  };
}

test('whatever is asked for, the stretch lies inside the recording, is long enough and at most a minute', () => {
  const { uniform } = random(12);
  for (const duration of [0.2, 0.5, 3, 90, 600])
    for (let i = 0; i < 200; i++) {
      const [a, b] = [(uniform() * 3 - 1) * duration, (uniform() * 3 - 1) * duration];
      const { start, end } = withStretch(recording(duration), a, b);
      expect(start).toBeGreaterThanOrEqual(0);
      expect(end).toBeLessThanOrEqual(duration);
      expect(end - start).toBeGreaterThan(MIN_STRETCH - 1e-9);
      expect(end - start).toBeLessThanOrEqual(MAX_STRETCH + 1e-9);
    }
});

test('a stretch that can be is taken as it is, and the rest of the recording stays', () => {
  const before = recording(30);
  const after = withStretch(before, 3.5, 12.25);
  expect(after).toEqual({ ...before, start: 3.5, end: 12.25 });
  expect(before.end).toBe(30);
});

import { expect, test } from 'vitest';
import { loopStretch } from '../../../../src/lib/sounds/recording/loop-stretch.js';
import { random } from '../../../../src/lib/sounds/blocks/random.js';
import { close } from '../../../helpers/close.js';
import { seam } from '../../../helpers/seam.js';

const RATE = 8000;
const chance = random(3);
const recording = Float32Array.from({ length: 3 * RATE }, () => 0.1 * chance.gaussian());

test('the loop is the stretch less the crossfade, untouched after it', () => {
  const loop = loopStretch(recording, RATE, 0.5, 2);
  expect(loop.length).toBe(1.5 * RATE - 160);
  expect(loop.slice(160)).toEqual(recording.slice(4000 + 160, 4000 + 12000 - 160));
});

test('the loop runs on into what followed its end', () => {
  const loop = loopStretch(recording, RATE, 0.5, 2);
  const followed = recording.slice(16000 - 160, 16000);
  close(loop[0], followed[0], { abs: 0.003, because: 'half a step of the fade: the new part weighs 0.5 %' });
  close(loop[159], recording[4159], { abs: 0.003, because: 'half a step of the fade' });
});

test('the crossfade keeps the power of unrelated sound', () => {
  const long = Float32Array.from({ length: 20 * RATE }, () => chance.gaussian());
  const power = (samples: Float32Array) => samples.reduce((sum, x) => sum + x * x, 0) / samples.length;
  const faded = loopStretch(long, RATE, 0, 20, 8).slice(0, 8 * RATE);
  close(power(faded), 1, { abs: 0.04, because: 'five standard errors of 64 000 squares of weight up to 1' });
});

test('a smooth sound cut anywhere has no seam', () => {
  const hum = Float32Array.from(
    { length: 2 * 48000 },
    (_, i) => Math.sin(0.0137 * i) * 0.3 + Math.sin(0.21 * i) * 0.01
  );
  const cut = seam(hum.slice(1234, 60000), 48000);
  expect(Math.max(cut.step, cut.slope)).toBeGreaterThan(1.5);
  const loop = seam(loopStretch(hum, 48000, 1234 / 48000, 60000 / 48000), 48000);
  expect(Math.max(loop.step, loop.slope)).toBeLessThan(1.2);
});

test('an end past the recording is cut to it, and the recording is left as it was', () => {
  const before = recording.slice();
  expect(loopStretch(recording, RATE, 1, 60).length).toBe(2 * RATE - 160);
  expect(recording).toEqual(before);
});

test('stretches too short or outside are refused', () => {
  expect(() => loopStretch(recording, RATE, 1, 1.05)).toThrow('must last at least 0.1 s, got 0.05');
  expect(() => loopStretch(recording, RATE, 2.95, 9)).toThrow(RangeError);
  expect(() => loopStretch(recording, RATE, 4, 9)).toThrow(
    'start of the stretch must be within 0 … 3 s, got 4'
  );
  expect(() => loopStretch(recording, RATE, NaN, 9)).toThrow(RangeError);
  expect(() => loopStretch(recording, RATE, 0, NaN)).toThrow(RangeError);
  expect(() => loopStretch(recording, RATE, 0, 1, 0.6)).toThrow('crossfade must be within 0 … 0.5 s');
  expect(loopStretch(recording, RATE, 1, 1.1).length).toBe(800 - 160);
});

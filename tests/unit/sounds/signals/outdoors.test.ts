import { expect, test } from 'vitest';
import { OUTDOORS, outdoors } from '../../../../src/lib/sounds/signals/outdoors.js';
import { close } from '../../../helpers/close.js';

const sampleRate = 16000;
const click = (length: number, at: number) => Float32Array.from({ length }, (_, i) => (i === at ? 1 : 0));
const energy = (x: Float32Array, from: number, until: number) =>
  x.subarray(from, until).reduce((sum, v) => sum + v * v, 0);

test('the sound itself comes first and is by far the strongest; echoes end when it says they do', () => {
  const heard = outdoors(click(2 * sampleRate, 100), { sampleRate, cyclic: false });
  expect(energy(heard, 0, 100)).toBe(0);
  expect(energy(heard, 0, 130)).toBeGreaterThan(5 * energy(heard, 130, heard.length));
  expect(energy(heard, 130, 100 + OUTDOORS * sampleRate)).toBeGreaterThan(1e-3);
  expect(energy(heard, 100 + (OUTDOORS + 0.1) * sampleRate, heard.length)).toBeLessThan(1e-9);
});

test('in a loop the echoes go round: turning the sound turns what is heard', () => {
  const span = { sampleRate, cyclic: true };
  const length = sampleRate;
  const heard = outdoors(click(length, 0), span);
  const turned = outdoors(click(length, 12000), span);
  for (let i = 0; i < length; i += 11)
    close(turned[(i + 12000) % length], heard[i], { abs: 1e-6, because: 'filters settle in half a second' });
});

test('a loop shorter than the echoes is heard as its repetitions', () => {
  const length = 500;
  const loop = outdoors(click(length, 0), { sampleRate, cyclic: true });
  const train = Float32Array.from({ length: 60 * length }, (_, i) => (i % length === 0 ? 1 : 0));
  const long = outdoors(train, { sampleRate, cyclic: false }).subarray(59 * length);
  for (let i = 0; i < length; i += 7)
    close(loop[i], long[i], { abs: 1e-5, because: 'after 1.8 s all is settled' });
});

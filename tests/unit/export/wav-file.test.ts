import { expect, test } from 'vitest';
import { wavFile } from '../../../src/lib/export/wav-file.js';
import { random } from '../../../src/lib/sounds/blocks/random.js';
import { close } from '../../helpers/close.js';

/** What a reader of the format finds, chunk by chunk, without knowing how the file was written. */
function decoded(file: Uint8Array) {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const text = (at: number) => String.fromCharCode(...file.subarray(at, at + 4));
  expect(text(0)).toBe('RIFF');
  expect(view.getUint32(4, true)).toBe(file.length - 8);
  expect(text(8)).toBe('WAVE');
  const chunks = new Map<string, [number, number]>();
  let at = 12;
  while (at < file.length) {
    const size = view.getUint32(at + 4, true);
    chunks.set(text(at), [at + 8, size]);
    at += 8 + size + (size % 2);
  }
  expect(at).toBe(file.length);
  const [format] = chunks.get('fmt ')!;
  const [data, size] = chunks.get('data')!;
  const samples = Array.from({ length: size / 3 }, (_, i) => {
    const p = data + 3 * i;
    const value = file[p] + 256 * file[p + 1] + 65536 * file[p + 2];
    return (value >= 2 ** 23 ? value - 2 ** 24 : value) / 2 ** 23;
  });
  return {
    tag: view.getUint16(format, true),
    channels: view.getUint16(format + 2, true),
    sampleRate: view.getUint32(format + 4, true),
    bytesASecond: view.getUint32(format + 8, true),
    frame: view.getUint16(format + 12, true),
    bits: view.getUint16(format + 14, true),
    samples
  };
}

test('three samples, byte by byte', () => {
  const file = wavFile(Float32Array.of(0.5, -1, 2 ** -23), 48000);
  // oxfmt-ignore
  expect([...file]).toEqual([
    0x52, 0x49, 0x46, 0x46, 46, 0, 0, 0, 0x57, 0x41, 0x56, 0x45, // RIFF, 54 − 8, WAVE
    0x66, 0x6d, 0x74, 0x20, 16, 0, 0, 0, // fmt , 16 bytes
    1, 0, 1, 0, // PCM, one channel
    0x80, 0xbb, 0, 0, 0x80, 0x32, 2, 0, // 48000 samples and 144000 bytes a second
    3, 0, 24, 0, // bytes a frame, bits a sample
    0x64, 0x61, 0x74, 0x61, 9, 0, 0, 0, // data, 9 bytes
    0, 0, 0x40, 0, 0, 0x80, 1, 0, 0, // ½ = 400000, −1 = 800000, the smallest step
    0 // padding to an even length
  ]);
});

test('an even number of bytes is not padded, and no samples make a file of 44 bytes', () => {
  expect(wavFile(new Float32Array(2), 8000)).toHaveLength(50);
  expect(wavFile(new Float32Array(0), 8000)).toHaveLength(44);
});

test('a decoder gets back what was written, to half a step', () => {
  const chance = random(24);
  const sound = Float32Array.from({ length: 4001 }, () => 2 * chance.uniform() - 1);
  const { samples, ...format } = decoded(wavFile(sound, 44100));
  expect(format).toEqual({
    tag: 1,
    channels: 1,
    sampleRate: 44100,
    bytesASecond: 132300,
    frame: 3,
    bits: 24
  });
  expect(samples).toHaveLength(4001);
  samples.forEach((x, i) =>
    close(x, sound[i], { abs: 2 ** -24, because: 'rounded to the nearest step of 2⁻²³' })
  );
});

test('both ends of the scale are kept: −1 exactly, +1 as the highest step', () => {
  const { samples } = decoded(wavFile(Float32Array.of(-1, 1, 1 - 2 ** -23, 0), 96000));
  expect(samples).toEqual([-1, 1 - 2 ** -23, 1 - 2 ** -23, 0]);
});

test('half a step is rounded upward, less is not', () => {
  const step = 2 ** -23;
  const { samples } = decoded(wavFile(Float32Array.of(0.5 * step, 0.49 * step, -0.51 * step), 96000));
  expect(samples).toEqual([step, 0, -step]);
});

test('what a file cannot hold is refused', () => {
  const file = (x: number, rate = 48000) => wavFile(Float32Array.of(0, x), rate);
  expect(() => file(1.5)).toThrow(new RangeError('sample 1 must be within -1 … 1, got 1.5'));
  expect(() => file(-1.25)).toThrow('sample 1 must be within -1 … 1, got -1.25');
  expect(() => file(NaN)).toThrow('sample 1 must be within -1 … 1, got NaN');
  expect(() => file(Infinity)).toThrow('sample 1 must be within -1 … 1, got Infinity');
  expect(() => file(0, 0)).toThrow('sample rate must be a whole number within 1 … 1431655765 Hz, got 0');
  expect(() => file(0, 44100.5)).toThrow('got 44100.5');
});

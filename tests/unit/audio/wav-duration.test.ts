import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { wavDuration } from '../../../src/lib/audio/wav-duration.js';
import { wavHeader } from '../../helpers/wav-header.js';

const RECORDINGS = path.join(import.meta.dirname, '../../reference/recordings');
const blob = (...parts: Buffer[]) => new Blob(parts.map((part) => new Uint8Array(part)));
const SECOND = { channels: 2, sampleRate: 8000, bits: 16, dataBytes: 32000 };

describe('wavDuration', () => {
  it.each([
    ['eight-bit-11025-mono.wav', 1],
    ['sixteen-bit-96000-mono.wav', 0.15],
    ['twenty-four-bit-44100-stereo.wav', 0.1],
    ['six-channels-48000.wav', 0.05],
    ['float-48000-mono.wav', 0.15]
  ])('reads the length of %s', async (name, seconds) => {
    expect(await wavDuration(blob(await readFile(path.join(RECORDINGS, name))))).toBeCloseTo(seconds, 4);
  });

  it('steps over other chunks, of odd length too', async () => {
    const header = wavHeader(SECOND);
    const note = Buffer.from('LIST\x03\0\0\0abc\0', 'latin1');
    const file = blob(header.subarray(0, 12), note, header.subarray(12), Buffer.alloc(32000));
    expect(await wavDuration(file)).toBe(1);
  });

  it('believes the length of the file more than an impossible length of the data', async () => {
    for (const dataBytes of [0, 0x7fffffff])
      expect(await wavDuration(blob(wavHeader({ ...SECOND, dataBytes }), Buffer.alloc(16000)))).toBe(0.5);
  });

  it('does not believe a byte rate that contradicts the size of the blocks', async () => {
    const header = wavHeader(SECOND);
    header.writeUInt32LE(0xffffffff, 28);
    expect(await wavDuration(blob(header, Buffer.alloc(32000)))).toBe(1);
  });

  it('is null for what is no WAV file, or a broken one', async () => {
    const header = wavHeader(SECOND);
    expect(await wavDuration(blob())).toBeNull();
    expect(await wavDuration(blob(Buffer.from('just a text that is long enough')))).toBeNull();
    expect(await wavDuration(blob(header.subarray(0, 30)))).toBeNull();
    expect(await wavDuration(blob(header.subarray(0, 12), header.subarray(36)))).toBeNull();
    header.writeUInt16LE(0, 32);
    expect(await wavDuration(blob(header, Buffer.alloc(100)))).toBeNull();
  });
});

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from '@playwright/test';
import { sharedHarness } from '../helpers/harness.js';
import { wavHeader } from '../helpers/wav-header.js';

type Decode = typeof import('./harness/decode.js');
type Limits = Parameters<Decode['decode']>[1];

const RECORDINGS = path.join(import.meta.dirname, '../reference/recordings');
const harness = sharedHarness<Decode>('decode');
const LIMITS: Limits = { sampleRate: 48000, maxBytes: 1e9, maxDuration: 600 };
const base64 = (bytes: Buffer | string) => Buffer.from(bytes).toString('base64');
const recording = (name: string) => base64(readFileSync(path.join(RECORDINGS, name)));

const UNREADABLE =
  'is not a sound file that this browser can read. WAV, MP3, FLAC, Ogg and M4A usually work.';

/** Channels and length of each recording; the lossy ones may lose 5 ms or add up to 0.12 s of padding. */
const good: [name: string, channels: number, seconds: number, padding: number][] = [
  ['eight-bit-11025-mono.wav', 1, 1, 0],
  ['sixteen-bit-96000-mono.wav', 1, 0.15, 0],
  ['twenty-four-bit-44100-stereo.wav', 2, 0.1, 0],
  ['six-channels-48000.wav', 6, 0.05, 0],
  ['float-48000-mono.wav', 1, 0.15, 0],
  ['chord.mp3', 2, 1, 0.12],
  ['chord.flac', 1, 1, 0],
  ['chord.ogg', 2, 1, 0.12],
  ['chord.opus', 2, 1, 0.12],
  ['chord.m4a', 2, 1, 0.12]
];

for (const sampleRate of [48000, 44100])
  test(`recordings of many kinds are decoded at ${sampleRate} Hz`, async () => {
    const { decode } = harness();
    for (const [name, channels, seconds, padding] of good)
      await test.step(name, async () => {
        const got = await decode({ name, bytesBase64: recording(name) }, { ...LIMITS, sampleRate });
        expect(got).toMatchObject({ channels, sampleRate });
        if (got.duration === undefined) throw new Error('it was refused');
        expect(got.duration).toBeGreaterThan(seconds - (padding > 0 ? 0.005 : 0.001));
        expect(got.duration).toBeLessThan(seconds + 0.001 + padding);
        expect(got.frames).toBe(Math.round(got.duration * sampleRate));
        // Three tones of 0.25 under the swell, one that is not there; padding lengthens the mean a little.
        for (const tone of got.tones.slice(0, 3)) expect(tone).toBeGreaterThan(0.25 * 0.85);
        for (const tone of got.tones.slice(0, 3)) expect(tone).toBeLessThan(0.25 * 1.05);
        if (seconds === 1) expect(got.tones[3]).toBeLessThan(0.01);
      });
  });

test('an empty file is refused', async () => {
  const { decode } = harness();
  expect(await decode({ name: 'clip.wav', bytesBase64: '' }, LIMITS)).toMatchObject({
    name: 'RecordingRefused',
    message: '"clip.wav" is empty (0 bytes). Choose another file.',
    readWhole: false
  });
});

test('a file that is too large is refused unread', async () => {
  const { decode } = harness();
  const recipe = { name: 'evening.flac', bytesBase64: base64(Buffer.alloc(1000)), times: 300_000 };
  expect(await decode(recipe, { ...LIMITS, maxBytes: 200e6 })).toMatchObject({
    name: 'RecordingRefused',
    message: '"evening.flac" has 300 MB; at most 200 MB can be opened. Cut out the stretch you want first.',
    readWhole: false
  });
});

const HOUR = { channels: 2, sampleRate: 48000, bits: 16, dataBytes: 3600 * 192000 };
const hours = {
  'an hour of stereo': base64(wavHeader(HOUR)),
  'an hour of stereo whose header does not say so': base64(wavHeader({ ...HOUR, dataBytes: 0 }))
};
for (const [name, headBase64] of Object.entries(hours))
  test(`${name} is refused without being decoded`, async () => {
    const { decode } = harness();
    const second = base64(Buffer.alloc(192000));
    expect(
      await decode({ name: 'evening.wav', headBase64, bytesBase64: second, times: 3600 }, LIMITS)
    ).toMatchObject({
      name: 'RecordingRefused',
      message:
        '"evening.wav" lasts 60 min; at most 10 min can be opened. Cut out the stretch you want first.',
      readWhole: false
    });
  });

test('an hour of MP3 is refused without being decoded', async () => {
  const { decode } = harness();
  const got = await decode({ name: 'evening.mp3', bytesBase64: recording('chord.mp3'), times: 3500 }, LIMITS);
  expect(got).toMatchObject({ name: 'RecordingRefused', readWhole: false });
  expect(got.message).toMatch(/^"evening\.mp3" lasts (5\d|6\d)(\.\d)? min; at most 10 min can be opened\./);
});

const unreadable: Record<string, Buffer | string> = {
  'a text file': 'These are the notes of Tuesday evening.\n'.repeat(20),
  'a RIFF file without chunks': Buffer.concat([Buffer.from('RIFF\x04\0\0\0WAVE', 'latin1')]),
  'a WAV header in front of nothing that is known': Buffer.concat([
    Buffer.from('RIFF\x64\0\0\0WAVEfmt \x10\0\0\0', 'latin1'),
    Buffer.from([0x31, 0, 9, 0, 0, 0, 0, 0, 0, 1, 0, 0, 9, 0, 3, 0]),
    Buffer.from('data\x40\0\0\0', 'latin1'),
    Buffer.alloc(64, 0x5a)
  ]),
  'random bytes': Buffer.from(Array.from({ length: 5000 }, (_, i) => (i * i * 31 + 7 * i) % 251))
};
for (const [what, bytes] of Object.entries(unreadable))
  test(`${what} named notes.wav is refused`, async () => {
    const { decode } = harness();
    const got = await decode({ name: 'notes.wav', bytesBase64: base64(bytes) }, LIMITS);
    expect(got).toMatchObject({ name: 'RecordingRefused', message: `"notes.wav" ${UNREADABLE}` });
  });

test('a WAV file that is cut short is opened as far as it goes', async () => {
  const { decode } = harness();
  const whole = readFileSync(path.join(RECORDINGS, 'eight-bit-11025-mono.wav'));
  const half = base64(whole.subarray(0, 44 + 5512));
  const got = await decode({ name: 'half.wav', bytesBase64: half }, LIMITS);
  expect(got.duration).toBeCloseTo(0.5, 2);
});

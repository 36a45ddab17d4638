// Makes chuffs.wav, and with ffmpeg the same in the other formats that browsers open:
//   node tests/reference/recordings/chuffs.mjs
// (the stored ones with ffmpeg 5.1.9). An own synthesised sound: six chuffs of a steam engine, filtered noise that bursts and dies away.
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import path from 'node:path';

const RATE = 22050;
const CHUFFS = 6;
const SPACING = 0.2;

/** Seeded noise: mulberry32, so that the file comes out the same every time. */
function noise(seed) {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 31 - 1;
  };
}

const frames = Math.round(CHUFFS * SPACING * RATE);
const bytes = Buffer.alloc(44 + 2 * frames);
bytes.write('RIFF', 0);
bytes.writeUInt32LE(36 + 2 * frames, 4);
bytes.write('WAVEfmt ', 8);
bytes.writeUInt32LE(16, 16);
bytes.writeUInt16LE(1, 20);
bytes.writeUInt16LE(1, 22);
bytes.writeUInt32LE(RATE, 24);
bytes.writeUInt32LE(2 * RATE, 28);
bytes.writeUInt16LE(2, 32);
bytes.writeUInt16LE(16, 34);
bytes.write('data', 36);
bytes.writeUInt32LE(2 * frames, 40);
const next = noise(41);
let smooth = 0;
for (let i = 0; i < frames; i++) {
  const since = (i / RATE) % SPACING;
  const strength = Math.min(1, since / 0.008) * Math.exp(-since / 0.05) + 0.02;
  smooth += 0.35 * (next() - smooth);
  const value = 0.9 * strength * (smooth + 0.15 * next());
  bytes.writeInt16LE(Math.round(Math.max(-1, Math.min(1, value)) * 32767), 44 + 2 * i);
}
const here = import.meta.dirname;
const wav = path.join(here, 'chuffs.wav');
writeFileSync(wav, bytes);

const plain = ['-map_metadata', '-1', '-fflags', '+bitexact', '-flags:a', '+bitexact'];
for (const [ending, ...codec] of [
  ['mp3', '-c:a', 'libmp3lame', '-b:a', '48k'],
  ['flac', '-c:a', 'flac'],
  ['ogg', '-c:a', 'libvorbis', '-q:a', '1'],
  ['m4a', '-c:a', 'aac', '-b:a', '48k']
])
  execFileSync('ffmpeg', ['-v', 'error', '-y', '-i', wav, ...codec, ...plain, path.join(here, `chuffs.${ending}`)]);

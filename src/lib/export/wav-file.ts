import type { Hertz } from '../units.js';

const BYTES = 3;
const HEADER = 44;
const FULL_SCALE = 2 ** 23;

/**
 * A mono sound as the bytes of a WAVE file: linear PCM, 24 bits a sample, little-endian two's complement. A sample x is
 * written as the whole number nearest to x·2²³; +1 becomes 2²³ − 1, the highest there is. Nothing else is ever clipped.
 *
 * Form: one RIFF chunk of form "WAVE" with the chunks "fmt " (16 bytes) and "data", which is padded to an even length
 * (Multimedia Programming Interface and Data Specifications 1.0, IBM and Microsoft, 1991, chapters 2 and 3; format tag
 * 1 in RFC 2361).
 *
 * @param samples within −1 … 1
 * @param sampleRate a whole number of hertz, 1 … 1431655765 (bytes a second must fit in 32 bits)
 * @throws RangeError for a sample beyond ±1 or not finite, a sample rate that the file cannot hold, or too many samples
 */
export function wavFile(samples: Float32Array, sampleRate: Hertz): Uint8Array<ArrayBuffer> {
  const highest = Math.floor((2 ** 32 - 1) / BYTES);
  if (!(Number.isInteger(sampleRate) && sampleRate >= 1 && sampleRate <= highest))
    throw new RangeError(`sample rate must be a whole number within 1 … ${highest} Hz, got ${sampleRate}`);
  const data = BYTES * samples.length;
  const padded = data + (data % 2);
  if (HEADER + padded > 2 ** 32 - 1)
    throw new RangeError(`a WAVE file holds at most ${highest - 16} samples, got ${samples.length}`);

  const file = new Uint8Array(HEADER + padded);
  const view = new DataView(file.buffer);
  const name = (at: number, text: string) => {
    for (let i = 0; i < 4; i++) file[at + i] = text.charCodeAt(i);
  };
  name(0, 'RIFF');
  view.setUint32(4, HEADER - 8 + padded, true);
  name(8, 'WAVE');
  name(12, 'fmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true); // linear PCM
  view.setUint16(22, 1, true); // one channel
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, BYTES * sampleRate, true);
  view.setUint16(32, BYTES, true);
  view.setUint16(34, 8 * BYTES, true);
  name(36, 'data');
  view.setUint32(40, data, true);
  for (let i = 0, at = HEADER; i < samples.length; i++, at += BYTES) {
    const x = samples[i];
    if (!(Math.abs(x) <= 1)) throw new RangeError(`sample ${i} must be within -1 … 1, got ${x}`);
    const value = Math.min(FULL_SCALE - 1, Math.round(x * FULL_SCALE));
    file[at] = value & 255;
    file[at + 1] = (value >> 8) & 255;
    file[at + 2] = (value >> 16) & 255;
  }
  return file;
}

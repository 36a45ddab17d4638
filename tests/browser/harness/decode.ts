import { decodeRecording } from '../../../src/lib/audio/decode-recording.js';

export interface Limits {
  sampleRate: number;
  maxBytes: number;
  maxDuration: number;
}

/** What a file is made of: bytes, given once and repeated so many times, behind other bytes. */
export interface FileRecipe {
  name: string;
  headBase64?: string;
  bytesBase64: string;
  times?: number;
}

const bytesOf = (base64: string) => Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));

/** Blobs made of blobs share their bytes: an hour of sound costs no memory. */
function fileOf({ name, headBase64 = '', bytesBase64, times = 1 }: FileRecipe): File {
  let body = new Blob([bytesOf(bytesBase64)]);
  const parts: Blob[] = [new Blob([bytesOf(headBase64)])];
  for (let left = times; left > 0; left >>= 1) {
    if (left & 1) parts.push(body);
    body = new Blob([body, body]);
  }
  return new File(parts, name);
}

export interface Outcome {
  channels?: number;
  sampleRate?: number;
  duration?: number;
  frames?: number;
  tones: number[];
  /** Of the refusal. */
  name?: string;
  message?: string;
  readWhole: boolean;
}

/** Decodes a file and describes what came out, or the refusal and whether the file was read as a whole. */
export async function decode(recipe: FileRecipe, limits: Limits): Promise<Outcome> {
  const file = fileOf(recipe);
  let readWhole = false;
  const arrayBuffer = file.arrayBuffer.bind(file);
  file.arrayBuffer = () => {
    readWhole = true;
    return arrayBuffer();
  };
  try {
    const { channels, sampleRate, duration } = await decodeRecording(file, limits);
    return {
      channels: channels.length,
      sampleRate,
      duration,
      frames: channels[0].length,
      tones: [220, 330, 550, 440].map((frequency) =>
        Math.max(...channels.map((samples) => amplitude(samples, frequency, sampleRate)))
      ),
      readWhole
    };
  } catch (error) {
    const { name, message } = error as Error;
    return { name, message, tones: [], readWhole };
  }
}

/** Amplitude of a tone under the swell sin², whose mean is 1/2. */
function amplitude(samples: Float32Array, frequency: number, sampleRate: number): number {
  let re = 0;
  let im = 0;
  samples.forEach((x, n) => {
    re += x * Math.cos((2 * Math.PI * frequency * n) / sampleRate);
    im += x * Math.sin((2 * Math.PI * frequency * n) / sampleRate);
  });
  return (4 * Math.hypot(re, im)) / samples.length;
}

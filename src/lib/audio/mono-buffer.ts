import { AudioBuffer } from 'standardized-audio-context';
import type { SoundContext } from './sound-context.js';

/** One channel of samples, at the sample rate of the context, as the buffer that its nodes take. */
export function monoBuffer(context: SoundContext, samples: Float32Array): AudioBuffer {
  const { sampleRate } = context;
  const buffer = new AudioBuffer({ length: Math.max(1, samples.length), numberOfChannels: 1, sampleRate });
  buffer.copyToChannel(samples as Float32Array<ArrayBuffer>, 0);
  return buffer;
}

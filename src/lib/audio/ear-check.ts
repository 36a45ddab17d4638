import { AudioBufferSourceNode, type IAudioNode } from 'standardized-audio-context';
import type { Hertz, Seconds } from '../units.js';
import { monoBuffer } from './mono-buffer.js';
import { raisedCosine } from '../numeric/raised-cosine.js';
import type { SoundContext } from './sound-context.js';

const EAR_CHECK_TONES: readonly Hertz[] = [250, 2000];
const TONE: Seconds = 0.6;
const GAP: Seconds = 0.25;
const EDGE: Seconds = 0.05;
/** −30 dB re full scale. */
const PEAK = 10 ** (-30 / 20);

/** A quiet tone of 250 Hz and then one of 2 kHz, 0.6 s each with raised-cosine edges of 50 ms, 0.25 s apart. */
export function earCheckSamples(sampleRate: Hertz): Float32Array {
  const tone = Math.round(TONE * sampleRate);
  const period = tone + Math.round(GAP * sampleRate);
  const samples = new Float32Array(period * EAR_CHECK_TONES.length);
  EAR_CHECK_TONES.forEach((frequency, which) => {
    for (let i = 0; i < tone; i++) {
      const edge = Math.min(1, i / (EDGE * sampleRate), (tone - i) / (EDGE * sampleRate));
      const wave = Math.sin((2 * Math.PI * frequency * i) / sampleRate);
      samples[which * period + i] = PEAK * raisedCosine(edge) * wave;
    }
  });
  return samples;
}

/** Plays the pair once into `output`; resolves when it is over. */
export function playEarCheck(context: SoundContext, output: IAudioNode<SoundContext>): Promise<void> {
  const source = new AudioBufferSourceNode<SoundContext>(context, {
    buffer: monoBuffer(context, earCheckSamples(context.sampleRate))
  });
  source.connect(output);
  return new Promise((resolve) => {
    source.onended = () => {
      source.disconnect();
      resolve();
    };
    source.start();
  });
}

import { ConvolverNode, type IConvolverNode } from 'standardized-audio-context';
import type { Seconds } from '../units.js';
import { monoBuffer } from './mono-buffer.js';
import { raisedCosineStep } from './raised-cosine-step.js';
import type { SoundContext } from './sound-context.js';

/** The fade between two mounts, and of every other step of a gain: short enough to be at once, and no click. */
export const FADE: Seconds = 0.025;

/**
 * What makes a control signal fit to drive a gain: every step becomes a raised cosine of 25 ms, `delay` later.
 *
 * A newer step in the middle of a fade simply adds its own raised cosine, and signals that add up to a constant still
 * do. So there is nothing to queue or to cancel, and it does not matter when exactly the main thread comes to say
 * it; curves scheduled on the gain itself click whenever a busy machine delivers them a moment late.
 */
export function smoother(context: SoundContext, delay: Seconds): IConvolverNode<SoundContext> {
  return new ConvolverNode<SoundContext>(context, {
    disableNormalization: true,
    channelCount: 1,
    channelCountMode: 'explicit',
    buffer: monoBuffer(context, raisedCosineStep(FADE, delay, context.sampleRate))
  });
}

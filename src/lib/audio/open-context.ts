import { AudioContext, type IAudioContext } from 'standardized-audio-context';
import type { Hertz, Seconds } from '../units.js';
import { SoundUnavailable } from './sound-unavailable.js';

const NO_WEB_AUDIO =
  'This browser cannot play computed sound; open this page in a current Chrome, Edge, Firefox or Safari.';
const NO_DEVICE =
  'No sound device answers; plug in headphones or choose an output in the system settings, then press play again.';
const HELD_BACK =
  'The browser holds the sound back; click play once more, and allow sound for this page if the browser asks.';

/** Opens a running audio context, at `sampleRate` where the machine allows it; call it from a user gesture. */
export async function openContext(sampleRate: Hertz, timeout: Seconds): Promise<IAudioContext> {
  const context = create(sampleRate);
  try {
    await wake(context, timeout);
  } catch (error) {
    // A context that never ran may not close either: do not wait for it.
    context.close().catch(() => undefined);
    throw error;
  }
  return context;
}

/**
 * Resumes a context and waits until its clock moves. Without a user gesture `resume()` neither resolves nor
 * rejects, and without a device the state may be `running` while the clock stands still: hence the waiting.
 */
export async function wake(context: IAudioContext, timeout: Seconds): Promise<void> {
  const began = context.currentTime;
  let refused = false;
  if (context.state !== 'running') context.resume().catch(() => (refused = true));
  const deadline = performance.now() + timeout * 1000;
  while (context.state !== 'running' || context.currentTime === began) {
    if (refused || performance.now() > deadline)
      throw new SoundUnavailable(context.state === 'running' ? NO_DEVICE : HELD_BACK);
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}

function create(sampleRate: Hertz): IAudioContext {
  if (typeof window === 'undefined' || !('AudioContext' in window || 'webkitAudioContext' in window))
    throw new SoundUnavailable(NO_WEB_AUDIO);
  try {
    return new AudioContext({ sampleRate, latencyHint: 'interactive' });
  } catch {
    // Not every machine lets the page choose the rate; everything is then rendered at the rate of the machine.
  }
  try {
    return new AudioContext({ latencyHint: 'interactive' });
  } catch {
    throw new SoundUnavailable(NO_DEVICE);
  }
}

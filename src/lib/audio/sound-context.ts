import type { IAudioContext, IOfflineAudioContext } from 'standardized-audio-context';

/** The live context of the page, or the offline one of a test or an export. */
export type SoundContext = IAudioContext | IOfflineAudioContext;

/** Whether sound is flowing right now: if not, nobody hears a filter being exchanged. */
export function isFlowing(context: SoundContext): context is IAudioContext {
  return 'baseLatency' in context && context.state === 'running';
}

/**
 * A frame by which everything asked for until now has begun. The audio thread renders in bursts of one device
 * callback (`baseLatency`), so `currentTime` may be a whole burst old when it is read; a quantum of 128 frames may
 * have been under way.
 */
export function begunBy(context: SoundContext): number {
  const burst = isFlowing(context) ? context.baseLatency * context.sampleRate : 0;
  return Math.ceil(context.currentTime * context.sampleRate + burst) + 128;
}

/** A frame that has certainly been rendered. */
export function renderedUntil(context: SoundContext): number {
  return Math.floor(context.currentTime * context.sampleRate);
}

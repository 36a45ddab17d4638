import {
  checkRecording,
  MAX_DURATION,
  MAX_FILE_BYTES,
  MAX_STRETCH
} from '../../sounds/recording/check-recording.js';
import { foldToMono } from '../../sounds/recording/fold-to-mono.js';
import { MIN_STRETCH } from '../../sounds/recording/loop-stretch.js';
import type { Decibels, Hertz, Seconds } from '../../units.js';
import { audioLater } from './audio-later.js';

/** A fold to mono that cancels more than this is worth a warning. */
const CANCELLATION_WARNING_DB: Decibels = 6;

/** The user's own recording, folded to mono, with the stretch of it that plays. */
export interface Recording {
  id: number;
  name: string;
  samples: Float32Array;
  sampleRate: Hertz;
  duration: Seconds;
  start: Seconds;
  end: Seconds;
  warning: string | null;
}

let nextId = 1;

/**
 * Reads a sound file, folds it to mono and chooses its first minute.
 * @throws Error with one plain sentence where the file cannot be used.
 */
export async function openRecording(file: File, sampleRate: Hertz): Promise<Recording> {
  const { decodeRecording } = await audioLater();
  const { channels } = await decodeRecording(file, {
    sampleRate,
    maxBytes: MAX_FILE_BYTES,
    maxDuration: MAX_DURATION
  });
  const wrong = checkRecording(channels, sampleRate);
  if (wrong) throw new Error(wrong);
  const { samples, cancellationDb } = foldToMono(channels);
  const duration = samples.length / sampleRate;
  if (duration < MIN_STRETCH)
    throw new Error(
      `"${file.name}" lasts only ${duration.toFixed(2)} s; a loop needs at least ${MIN_STRETCH} s. Choose a longer one.`
    );
  return {
    id: nextId++,
    name: file.name,
    samples,
    sampleRate,
    duration,
    start: 0,
    end: Math.min(duration, MAX_STRETCH),
    warning:
      cancellationDb > CANCELLATION_WARNING_DB
        ? `Its channels cancel each other: folded to one, ${Math.round(cancellationDb)} dB are lost. A file of one channel will sound fuller.`
        : null
  };
}

/** The same recording with another stretch, kept inside it and at most a minute long. */
export function withStretch(recording: Recording, start: Seconds, end: Seconds): Recording {
  const { duration } = recording;
  const from = Math.min(Math.max(0, start), Math.max(0, duration - MIN_STRETCH));
  const to = Math.min(Math.max(end, from + MIN_STRETCH), duration, from + MAX_STRETCH);
  return { ...recording, start: from, end: to };
}

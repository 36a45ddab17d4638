import { OfflineAudioContext } from 'standardized-audio-context';
import type { Hertz, Seconds } from '../units.js';
import { mediaDuration } from './media-duration.js';
import { RecordingRefused } from './recording-refused.js';
import { wavDuration } from './wav-duration.js';

export interface DecodeOptions {
  /** The rate that the samples are wanted at. */
  sampleRate: Hertz;
  maxBytes: number;
  maxDuration: Seconds;
}

export interface DecodedRecording {
  channels: Float32Array[];
  sampleRate: Hertz;
  duration: Seconds;
}

/**
 * Decodes a sound file at the wanted rate. Size and duration are checked before anything is decoded, because an
 * hour of sound would fill gigabytes of memory. Throws `RecordingRefused`.
 */
export async function decodeRecording(
  file: File,
  { sampleRate, maxBytes, maxDuration }: DecodeOptions
): Promise<DecodedRecording> {
  const name = `"${file.name}"`;
  const refuse = (why: string): never => {
    throw new RecordingRefused(`${name} ${why}`);
  };
  const checkDuration = (duration: Seconds) => {
    if (duration > maxDuration)
      refuse(
        `lasts ${inWords(duration)}; at most ${inWords(maxDuration)} can be opened. Cut out the stretch you want first.`
      );
  };
  const unreadable =
    'is not a sound file that this browser can read. WAV, MP3, FLAC, Ogg and M4A usually work.';
  const gone = 'cannot be read any more; it may have been moved or changed. Choose it again.';

  if (file.size === 0) refuse('is empty (0 bytes). Choose another file.');
  if (file.size > maxBytes)
    refuse(
      `has ${megabytes(file.size)} MB; at most ${megabytes(maxBytes)} MB can be opened. Cut out the stretch you want first.`
    );
  const announced = (await wavDuration(file).catch(() => refuse(gone))) ?? (await mediaDuration(file));
  if (announced === null) return refuse(unreadable);
  if (announced === 0) refuse('contains no sound. Choose another file.');
  checkDuration(announced);

  const bytes = await file.arrayBuffer().catch(() => refuse(gone));
  const decoder = new OfflineAudioContext({ length: 1, numberOfChannels: 1, sampleRate });
  const buffer = await decoder.decodeAudioData(bytes).catch(() => refuse(unreadable));
  if (buffer.length === 0) refuse('contains no sound. Choose another file.');
  checkDuration(buffer.duration);
  return {
    channels: Array.from({ length: buffer.numberOfChannels }, (_, i) => buffer.getChannelData(i)),
    sampleRate: buffer.sampleRate,
    duration: buffer.duration
  };
}

function megabytes(bytes: number): string {
  const figure = bytes / 1e6;
  return figure < 10 ? figure.toFixed(1) : figure.toFixed(0);
}

function inWords(duration: Seconds): string {
  return duration < 120 ? `${Math.round(duration)} s` : `${Number((duration / 60).toFixed(1))} min`;
}

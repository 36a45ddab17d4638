import { wavFile } from '../../export/wav-file.js';
import { download } from '../../bench/download.js';
import type { Measured } from '../../bench/sounding/measured-loop.svelte.js';

/** Gives the user a loop as a WAV file of 24 bits; one that would clip is made softer as a whole. */
export function downloadWav({ sound, samples, sampleRate, figures }: Measured): void {
  const most = 0.999;
  const gain = figures.peak > most ? most / figures.peak : 1;
  const bytes = wavFile(gain === 1 ? samples : samples.map((x) => gain * x), sampleRate);
  download(bytes as Uint8Array<ArrayBuffer>, 'audio/wav', `${wavName(sound.name)}.wav`);
}

/** A file's name from a sound's: letters, figures and dashes. */
export function wavName(name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/\.\w{2,4}$/, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase();
  return plain.slice(0, 60) || 'sound';
}

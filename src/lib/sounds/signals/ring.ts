import type { Hertz, Seconds } from '../../units.js';
import type { Span } from '../blocks/span.js';

/** A mode of something that has been struck. */
export interface Mode {
  frequency: Hertz;
  /** Time in which it falls by 60 dB. */
  decay: Seconds;
  level: number;
}

/** It is followed down to here, −80 dB. */
const FLOOR = 1e-4;
/** Modes above this share of the sample rate are left out. */
const CEILING = 0.45;

/**
 * Adds a ringing mode, level·e^(−ln 1000·t/decay)·sin(2πft), to a signal; nothing before it is struck. It is followed
 * down to −80 dB.
 *
 * @param at when it is struck, in samples, a real number; in a loop it goes round, if need be several times
 */
export function addRing(
  signal: Float32Array,
  { sampleRate, cyclic }: Pick<Span, 'sampleRate' | 'cyclic'>,
  at: number,
  { frequency, decay, level }: Mode
): void {
  if (frequency > CEILING * sampleRate || level === 0) return;
  const length = signal.length;
  const first = Math.ceil(at);
  const fall = Math.exp(-Math.log(1000) / (decay * sampleRate));
  const turn = (2 * Math.PI * frequency) / sampleRate;
  const [cos, sin] = [fall * Math.cos(turn), fall * Math.sin(turn)];
  const begun = level * fall ** (first - at);
  let re = begun * Math.cos(turn * (first - at));
  let im = begun * Math.sin(turn * (first - at));
  let i = cyclic ? ((first % length) + length) % length : first;
  for (let left = Math.ceil(Math.log(FLOOR) / Math.log(fall)); left > 0; left--) {
    if (i >= 0) signal[i] += im;
    const next = re * cos - im * sin;
    im = re * sin + im * cos;
    re = next;
    if (++i === length) {
      if (!cyclic) return;
      i = 0;
    }
  }
}

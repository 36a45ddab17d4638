import type { Hertz, Seconds } from '../../units.js';
import { notePitch } from '../blocks/note-pitch.js';
import { random } from '../blocks/random.js';
import type { Horn } from './horn.js';

const PARTIALS = 30;
const SIZE = 2048;
/** A note is not made above this share of the sample rate. */
const CEILING = 0.45;

/** One bell of a horn. */
export interface HornBell {
  frequency: Hertz;
  gain: number;
  /** When it begins to speak after the valve has opened, how long until it speaks fully, how long it dies away. */
  delay: Seconds;
  rise: Seconds;
  fall: Seconds;
  /** How far off its pitch it begins and ends, in cents. */
  scoop: number;
  sag: number;
  /** Slow unsteadiness: `depth` in periods and as a share of the level, `turns` in each loop. */
  tremble: { turns: number; phase: number; depth: number }[];
  /** One period under full and under little pressure, SIZE + 1 points. */
  bright: Float32Array;
  dull: Float32Array;
  /** RMS of `bright`. */
  rms: number;
}

/**
 * How far each bell is out of tune, in cents: spread evenly from −spread/2 to +spread/2, which bell how far being
 * decided by the seed. A single bell is in tune.
 */
export function mistuning({ chord, spread, seed }: Horn): number[] {
  const last = chord.length - 1;
  const cents = chord.map((_, i) => (last > 0 ? spread * (i / last - 0.5) : 0));
  return shuffled(cents, seed ^ 0x7e4);
}

/**
 * The bells of a horn. Each is a diaphragm that lets air through in pulses: partials fall slowly as far as the mouth of
 * the bell helps them, faster above 1.1 kHz, and below 430 Hz the mouth is too small. Under little pressure the upper
 * ones are missing. All that differs between bells is decided by the seed.
 */
export function hornBells(horn: Horn, sampleRate: Hertz): HornBell[] {
  const { chord, attack, seed } = horn;
  const chance = random(seed ^ 0x40c);
  const cents = mistuning(horn);
  const order = shuffled(
    chord.map((_, i) => i / Math.max(1, chord.length - 1)),
    seed ^ 0x51
  );
  return chord.map((note, i) => {
    const frequency = notePitch(note) * 2 ** (cents[i] / 1200);
    const { bright, dull, rms } = period(frequency, chance, sampleRate);
    return {
      frequency,
      gain: 10 ** (chance.gaussian() / 20),
      delay: 0.75 * attack * order[i],
      rise: 0.03 + attack * (0.3 + 0.4 * chance.uniform()),
      fall: 0.09 + 0.1 * chance.uniform(),
      scoop: (chance.uniform() < 0.7 ? 1 : -1.5) * (20 + 35 * chance.uniform()),
      sag: -(15 + 40 * chance.uniform()),
      tremble: [1, 4, 11, 26].map((turns) => ({
        turns,
        phase: 2 * Math.PI * chance.uniform(),
        depth: (0.06 / turns) * chance.gaussian()
      })),
      bright,
      dull,
      rms
    };
  });
}

/** A period at `phase`, in periods, read with straight lines between its points. */
export function atPhase(period: Float32Array, phase: number): number {
  const x = (phase - Math.floor(phase)) * SIZE;
  const i = Math.floor(x);
  return period[i] + (x - i) * (period[i + 1] - period[i]);
}

function period(
  pitch: Hertz,
  chance: ReturnType<typeof random>,
  sampleRate: Hertz
): Pick<HornBell, 'bright' | 'dull' | 'rms'> {
  const bright = new Float32Array(SIZE + 1);
  const dull = new Float32Array(SIZE + 1);
  let power = 0;
  for (let n = 1; n <= PARTIALS; n++) {
    const frequency = n * pitch;
    const size =
      (n ** -0.5 * 10 ** ((2.5 * chance.gaussian()) / 20)) /
      ((1 + (frequency / 1100) ** 2) * (1 + (430 / frequency) ** 2)) ** 1.5;
    const start = 2 * Math.PI * chance.uniform();
    if (frequency > CEILING * sampleRate) continue;
    power += size ** 2 / 2;
    const muffled = 1 / (1 + (frequency / 800) ** 2);
    for (let i = 0; i <= SIZE; i++) {
      const x = size * Math.cos((2 * Math.PI * n * i) / SIZE + start);
      bright[i] += x;
      dull[i] += muffled * x;
    }
  }
  return { bright, dull, rms: Math.sqrt(power) };
}

function shuffled(values: number[], seed: number): number[] {
  const chance = random(seed);
  const rest = [...values];
  return values.map(() => rest.splice(Math.floor(chance.uniform() * rest.length), 1)[0]);
}

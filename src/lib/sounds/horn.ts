import type { Hertz, Seconds } from '../units.js';
import { filter, section } from './blocks/filter.js';
import { random } from './blocks/random.js';
import { validSampleRate } from './blocks/sample-rate.js';

const DURATION: Seconds = 2.5;
const PEAK = 0.4;
const PARTIALS = 24;

/**
 * The five bells in semitones from A = 440 Hz: A♭4, C5, E♭5, F5, B♭5; a free choice. Equal temperament,
 * f = 440·2^(n/12) (ISO 16:1975). Each bell is out of tune by its own few cents, so that they beat.
 */
const BELLS = [
  { semitones: -1, cents: -3, gain: 1 },
  { semitones: 3, cents: 4, gain: 0.9 },
  { semitones: 6, cents: -5, gain: 0.85 },
  { semitones: 8, cents: 2, gain: 0.8 },
  { semitones: 13, cents: 6, gain: 0.7 }
];

/** Tempered pitches of the bells in Hz, lowest first, before each is put out of tune: f = 440·2^(n/12) (ISO 16:1975). */
export function hornPitches(): Hertz[] {
  return BELLS.map(({ semitones }) => 440 * 2 ** (semitones / 12));
}

/**
 * A seamless loop of 2.5 s of a sounding air horn of five bells (see `hornPitches`): each a driven diaphragm whose
 * partials fall slowly to where the bell's mouth stops helping them, then faster; with breath noise and a slow
 * unsteadiness of the air. Every partial has a whole number of periods in the loop. Peak −8 dBFS.
 *
 * @param sampleRate 8 … 192 kHz
 * @throws RangeError for a sample rate out of range
 */
export function renderHorn(sampleRate: Hertz): Float32Array {
  validSampleRate(sampleRate);
  const length = Math.round(DURATION * sampleRate);
  const chance = random(440);
  const tone = new Float32Array(length);
  for (const { semitones, cents, gain } of BELLS) {
    const pitch = 440 * 2 ** (semitones / 12 + cents / 1200);
    const periods = Math.round(pitch * DURATION);
    const bell = onePeriod(pitch, chance.uniform, sampleRate);
    const tremble = [1, 3, 8, 13].map((turns) => ({
      turns,
      phase: 2 * Math.PI * chance.uniform(),
      depth: (0.05 / turns) * chance.gaussian()
    }));
    for (let i = 0; i < length; i++) {
      let phase = (periods * i) / length;
      let level = gain;
      for (const { turns, phase: start, depth } of tremble) {
        const swing = depth * Math.sin((2 * Math.PI * turns * i) / length + start);
        phase += swing;
        level *= 1 + swing;
      }
      tone[i] += level * bell(phase);
    }
  }

  const hiss = Float32Array.from({ length }, () => Math.sqrt(sampleRate / 48000) * chance.gaussian());
  const breath = filter(hiss, section('bandPass', 1700, 0.5, sampleRate), { sampleRate, cyclic: true }, 0.5);
  filter(hiss, section('bandPass', 5000, 0.6, sampleRate), { sampleRate, cyclic: true }, 0.25, breath);
  for (let i = 0; i < length; i++) tone[i] += (0.6 + 0.12 * Math.abs(tone[i])) * 0.35 * breath[i];

  const sound = filter(tone, section('highPass', 120, 0.7, sampleRate), { sampleRate, cyclic: true });
  const highest = sound.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  return sound.map((x) => (x * PEAK) / highest);
}

/** One period of a bell as a table, read with straight lines between its 2048 points; the argument is in periods. */
function onePeriod(pitch: Hertz, uniform: () => number, sampleRate: Hertz): (phase: number) => number {
  const SIZE = 2048;
  const table = new Float64Array(SIZE + 1);
  for (let n = 1; n <= PARTIALS && n * pitch < 0.45 * sampleRate; n++) {
    const frequency = n * pitch;
    const size = n ** -0.6 / (1 + (frequency / 2600) ** 2) ** 0.75;
    const start = 2 * Math.PI * uniform();
    for (let i = 0; i <= SIZE; i++) table[i] += size * Math.cos((2 * Math.PI * n * i) / SIZE + start);
  }
  return (phase) => {
    const x = (phase - Math.floor(phase)) * SIZE;
    const i = Math.floor(x);
    return table[i] + (x - i) * (table[i + 1] - table[i]);
  };
}

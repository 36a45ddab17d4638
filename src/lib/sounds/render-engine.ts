import type { Decibels, Hertz } from '../units.js';
import { engineExhaust } from './engine-exhaust.js';
import { engineMechanics } from './engine-mechanics.js';
import { engineRotors } from './engine-rotors.js';
import { type Engine, validEngine } from './engine.js';
import { filter, section } from './blocks/filter.js';
import { firingPlan } from './firing-plan.js';
import { random } from './blocks/random.js';
import { validSampleRate } from './blocks/sample-rate.js';

/** How much softer idle is than full load, in RMS (about as much in loudness). */
const RANGE: Decibels = 12;
/** RMS at full load. */
const FULL_RMS = 0.138;

/**
 * A seamless loop of about five seconds of an engine at a notch: a whole number of patterns (see `firingPlan`) of
 * exhaust, mechanics and rotors, each in its steady state over the endless loop, with a few early reflections from
 * the ground and walls near by. Levels follow the notch on one scale, notch 8 peaking near −3 dBFS and idle 12 dB
 * softer; the parts and their proportions are described in docs/models/engine-sound.md.
 *
 * @param notch 0 (idle) … 8 (full), real
 * @param sampleRate 8 … 192 kHz
 * @throws RangeError for an engine, notch or sample rate out of range
 */
export function renderEngine(engine: Engine, notch: number, sampleRate: Hertz): Float32Array {
  validEngine(engine);
  validSampleRate(sampleRate);
  const plan = firingPlan(engine, notch, sampleRate);
  const noise = whiteNoise(plan.length, engine.seed, sampleRate);
  const chance = random(engine.seed ^ 0xc0de);

  const sum = engineExhaust(plan, noise, chance, sampleRate);
  const mechanics = engineMechanics(plan, noise, chance, sampleRate);
  const rotors = engineRotors(plan, noise, chance, sampleRate);
  const metal = 0.62 - 0.2 * plan.load;
  for (let i = 0; i < plan.length; i++) sum[i] += metal * mechanics[i] + 0.3 * rotors[i];

  const sound = filter(outdoors(sum, sampleRate), section('highPass', 28, 0.7, sampleRate), {
    sampleRate,
    cyclic: true
  });
  return levelled(sound, plan.load, sampleRate);
}

/** White noise of the density that RMS 1 has at 48 kHz. */
function whiteNoise(length: number, seed: number, sampleRate: Hertz): Float32Array {
  const chance = random(seed ^ 0x0a1e);
  const size = Math.sqrt(sampleRate / 48000);
  const noise = new Float32Array(length);
  for (let i = 0; i < length; i++) noise[i] = size * chance.gaussian();
  return noise;
}

/** Delays in seconds and gains of the first reflections. */
const REFLECTIONS: [number, number][] = [
  [0.0061, 0.32],
  [0.0137, -0.2],
  [0.0229, 0.17],
  [0.0383, 0.12],
  [0.0571, -0.08]
];

function outdoors(dry: Float32Array, sampleRate: Hertz): Float32Array {
  const length = dry.length;
  const dull = filter(dry, section('lowPass', 2800, 0.6, sampleRate), { sampleRate, cyclic: true });
  const out = dry.slice();
  for (const [seconds, gain] of REFLECTIONS)
    for (let i = 0, j = length - Math.round(seconds * sampleRate); i < length; i++) {
      out[i] += gain * dull[j];
      if (++j === length) j = 0;
    }
  return out;
}

/** Sets the level in place by the RMS behind the high-pass of ITU-R BS.1770-5, takes the mean away and rounds the highest peaks. */
function levelled(sound: Float32Array, load: number, sampleRate: Hertz): Float32Array {
  const heard = filter(sound, section('highPass', 38, 0.5, sampleRate), { sampleRate, cyclic: true });
  let mean = 0;
  let square = 0;
  for (let i = 0; i < sound.length; i++) {
    mean += sound[i] / sound.length;
    square += (heard[i] * heard[i]) / sound.length;
  }
  const target = FULL_RMS * 10 ** ((-RANGE * (1 - load) ** 0.9) / 20);
  const gain = target / Math.sqrt(square);
  for (let i = 0; i < sound.length; i++) sound[i] = rounded(gain * (sound[i] - mean));
  return sound;
}

/** Straight to 0.4, then bending with a smooth slope toward 0.9. */
function rounded(x: number): number {
  const over = Math.abs(x) - 0.4;
  return over <= 0 ? x : Math.sign(x) * (0.4 + 0.5 * Math.tanh(over / 0.5));
}

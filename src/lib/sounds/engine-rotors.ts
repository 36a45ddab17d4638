import type { Hertz } from '../units.js';
import type { FiringPlan } from './firing-plan.js';
import { filter, section } from './blocks/filter.js';
import type { Random } from './blocks/random.js';

/** Blades of the turbocharger's compressor, and its speed at idle and at full load in turns a second. */
const TURBO = { blades: 15, idle: 95, full: 300 };
/** Blades of a cooling fan driven by the engine, and its turns for each turn of the engine. */
const FAN = { blades: 8, ratio: 1.9 };

/**
 * What turns: the turbocharger's whine and hiss, and a cooling fan's beat and rush of air. Tones wander a little, and
 * go through a whole number of periods in the loop.
 *
 * @param noise white noise of the loop's length
 */
export function engineRotors(
  plan: FiringPlan,
  noise: Float32Array,
  chance: Random,
  sampleRate: Hertz
): Float32Array {
  const { length, load, rpm } = plan;
  const out = new Float32Array(length);
  const spin = TURBO.idle + (TURBO.full - TURBO.idle) * load ** 0.7;
  const whine = 0.012 + 0.07 * load ** 1.5;
  addTone(out, spin * TURBO.blades, 0.008, whine, chance, sampleRate);
  addTone(out, spin * TURBO.blades * 0.735, 0.008, 0.4 * whine, chance, sampleRate);
  addTone(out, spin * 4, 0.003, 0.4 * whine, chance, sampleRate);

  const beat = (rpm / 60) * FAN.ratio * FAN.blades;
  const blades = new Float32Array(length);
  addTone(blades, beat, 0.002, 1, chance, sampleRate);
  const rush = new Float32Array(length);
  for (let i = 0, j = Math.floor(length * 0.61); i < length; i++) {
    rush[i] = (1 + 0.5 * blades[i]) * noise[j];
    if (++j === length) j = 0;
    out[i] += (0.015 + 0.1 * load) * blades[i];
  }
  const air = 0.25 + 0.75 * load;
  for (const [frequency, q, gain] of [
    [380, 0.6, 0.5 * air],
    [1500, 0.6, 0.14 * air],
    [4200, 0.8, 0.05 * air * air + 0.01]
  ])
    if (frequency < 0.4 * sampleRate)
      filter(rush, section('bandPass', frequency, q, sampleRate), { sampleRate, cyclic: true }, gain, out);
  return out;
}

/** Adds a tone that wanders by the share `wander` of its frequency and flutters in strength. */
function addTone(
  out: Float32Array,
  frequency: Hertz,
  wander: number,
  size: number,
  chance: Random,
  sampleRate: Hertz
): void {
  const length = out.length;
  const periods = Math.round((frequency * length) / sampleRate);
  if (periods < 1 || frequency > 0.45 * sampleRate) return;
  const swings = [1, 2, 3, 5, 8, 13, 21, 34, 55].map((turns) => ({
    step: (2 * Math.PI * turns) / length,
    phase: 2 * Math.PI * chance.uniform(),
    depth: ((wander * periods) / turns) * chance.gaussian() * 0.4
  }));
  // Wander and flutter are slow: worked out every 64 samples.
  const STEP = 64;
  const at = (i: number) => {
    let phase = (2 * Math.PI * periods * i) / length;
    let level = size;
    for (const { step, phase: start, depth } of swings) {
      phase += depth * Math.sin(step * i + start);
      level += 0.11 * size * Math.sin(step * 3 * i + start * 3);
    }
    return { phase, level };
  };
  let here = at(0);
  for (let i = 0; i < length; i += STEP) {
    const end = Math.min(length, i + STEP);
    const next = at(end);
    // Within a stretch the phase grows evenly: the sine is turned by the same angle each time.
    const turn = (next.phase - here.phase) / (end - i);
    const [turnCos, turnSin] = [Math.cos(turn), Math.sin(turn)];
    let [cos, sin] = [Math.cos(here.phase), Math.sin(here.phase)];
    let level = here.level;
    const rise = (next.level - here.level) / (end - i);
    for (let n = i; n < end; n++) {
      out[n] += level * sin;
      const turned = cos * turnCos - sin * turnSin;
      sin = sin * turnCos + cos * turnSin;
      cos = turned;
      level += rise;
    }
    here = next;
  }
}

import type { Hertz } from '../units.js';
import { FULL_NOTCH, type Engine, engineRpm, patternRate } from './engine.js';
import { random } from './blocks/random.js';

/** One cylinder's turn: where in the loop it happens and how it differs from the others. */
export interface Firing {
  /** Position in the loop in samples, a real number, 0 … length. */
  at: number;
  cylinder: number;
  /** Strength of this firing, 1 on the average. */
  strength: number;
}

export interface FiringPlan {
  firings: Firing[];
  /** Samples in the loop: a whole number of patterns, rounded to the nearest sample. */
  length: number;
  rpm: number;
  /** Share of full load, 0 at idle … 1. */
  load: number;
  /** Samples a degree of crank angle. */
  samplesPerDegree: number;
}

/** About how long a loop lasts, in seconds. */
const LOOP = 5;

/**
 * All firings of a loop of about five seconds. Each cylinder has its own strength and timing that come round with
 * every pattern: that is the lope, largest at idle. On top of it every firing differs a little from the last one of
 * its cylinder, at idle a few nearly miss, and the governor lets the speed wander slowly by a fraction of a per cent.
 * What belongs to a cylinder depends on the seed only, so it is the same engine at every notch.
 */
export function firingPlan(engine: Engine, notch: number, sampleRate: Hertz): FiringPlan {
  const rpm = engineRpm(engine, notch);
  const load = notch / FULL_NOTCH;
  const pattern = patternRate(engine, rpm);
  const patterns = Math.max(1, Math.round(LOOP * pattern));
  const length = Math.round((patterns / pattern) * sampleRate);
  const between = (from: number, to: number) => from + (to - from) * Math.sqrt(load);

  const person = random(engine.seed);
  const cylinders = Array.from({ length: engine.cylinders }, () => ({
    strength: person.gaussian(),
    timing: person.gaussian()
  }));
  cylinders[Math.floor(person.uniform() * engine.cylinders)].strength -= 1.8;

  // The governor answers to every weak cylinder a little late: a slow swell over the pattern.
  const swell = [1, 2, 3].map((turns) => ({ turns, phase: 2 * Math.PI * person.uniform() }));

  const chance = random(engine.seed ^ 0x5eed);
  const hunting = [1, 2, 3, 5].map((turns) => ({
    turns,
    phase: 2 * Math.PI * chance.uniform(),
    size: between(0.00022, 0.00006) * (0.5 + chance.uniform())
  }));

  const count = patterns * engine.cylinders;
  const firings: Firing[] = [];
  for (let i = 0; i < count; i++) {
    const cylinder = i % engine.cylinders;
    const own = cylinders[cylinder];
    const wander = hunting.reduce(
      (sum, { turns, phase, size }) => sum + size * Math.sin((2 * Math.PI * turns * i) / count + phase),
      0
    );
    const late = between(0.045, 0.02) * own.timing + between(0.02, 0.008) * chance.gaussian();
    const nearMiss = chance.uniform() < between(0.035, 0) ? 0.45 : 1;
    const lope = swell.reduce(
      (sum, { turns, phase }) =>
        sum + Math.cos((2 * Math.PI * turns * cylinder) / engine.cylinders + phase) / turns,
      0
    );
    const strength =
      1 +
      between(0.24, 0.06) * lope +
      between(0.18, 0.09) * own.strength +
      between(0.14, 0.08) * chance.gaussian();
    const at = ((i + late) / count + wander) * length;
    firings.push({
      at: ((at % length) + length) % length,
      cylinder,
      strength: Math.max(0.15, strength * nearMiss)
    });
  }
  return { firings, length, rpm, load, samplesPerDegree: sampleRate / (rpm * 6) };
}

import type { Hertz, Seconds } from '../../units.js';
import { random } from '../blocks/random.js';
import type { Span } from '../blocks/span.js';
import { addRing } from './ring.js';

/** A partial of a bell or gong that nobody has tuned: two modes a hair apart, which beat. */
export interface Partial {
  name: string;
  frequency: Hertz;
  /** Distance of its two modes. */
  split: Hertz;
  decay: Seconds;
  level: number;
}

/** A partial before it is cast: its frequency and decay as shares of those of the nominal, its level. */
export interface Pattern {
  name: string;
  ratio: number;
  decay: number;
  level: number;
}

/**
 * The partials of one casting: each off its pattern by its own few per cent (standard deviation `scatter`), with a split
 * of 0.3 to 1.8 Hz and a decay and level of its own; which way it first swings is a matter of chance. The pattern of ratio 1 is the nominal: it keeps its frequency and
 * decay.
 */
export function cast(
  pattern: readonly Pattern[],
  nominal: Hertz,
  decay: Seconds,
  scatter: number,
  seed: number
): Partial[] {
  const chance = random(seed);
  return pattern.map(({ name, ratio, decay: share, level }) => {
    const off = 1 + scatter * Math.max(-2, Math.min(2, chance.gaussian()));
    const lasts = 1.2 ** chance.gaussian();
    const split = 0.3 + 1.5 * chance.uniform();
    return {
      name,
      frequency: nominal * ratio * (ratio === 1 ? 1 : off),
      split,
      decay: decay * share * (ratio === 1 ? 1 : lasts),
      level: (chance.uniform() < 0.5 ? -level : level) * 10 ** ((2 * chance.gaussian()) / 20)
    };
  });
}

/**
 * One stroke. A harder one is brighter: a blow that touches for a shorter time reaches higher modes, which is taken as
 * level·1/(1 + (f/reach)²). Each stroke excites the two modes of a partial, and the partials, in its own proportion.
 *
 * @param at in samples, a real number
 * @param reach where the blow's spectrum has fallen by 6 dB
 * @param chance what is different in this stroke
 */
export function strike(
  signal: Float32Array,
  span: Pick<Span, 'sampleRate' | 'cyclic'>,
  partials: readonly Partial[],
  at: number,
  strength: number,
  reach: Hertz,
  chance: ReturnType<typeof random>
): void {
  for (const { frequency, split, decay, level } of partials) {
    const size = (strength * level * 10 ** ((1.2 * chance.gaussian()) / 20)) / (1 + (frequency / reach) ** 2);
    const share = 0.12 + 0.16 * chance.uniform();
    addRing(signal, span, at, { frequency, decay, level: size * (1 - share) });
    addRing(signal, span, at, { frequency: frequency + split, decay, level: size * share });
  }
}

import type { Amplifier, Drive } from './drive.js';

/**
 * Amplifiers as they sit on sound decoders: invented kinds, their values common practice (1 to 3 W, a least load of 4 or 8 Ω). The first is taken
 * where none is said.
 */
export const AMPLIFIERS: readonly (Amplifier & { name: string })[] = [
  { name: 'small decoder', leastLoad: 8, power: 1 },
  { name: 'decoder', leastLoad: 4, power: 1.5 },
  { name: 'large decoder', leastLoad: 4, power: 3 }
];

/** What is taken where no drive is said: an engine's sound whose peaks a small decoder can just give. */
export const USUAL_DRIVE: Drive = { watts: 0.06, into: 8 };

import { PRIME_MOVER } from '../../sounds/engine.js';
import type { BenchSound } from '../file/bench-file.js';

/** The name a sound goes by on the screen. */
export function soundWords(sound: BenchSound): string {
  switch (sound.kind) {
    case 'engine':
      return PRIME_MOVER.name;
    case 'pinkNoise':
      return 'Pink noise';
    case 'recording':
      return sound.name;
  }
}

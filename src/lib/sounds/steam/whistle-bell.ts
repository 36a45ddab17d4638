import type { Hertz } from '../../units.js';
import type { Random } from '../blocks/random.js';

/**
 * Partials of a bell: number, size when it speaks steadily, size while it begins. A stopped pipe has the odd ones;
 * steam blown hard adds a little of the even ones, and a bell overblows for a moment before it settles (N. H. Fletcher
 * and T. D. Rossing, The Physics of Musical Instruments, ch. 16 and 17: stopped flue pipes and their starting
 * transients; sizes by eye on spectrograms of steam whistles).
 */
const PARTIALS: [number, number, number][] = [
  [1, 1, 0.5],
  [2, 0.16, 0.2],
  [3, 0.2, 0.55],
  [4, 0.05, 0.06],
  [5, 0.07, 0.2],
  [6, 0.02, 0.02],
  [7, 0.03, 0.06],
  [9, 0.012, 0.02]
];

const SIZE = 4096;

/** One period of a bell as tables to be read by phase (in periods): speaking, and beginning to speak. */
export interface Bell {
  read(phase: number, beginning: number): number;
}

/** The tables of a bell; partials above 0.45 of the sample rate are left out. */
export function whistleBell(pitch: Hertz, sampleRate: Hertz, chance: Random): Bell {
  const steady = new Float32Array(SIZE + 1);
  const starting = new Float32Array(SIZE + 1);
  for (const [n, size, startSize] of PARTIALS) {
    const start = 2 * Math.PI * chance.uniform();
    if (n * pitch > 0.45 * sampleRate) continue;
    for (let i = 0; i <= SIZE; i++) {
      const wave = Math.sin((2 * Math.PI * n * i) / SIZE + start);
      steady[i] += size * wave;
      starting[i] += (startSize - size) * wave;
    }
  }
  return {
    read(phase, beginning) {
      const x = (phase - Math.floor(phase)) * SIZE;
      const i = x | 0;
      const part = x - i;
      const now = steady[i] + part * (steady[i + 1] - steady[i]);
      return beginning === 0 ? now : now + beginning * (starting[i] + part * (starting[i + 1] - starting[i]));
    }
  };
}

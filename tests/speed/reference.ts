import { RealFft } from '../../src/lib/numeric/fft.js';
import { random } from '../../src/lib/sounds/blocks/random.js';
import type { SpeedCase } from './speed-case.js';

/** The yardstick: machines differ, so every time is also given as a multiple of one FFT of 4096 samples. */
export const reference: SpeedCase = {
  name: 'FFT of 4096 samples (the yardstick)',
  prepare: () => {
    const fft = new RealFft(4096);
    const { gaussian } = random(1);
    const samples = Float64Array.from({ length: 4096 }, gaussian);
    return () => fft.forward(samples);
  }
};

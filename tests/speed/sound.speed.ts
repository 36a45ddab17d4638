import { PRIME_MOVER } from '../../src/lib/sounds/engine.js';
import { renderPinkNoise } from '../../src/lib/sounds/test-signals/pink-noise.js';
import { renderEngine } from '../../src/lib/sounds/render-engine.js';
import type { SpeedCase } from './speed-case.js';

const SAMPLE_RATE = 48000;

/** What the first press of play waits for. */
const cases: SpeedCase[] = [
  { name: 'engine loop at notch 4', prepare: () => () => renderEngine(PRIME_MOVER, 4, SAMPLE_RATE) },
  { name: 'pink noise, 10 s', prepare: () => () => renderPinkNoise(10, SAMPLE_RATE, 1) }
];

export default cases;

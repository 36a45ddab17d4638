import { DIESEL_SOURCE } from './diesel/diesel-source.js';
import { ELECTRIC_SOURCE } from './electric/electric-source.js';
import type { MovingSound, StillSound } from './kinds.js';
import { BELL_SOURCE } from './signals/bell-source.js';
import { COMPRESSOR_SOURCE } from './signals/compressor-source.js';
import { CROSSING_SOURCE } from './signals/crossing-source.js';
import { HORN_SOURCE } from './signals/horn-source.js';
import { SLACK_SOURCE } from './signals/slack-source.js';
import { SQUEAL_SOURCE } from './signals/squeal-source.js';
import type { MovingSource, StillSource } from './sound-kind.js';
import { STEAM_SOURCE } from './steam/steam-source.js';
import { WHISTLE_SOURCE } from './steam/whistle-source.js';
import { BURSTS_SOURCE } from './test-signals/bursts.js';
import { PINK_NOISE_SOURCE } from './test-signals/pink-noise.js';
import { PUFF_SOURCE } from './test-signals/puff.js';
import { STEPPED_TONES_SOURCE } from './test-signals/stepped-tones.js';
import { SWEEP_SOURCE } from './test-signals/sweep.js';
import { WHITE_NOISE_SOURCE } from './test-signals/white-noise.js';

/*
 * What makes the sounds stands apart from what there is to say of them (kinds.ts): the page says, the worker makes, and the
 * page need not fetch how.
 */

const MOVING: Record<MovingSound['kind'], unknown> = {
  diesel: DIESEL_SOURCE,
  steam: STEAM_SOURCE,
  electric: ELECTRIC_SOURCE
};
const STILL: Record<StillSound['kind'], unknown> = {
  horn: HORN_SOURCE,
  whistle: WHISTLE_SOURCE,
  bell: BELL_SOURCE,
  crossing: CROSSING_SOURCE,
  squeal: SQUEAL_SOURCE,
  slack: SLACK_SOURCE,
  compressor: COMPRESSOR_SOURCE,
  pinkNoise: PINK_NOISE_SOURCE,
  whiteNoise: WHITE_NOISE_SOURCE,
  sweep: SWEEP_SOURCE,
  steppedTones: STEPPED_TONES_SOURCE,
  bursts: BURSTS_SOURCE,
  puff: PUFF_SOURCE
};

/** How a machine is made; what it gets is a sound of its own kind. */
export function movingSource(sound: MovingSound): MovingSource<MovingSound> {
  return MOVING[sound.kind] as MovingSource<MovingSound>;
}

/** How a sound that stands still is made. */
export function stillSource(sound: StillSound): StillSource<StillSound> {
  return STILL[sound.kind] as StillSource<StillSound>;
}

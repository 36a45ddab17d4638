import type { Diesel } from './diesel/diesel.js';
import { DIESEL_PRESETS } from './diesel/diesel-presets.js';
import type { Signal } from './driving.js';
import type { Electric } from './electric/electric.js';
import { ELECTRIC_PRESETS } from './electric/electric-presets.js';
import type { GeneratedSound, MovingSound } from './kinds.js';
import { BELL_PRESETS } from './signals/bell.js';
import { COMPRESSOR_PRESETS } from './signals/compressor.js';
import { CROSSING_PRESETS } from './signals/crossing.js';
import { HORN_PRESETS } from './signals/horn.js';
import { SLACK_PRESETS } from './signals/slack.js';
import { SQUEAL_PRESETS } from './signals/squeal.js';
import type { Steam } from './steam/steam.js';
import { STEAM_PRESETS } from './steam/steam-presets.js';
import { WHISTLE_PRESETS } from './steam/whistle-presets.js';
import { BURSTS_PRESETS } from './test-signals/bursts.js';
import { PINK_NOISE_PRESETS } from './test-signals/pink-noise.js';
import { PUFF_PRESETS } from './test-signals/puff.js';
import { STEPPED_TONES_PRESETS } from './test-signals/stepped-tones.js';
import { SWEEP_PRESETS } from './test-signals/sweep.js';
import { WHITE_NOISE_PRESETS } from './test-signals/white-noise.js';

/** A machine with its lever in the middle. */
function machine(sound: Diesel | Steam | Electric, signal: Signal): MovingSound {
  return { ...sound, notch: 4, signal, runPast: false };
}

/** The machines of the Carrow & Eastmoor, an invented club layout. */
export const MACHINES: readonly MovingSound[] = [
  ...DIESEL_PRESETS.map((one, i) => machine(one, i % 2 ? 'three-note horn' : 'five-note horn')),
  ...STEAM_PRESETS.map((one) => machine(one, 'whistle')),
  ...ELECTRIC_PRESETS.map((one) => machine(one, 'three-note horn'))
];

/** What sounds on and beside a train. */
export const LINESIDE: readonly GeneratedSound[] = [
  ...HORN_PRESETS,
  ...WHISTLE_PRESETS,
  ...BELL_PRESETS,
  ...CROSSING_PRESETS,
  ...SQUEAL_PRESETS,
  ...SLACK_PRESETS,
  ...COMPRESSOR_PRESETS
];

export const TEST_SIGNALS: readonly GeneratedSound[] = [
  ...PINK_NOISE_PRESETS,
  ...WHITE_NOISE_PRESETS,
  ...SWEEP_PRESETS,
  ...STEPPED_TONES_PRESETS,
  ...BURSTS_PRESETS,
  ...PUFF_PRESETS
];

const ALL: readonly GeneratedSound[] = [...MACHINES, ...LINESIDE, ...TEST_SIGNALS];

/** A sound of a kind as it comes: the one of this name, or else the first of its kind. */
export function usualSound(kind: GeneratedSound['kind'], name?: string): GeneratedSound {
  const ofKind = ALL.filter((sound) => sound.kind === kind);
  return ofKind.find((sound) => sound.name === name) ?? ofKind[0];
}

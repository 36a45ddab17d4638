import { DIESEL_KIND } from './diesel/diesel-kind.js';
import type { Diesel } from './diesel/diesel.js';
import { DRIVING_KNOBS, type Driving } from './driving.js';
import { ELECTRIC_KIND } from './electric/electric-kind.js';
import type { Electric } from './electric/electric.js';
import type { SoundKnobs } from './knob.js';
import { BELL_KIND } from './signals/bell-kind.js';
import type { Bell } from './signals/bell.js';
import { COMPRESSOR_KIND } from './signals/compressor-kind.js';
import type { Compressor } from './signals/compressor.js';
import { CROSSING_KIND } from './signals/crossing-kind.js';
import type { Crossing } from './signals/crossing.js';
import { HORN_KIND } from './signals/horn-kind.js';
import type { Horn } from './signals/horn.js';
import { SLACK_KIND } from './signals/slack-kind.js';
import type { Slack } from './signals/slack.js';
import { SQUEAL_KIND } from './signals/squeal-kind.js';
import type { Squeal } from './signals/squeal.js';
import type { MovingKind, StillKind } from './sound-kind.js';
import { STEAM_KIND } from './steam/steam-kind.js';
import type { Steam } from './steam/steam.js';
import type { Whistle } from './steam/whistle.js';
import { WHISTLE_KIND } from './steam/whistle-kind.js';
import { BURSTS_KIND, type Bursts } from './test-signals/bursts.js';
import { PINK_NOISE_KIND, type PinkNoise } from './test-signals/pink-noise.js';
import { PUFF_KIND, type Puff } from './test-signals/puff.js';
import { STEPPED_TONES_KIND, type SteppedTones } from './test-signals/stepped-tones.js';
import { SWEEP_KIND, type Sweep } from './test-signals/sweep.js';
import { WHITE_NOISE_KIND, type WhiteNoise } from './test-signals/white-noise.js';

/** A machine with a lever. */
export type MovingSound = (Diesel | Steam | Electric) & Driving;
export type StillSound =
  | Horn
  | Whistle
  | Bell
  | Crossing
  | Squeal
  | Slack
  | Compressor
  | PinkNoise
  | WhiteNoise
  | Sweep
  | SteppedTones
  | Bursts
  | Puff;
/** Everything that is generated: its kind, its name and the values of its knobs, and nothing else. */
export type GeneratedSound = MovingSound | StillSound;

const MOVING = { diesel: DIESEL_KIND, steam: STEAM_KIND, electric: ELECTRIC_KIND };
const STILL = {
  horn: HORN_KIND,
  whistle: WHISTLE_KIND,
  bell: BELL_KIND,
  crossing: CROSSING_KIND,
  squeal: SQUEAL_KIND,
  slack: SLACK_KIND,
  compressor: COMPRESSOR_KIND,
  pinkNoise: PINK_NOISE_KIND,
  whiteNoise: WHITE_NOISE_KIND,
  sweep: SWEEP_KIND,
  steppedTones: STEPPED_TONES_KIND,
  bursts: BURSTS_KIND,
  puff: PUFF_KIND
};

export const SOUND_KIND_NAMES = [...Object.keys(MOVING), ...Object.keys(STILL)] as GeneratedSound['kind'][];

export function isMoving(sound: { kind: string }): sound is MovingSound {
  return Object.hasOwn(MOVING, sound.kind);
}

/** What there is to say of a machine; what it gets is a sound of its own kind. */
export function movingKind(sound: MovingSound): MovingKind<MovingSound> {
  return MOVING[sound.kind] as unknown as MovingKind<MovingSound>;
}

/** What there is to say of a sound that stands still. */
export function stillKind(sound: StillSound): StillKind<StillSound> {
  return STILL[sound.kind] as unknown as StillKind<StillSound>;
}

/** All knobs of a kind, in the order in which they are shown and written. */
export function knobsOfKind(kind: GeneratedSound['kind']): SoundKnobs {
  return kind in MOVING
    ? { ...MOVING[kind as MovingSound['kind']].knobs, ...DRIVING_KNOBS }
    : STILL[kind as StillSound['kind']].knobs;
}

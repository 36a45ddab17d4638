import { type KnobValues, type SoundKnobs, seedKnob } from '../knob.js';

export const SQUEAL_KNOBS = {
  pitch: { type: 'number', name: 'squeal pitch', unit: 'Hz', min: 400, max: 5000, step: 50, usual: 2100 },
  roughness: { type: 'number', name: 'roughness', unit: 'share', min: 0, max: 1, step: 0.05, usual: 0.4 },
  seed: seedKnob(8)
} as const satisfies SoundKnobs;

/** Brake squeal. `pitch` is the wheel mode it sounds in most; `roughness` is the share of its level that flickers. */
export type Squeal = { kind: 'squeal'; name: string } & KnobValues<typeof SQUEAL_KNOBS>;

export const SQUEAL_PRESETS: readonly Squeal[] = [
  { kind: 'squeal', name: 'Brakes of a goods train', pitch: 2100, roughness: 0.4, seed: 8 },
  { kind: 'squeal', name: 'Brakes of a coach', pitch: 3300, roughness: 0.15, seed: 19 }
];

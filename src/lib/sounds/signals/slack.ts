import { type KnobValues, type SoundKnobs, seedKnob } from '../knob.js';

export const SLACK_KNOBS = {
  cars: { type: 'number', name: 'cars', unit: 'count', min: 1, max: 40, step: 1, usual: 14, whole: true },
  interval: {
    type: 'number',
    name: 'time between cars',
    unit: 's',
    min: 0.04,
    max: 0.8,
    step: 0.01,
    usual: 0.2
  },
  hardness: { type: 'number', name: 'hardness', unit: 'share', min: 0, max: 1, step: 0.05, usual: 0.5 },
  seed: seedKnob(14)
} as const satisfies SoundKnobs;

/**
 * Slack running along a train. `interval` is the mean time from coupler to coupler; `hardness` is how fast they meet:
 * soft is a thud, hard a clank.
 */
export type Slack = { kind: 'slack'; name: string } & KnobValues<typeof SLACK_KNOBS>;

export const SLACK_PRESETS: readonly Slack[] = [
  { kind: 'slack', name: 'Starting fourteen cars', cars: 14, interval: 0.2, hardness: 0.5, seed: 14 },
  { kind: 'slack', name: 'Bumped hard, thirty cars', cars: 30, interval: 0.1, hardness: 0.9, seed: 30 }
];

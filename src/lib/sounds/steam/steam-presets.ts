import { usualValues } from '../knob.js';
import { type Steam, STEAM_KNOBS } from './steam.js';

const usual = usualValues(STEAM_KNOBS);

/** Engines of the Carrow & Eastmoor, an invented railway. */
export const STEAM_PRESETS: readonly Steam[] = [
  { ...usual, kind: 'steam', name: 'No. 8, tender engine' },
  {
    ...usual,
    kind: 'steam',
    name: 'No. 12, express engine',
    cylinders: 3,
    driverDiameter: 1.96,
    topSpeed: 38,
    cutoff: 0.25,
    load: 0.55,
    unevenness: 0.3,
    rods: 0.25,
    blower: 0.6,
    seed: 12
  },
  {
    ...usual,
    kind: 'steam',
    name: 'No. 3, tank engine',
    driverDiameter: 1.22,
    topSpeed: 15,
    cutoff: 0.6,
    load: 0.75,
    drainCocks: true,
    unevenness: 0.6,
    rods: 0.7,
    blower: 0.85,
    seed: 3
  }
];

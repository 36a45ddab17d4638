import { usualValues } from '../knob.js';
import { type Electric, ELECTRIC_KNOBS } from './electric.js';

const usual = usualValues(ELECTRIC_KNOBS);

/** Electrics of the Carrow & Eastmoor, an invented railway. */
export const ELECTRIC_PRESETS: readonly Electric[] = [
  { ...usual, kind: 'electric', name: 'No. 90, motor coach', blowers: 0.7 },
  {
    ...usual,
    kind: 'electric',
    name: 'No. 71, express electric',
    wheelDiameter: 1.22,
    topSpeed: 44,
    gearRatio: 3.2,
    polePairs: 3,
    lineFrequency: '16.7 Hz',
    inverter: 0.4,
    blowers: 0.65,
    hum: 0.5,
    gears: 0.45,
    seed: 71
  },
  {
    ...usual,
    kind: 'electric',
    name: 'No. 2, mill shunter',
    wheelDiameter: 0.9,
    topSpeed: 11,
    gearRatio: 5.8,
    polePairs: 2,
    lineFrequency: '60 Hz',
    inverter: 0,
    blowers: 0.35,
    hum: 0.9,
    gears: 0.5,
    seed: 2
  }
];

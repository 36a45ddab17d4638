import { usualValues } from '../knob.js';
import { type Diesel, DIESEL_KNOBS } from './diesel.js';

const USUAL: Diesel = { kind: 'diesel', name: '', ...usualValues(DIESEL_KNOBS) };

/**
 * The diesels of the roster. All are invented; their speeds are within what is usual for engines of their kind
 * (common practice, from memory), and none has cylinders, cycle and both speeds of one real engine.
 */
export const DIESEL_PRESETS: readonly Diesel[] = [
  { ...USUAL, name: 'No. 41, cab diesel' },
  {
    ...USUAL,
    name: 'No. 75, road diesel, two-stroke',
    loading: 24,
    cylinders: 14,
    cycle: 'two-stroke',
    charging: 'blower',
    idleRpm: 350,
    fullRpm: 860,
    unevenness: 0.65,
    silencer: 0.35,
    fans: 0.5,
    hum: 0.3,
    seed: 75
  },
  {
    ...USUAL,
    name: 'No. 7, hood switcher',
    loading: 20,
    cylinders: 6,
    layout: 'in-line',
    charging: 'none',
    idleRpm: 300,
    fullRpm: 800,
    unevenness: 0.5,
    silencer: 0.4,
    clatter: 0.5,
    fans: 0.3,
    hum: 0.35,
    seed: 7
  },
  {
    ...USUAL,
    name: 'Railbus 12',
    loading: 0,
    cylinders: 6,
    layout: 'in-line',
    charging: 'none',
    idleRpm: 600,
    fullRpm: 1800,
    load: 0.75,
    unevenness: 0.35,
    silencer: 0.65,
    clatter: 0.7,
    fans: 0.25,
    hum: 0,
    seed: 12
  }
];

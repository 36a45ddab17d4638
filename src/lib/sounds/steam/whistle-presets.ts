import { usualValues } from '../knob.js';
import { type Whistle, WHISTLE_KNOBS } from './whistle.js';

const usual = usualValues(WHISTLE_KNOBS);

/** Whistles of the Carrow & Eastmoor, an invented railway. */
export const WHISTLE_PRESETS: readonly Whistle[] = [
  { ...usual, kind: 'whistle', name: 'Whistle of No. 8, four notes' },
  {
    ...usual,
    kind: 'whistle',
    name: 'Whistle of No. 12, three notes',
    chord: [1, 5, 10],
    breath: 0.4,
    seed: 12
  },
  { ...usual, kind: 'whistle', name: 'Whistle of No. 3, one note', chord: [14], breath: 0.7, seed: 3 }
];

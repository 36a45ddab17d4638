import type { Decibels } from '../../units.js';
import { levelAt } from './readout.js';
import type { SoundSpectrum } from '../marks/sound-spectrum.js';

/** Less than this is not to be seen. */
const SEEN: Decibels = 0.5;

/** Whether the sound comes through louder anywhere above the floor of the picture: whether there is anything hatched. */
export function addsAnything(sound: SoundSpectrum, through: SoundSpectrum, floor: Decibels): boolean {
  return through.levelDb.some(
    (levelDb, i) =>
      levelDb > floor + SEEN && levelDb > levelAt(sound.frequency, sound.levelDb, through.frequency[i]) + SEEN
  );
}

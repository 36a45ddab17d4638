import type { Hertz } from '../../units.js';
import { frequencyText } from '../../format/frequency-text.js';
import { levelText } from '../../format/level-text.js';
import type { Note } from './note-box.js';
import { levelAt, lossText } from './readout.js';
import type { SoundSpectrum, SpectrumMark } from '../marks/sound-spectrum.js';

/**
 * What the readout says of the spectrum at a frequency: what is marked there, the level of the sound, and where it goes
 * where there is one, the level behind and the difference.
 */
export function spectrumNote(
  sound: SoundSpectrum,
  through: SoundSpectrum | null,
  throughText: string,
  marks: readonly SpectrumMark[],
  at: Hertz
): Note {
  const mark = marks.find(({ frequency }) => frequency === at);
  const name = mark && (mark.name ?? mark.text);
  const note: Note = {
    title: name ? `${frequencyText(at)}, ${name}` : frequencyText(at),
    rows: [],
    end: null
  };
  const outlineDb = levelAt(sound.frequency, sound.levelDb, at);
  note.rows.push({
    look: through ? 'outline' : 'filled',
    name: 'the sound itself',
    value: levelText(outlineDb),
    levelDb: outlineDb
  });
  if (through) {
    const filledDb = levelAt(through.frequency, through.levelDb, at);
    note.rows.push({ look: 'filled', name: throughText, value: levelText(filledDb), levelDb: filledDb });
    // As the figures are written: a reader may well subtract them.
    note.end = lossText({ outlineDb: Math.round(outlineDb), filledDb: Math.round(filledDb) });
  }
  return note;
}

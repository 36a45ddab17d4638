import type { Hertz, Seconds } from '../../units.js';
import { loopSpan } from '../blocks/span.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { checkKnobs } from '../knob.js';
import type { StillKind } from '../sound-kind.js';
import { HORN_KNOBS, type Horn } from './horn.js';
import { hornBells, mistuning } from './horn-bells.js';
import { notePitch } from '../blocks/note-pitch.js';
import { type Blow, hornSound } from './horn-sound.js';
import { noteName } from '../blocks/note-name.js';

/** Long, long, short, long, then a pause. */
const BLOWS: readonly Blow[] = [
  { from: 0.1, until: 1.35 },
  { from: 1.9, until: 3.15 },
  { from: 3.65, until: 4.05 },
  { from: 4.5, until: 6.1 }
];
const LOOP: Seconds = 7;

/** A horn that gives a signal: long, long, short, long, in a loop of seven seconds. Its marks are its notes by name. */
export const HORN_KIND: StillKind<Horn> = {
  knobs: HORN_KNOBS,
  marks(horn) {
    const cents = mistuning(horn);
    return horn.chord
      .map((note, i) => ({
        frequency: notePitch(note) * 2 ** (cents[i] / 1200),
        name: noteName(note),
        harmonics: 4
      }))
      .sort((a, b) => a.frequency - b.frequency);
  },
  render(horn: Horn, sampleRate: Hertz) {
    checkKnobs(HORN_KNOBS, horn);
    validSampleRate(sampleRate);
    const span = loopSpan(Math.round(LOOP * sampleRate), sampleRate, horn.seed);
    return hornSound(horn, hornBells(horn, sampleRate), [...BLOWS], span, 0, LOOP);
  }
};

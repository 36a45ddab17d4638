import type { Hertz } from '../../units.js';
import { validSampleRate } from '../blocks/sample-rate.js';
import { loopSpan } from '../blocks/span.js';
import { checkKnobs, type KnobValues, type SoundKnobs, usualValues, seedKnob, shareKnob } from '../knob.js';
import type { MarkedRate, StillKind } from '../sound-kind.js';
import { noteName } from '../blocks/note-name.js';
import { notePitch } from '../blocks/note-pitch.js';
import { blownWhistle } from './blown-whistle.js';
import { valveCurve } from './valve-curve.js';

/** What of a steam whistle can be set. */
export const WHISTLE_KNOBS = {
  chord: {
    type: 'chord',
    name: 'pitches',
    fewest: 1,
    most: 6,
    lowest: -14,
    highest: 26,
    usual: [-4, 0, 3, 8]
  },
  breath: shareKnob('breath', 0.5),
  seed: seedKnob(8)
} as const satisfies SoundKnobs;

/** A steam whistle: one stopped bell for each of its notes. */
export type Whistle = { kind: 'whistle'; name: string } & KnobValues<typeof WHISTLE_KNOBS>;

/** A long blast, a short one, and silence before it goes round. */
const LASTS = 5.6;
const BLASTS = [
  { from: 0.15, to: 2.75 },
  { from: 3.35, to: 4.05 }
];

/** Pitches of the notes in Hz, in their order: f = 440·2^(n/12) (ISO 16:1975). */
export function whistlePitches({ chord }: Pick<Whistle, 'chord'>): Hertz[] {
  return chord.map(notePitch);
}

function marks(sound: Whistle): MarkedRate[] {
  const pitches = whistlePitches(sound);
  return sound.chord
    .map((semitones, k) => ({ frequency: pitches[k], name: noteName(semitones), harmonics: 3 }))
    .sort((a, b) => a.frequency - b.frequency);
}

/** A steam whistle blown long and short, with the chiff at each beginning. */
export const WHISTLE_KIND: StillKind<Whistle> = {
  knobs: WHISTLE_KNOBS,
  marks,
  render(sound, sampleRate) {
    checkKnobs(WHISTLE_KNOBS, sound);
    validSampleRate(sampleRate);
    const span = loopSpan(Math.round(LASTS * sampleRate), sampleRate, sound.seed);
    return blownWhistle(sound, valveCurve(LASTS, BLASTS), span);
  }
};

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

import { expect, test } from 'vitest';
import { type BandInPlace, JUDGED } from '../../../../src/lib/evaluation/in-place.js';
import {
  audibleWords,
  noiseWords,
  shareWords,
  whereWords
} from '../../../../src/lib/screens/place/place-words.js';
import { placeNoise } from '../../../../src/lib/sounds/places/place-spectra.js';
import { close } from '../../../helpers/close.js';

/** Third octaves of which these are heard, and those from `from` Hz on are part of the sound. */
function bands(heard: number[], from = 100): BandInPlace[] {
  return JUDGED.map((band) => ({
    band,
    levelDb: 40,
    heardFromDb: 30,
    part: band.nominal >= from,
    audible: heard.includes(band.nominal)
  }));
}

test('what is heard is told in stretches of third octaves', () => {
  const some = bands([400, 500, 630, 2000, 5000, 6300]);
  expect(audibleWords(some, 'engine', 'in a club')).toBe(
    '6 of 22 third octaves of the engine are heard in a club: 400 Hz to 630 Hz, at 2 kHz, 5 kHz to 6.3 kHz.'
  );
  expect(shareWords(some)).toBe('6 of 22');
});

test('nothing, all of it, and no sound have sentences of their own', () => {
  expect(audibleWords(bands([]), 'engine', 'in a club')).toBe('Nothing of the engine is heard in a club.');
  const all = bands(
    JUDGED.map(({ nominal }) => nominal),
    50
  );
  expect(audibleWords(all, 'engine', 'in silence')).toBe(
    'All 25 third octaves of the engine are heard in silence.'
  );
  expect(audibleWords(bands([], 1e6), 'engine', 'in silence')).toBe('There is no sound.');
  expect(shareWords(bands([], 1e6))).toBe('–');
});

test('the place is told with its noise, what that is taken from, and its level', () => {
  expect(whereWords(null)).toBe('in silence');
  expect(whereWords({ kind: 'quietRoom', levelDb: 30 })).toBe('in the noise of a quiet room, 30 dBA');
  expect(whereWords({ kind: 'clubNight', levelDb: 62 })).toBe('in the noise of the club night, 62 dBA');
  expect(noiseWords('quietRoom')).toBe(
    'The noise falls by 5 dB an octave, as ventilation does. Usual here: 32 dBA.'
  );
  const { spectrumDb } = placeNoise('quietRoom');
  spectrumDb
    .slice(3)
    .forEach((level, i) =>
      close(level - spectrumDb[i], -5, { abs: 1e-9, because: 'three third octaves are an octave' })
    );
  expect(noiseWords('exhibitionHall')).toBe(
    'The noise has the long-term spectrum of speech. Usual here: 74 dBA, taken from restaurants; none was found for exhibition halls.'
  );
});

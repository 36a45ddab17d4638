import { expect, test } from 'vitest';
import { SPEAKERS } from '../../../../../src/lib/acoustics/speaker/speakers.js';
import { Bench } from '../../../../../src/lib/bench/bench.svelte.js';
import { demoBench } from '../../../../../src/lib/file/demo-bench.js';
import { speakerWords, zeroWords } from '../../../../../src/lib/screens/parts/words/drive-words.js';

function words(bench: Bench) {
  return [
    zeroWords(bench.stands, bench.measuredAgainst),
    ...bench.stands.map((stand) => speakerWords(stand, bench.stands))
  ];
}

test('one speaker for all is not named', () => {
  expect(words(new Bench())).toEqual(['the same speaker in an endless plate', null, null, null, null]);
});

test('where speakers differ each is named, with what it gives at the same voltage, and 0 dB is the one measured against', () => {
  const demo = demoBench();
  const speakers = {
    ...demo.speakers,
    'phone-11x15': SPEAKERS['phone-11x15'],
    'round-23': SPEAKERS['round-23']
  };
  const keys = ['oval', 'oval', 'phone-11x15', 'round-23'];
  const setups = demo.setups.map((setup, i) => ({ ...setup, speaker: keys[i] }));
  const bench = new Bench({ ...demo, speakers, setups });
  // Half-space sensitivities at 1 V and 1 m: 67.3, 64.3 and 69.2 dB (tests/validation/acoustics-sensitivity.test.ts).
  expect(words(bench)).toEqual([
    'the speaker “28 × 40 mm” in an endless plate',
    'speaker “28 × 40 mm”',
    'speaker “28 × 40 mm”',
    'speaker “11 × 15 mm”, 3.0 dB less sensitive',
    'speaker “ø 23 mm”, 1.8 dB more sensitive'
  ]);
  bench.measureAgainst(3);
  expect(words(bench)[0]).toBe('the speaker “ø 23 mm” in an endless plate');
  expect(words(bench)[1]).toBe('speaker “28 × 40 mm”, 1.8 dB less sensitive');
});

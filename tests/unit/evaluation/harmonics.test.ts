import { expect, test } from 'vitest';
import { Bench } from '../../../src/lib/bench/bench.svelte.js';
import { harmonicsOf } from '../../../src/lib/evaluation/harmonics.js';
import { measureSound } from '../../../src/lib/listening/measure-sound.js';
import { ruleOfThumb } from '../../../src/lib/acoustics/rule/rule-of-thumb.js';
import { close } from '../../helpers/close.js';

const RATE = 48000;

test('the multiples of a rate: their level in the sound, and the response of every mount there', () => {
  const bench = new Bench();
  // Two lines of known strength: 100 Hz and, 6.02 dB softer, 200 Hz.
  const sound = Float32Array.from(
    { length: RATE },
    (_, i) => 0.4 * Math.sin((2 * Math.PI * 100 * i) / RATE) + 0.2 * Math.sin((2 * Math.PI * 200 * i) / RATE)
  );
  const rate = { frequency: 100, name: 'firing rate', harmonics: 2 };
  const [first, second] = harmonicsOf(rate, measureSound(sound, RATE), bench.stands);
  expect([first.number, second.number, first.frequency, second.frequency]).toEqual([1, 2, 100, 200]);
  close(first.ownDb, 0, { abs: 1e-9, because: 'the strongest' });
  close(second.ownDb, -6.0206, { abs: 0.1, because: 'a line’s sum lacks at most 0.09 dB' });
  bench.stands.forEach(({ installation }, i) => {
    const { re, im } = ruleOfThumb(
      installation,
      bench.file.air,
      bench.file.listener,
      Float64Array.of(200),
      'full'
    );
    close(second.throughDb[i]!, 20 * Math.log10(Math.hypot(re[0], im[0])), {
      abs: 1e-9,
      because: 'the same model'
    });
  });
  expect(second.throughDb[1]!).toBeGreaterThan(second.throughDb[0]! + 6);
});

test('a mount that cannot be built has no figures; multiples beyond the spectrum are left out', () => {
  const bench = new Bench();
  bench.setMount({ kind: 'free' });
  const stands = bench.stands.map((stand, i) => (i === 2 ? { ...stand, computed: null } : stand));
  const noise = Float32Array.from({ length: 9000 }, (_, i) => Math.sin(i * i));
  const rate = { frequency: 9000, name: 'tone', harmonics: 8 };
  const all = harmonicsOf(rate, measureSound(noise, RATE), stands);
  expect(all.map(({ number }) => number)).toEqual([1, 2]);
  expect(all[0].throughDb[2]).toBeNull();
});

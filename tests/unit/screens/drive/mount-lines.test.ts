import { expect, test } from 'vitest';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { withMountPrice, withSpeakerPrice } from '../../../../src/lib/bench/prices.js';
import { mountLine } from '../../../../src/lib/screens/drive/mount-lines.js';

const PLATE = 1;
const BOX = 3;
const KNOWN = { levelDb: 61.7, differenceDb: 3.6, isAgainst: false };

test('how loud here stands beside how much louder than, and beside what room and money it takes', () => {
  const bench = new Bench();
  const line = (at: number, known = KNOWN) => mountLine(bench.file, bench.stands[at], known);
  const { mount } = bench.stands[PLATE].setup;
  expect(mount).toMatchObject({ length: 0.152, width: 0.102 });
  // 15.2 × 10.2 × 0.1 cm, and a body of 6.72 cm³
  expect(line(PLATE)).toEqual({
    here: '62 dB',
    than: '4 dB louder to the ear',
    outside: '152 × 102 × 13 mm',
    taken: 'takes 22 cm³',
    price: ''
  });
  bench.setInches(true);
  expect(line(PLATE).outside).toBe('5 63/64 × 4 1/64 × 33/64 in');
  expect(line(PLATE, { ...KNOWN, isAgainst: true }).than).toBe('to compare with');
  expect(line(PLATE, { ...KNOWN, levelDb: -Infinity, differenceDb: null as never })).toMatchObject({
    here: '–',
    than: ''
  });
});

test('a price is told with its parts: a box doubles it unless told', () => {
  const bench = new Bench();
  const price = (at: number) => mountLine(bench.file, bench.stands[at], KNOWN).price;
  bench.revise((file) => withSpeakerPrice(file, 'oval', 9.5));
  expect([price(PLATE), price(BOX)]).toEqual(['costs 9.5', 'costs 9.5 + 9.5 = 19']);
  bench.revise((file) => withMountPrice(file, BOX, 0.1));
  bench.revise((file) => withSpeakerPrice(file, 'oval', 0.2));
  expect(price(BOX)).toBe('costs 0.2 + 0.1 = 0.3');
});

import { expect, test } from 'vitest';
import { outlineArea } from '../../../../src/lib/acoustics/outline.js';
import { motorFigures } from '../../../../src/lib/acoustics/speaker/motor-figures.js';
import { sensitivityDb } from '../../../../src/lib/acoustics/speaker/sensitivity.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { SENSITIVITY_AT, SHEET_KEYS } from '../../../../src/lib/screens/speaker/sheet-fields.js';
import { SheetInHand } from '../../../../src/lib/screens/speaker/sheet-in-hand.svelte.js';
import { contradictionWords, lackingWords, listed } from '../../../../src/lib/screens/speaker/sheet-words.js';
import { SpeakerInHand } from '../../../../src/lib/screens/speaker/speaker-in-hand.svelte.js';
import { close } from '../../../helpers/close.js';

function sheetInHand() {
  const bench = new Bench(demoBench());
  const inHand = new SpeakerInHand(bench);
  return { bench, inHand, sheet: new SheetInHand(inHand) };
}

const OVAL = SPEAKERS.oval;
const AIR = { temperatureC: 20 };

test('a sheet of four figures: what is missing is said, taken from the speaker as it stands, and used in one step to undo', () => {
  const { bench, inHand, sheet } = sheetInHand();
  for (const [key, typed] of [
    ['fs', '420'],
    ['qts', '1,2'],
    ['vas', '15'],
    ['re', '7.4']
  ] as const)
    expect(sheet.enter(key, typed)).toBe(null);
  expect(lackingWords(sheet.reading)).toBe(
    'One more figure is needed: mechanical Q, electrical Q, force factor, friction or sensitivity.'
  );
  sheet.completed = true;
  expect(sheet.taken).toEqual(['qms']);
  expect(lackingWords(sheet.reading)).toBe(null);
  expect(sheet.use()).toBe(null);
  const { motor, cone } = inHand.speaker;
  const figures = motorFigures(motor!, outlineArea(cone), AIR);
  close(figures.fs, 420, { rel: 1e-9, because: 'typed' });
  close(figures.qts, 1.2, { rel: 1e-9, because: 'typed with a comma' });
  close(figures.vas * 1e6, 15, { rel: 1e-9, because: 'typed in cm³' });
  expect([motor!.re, motor!.qms, motor!.xmax]).toEqual([7.4, 3, OVAL.motor.xmax]);
  expect(cone).toEqual(OVAL.cone);
  bench.undo();
  expect(inHand.speaker).toEqual(OVAL);
});

test('a cone area on the sheet makes the drawn cone as large', () => {
  const { inHand, sheet } = sheetInHand();
  sheet.enter('sd', '5.5');
  sheet.completed = true;
  expect(sheet.use()).toBe(null);
  close(outlineArea(inHand.speaker.cone) * 1e4, 5.5, { rel: 1e-9, because: 'typed' });
  sheet.enter('sd', '20');
  sheet.completed = true;
  expect(sheet.use()).toMatch(/^the cone .* is larger than its frame/);
});

test('a sensitivity counts for its volts and its distance: the oval’s own 67.3 dB, however it is written', () => {
  const whole = sensitivityDb(OVAL, AIR);
  const written = [
    ['1 W into 8 Ω (2.83 V)', 1, whole + 10 * Math.log10(8)],
    ['1 W into 4 Ω (2 V)', 1, whole + 10 * Math.log10(4)],
    ['0.1 W into 8 Ω (0.89 V)', 0.1, whole + 10 * Math.log10(0.8) + 20],
    ['1 W into its coil', 0.5, whole + 10 * Math.log10(7.2) + 20 * Math.log10(2)],
    ['1 V', 1, whole]
  ] as const;
  expect(written.map(([words]) => words)).toEqual(SENSITIVITY_AT.map(({ words }) => words));
  for (const [words, distance, db] of written) {
    const { inHand, sheet } = sheetInHand();
    sheet.at = SENSITIVITY_AT.find((at) => at.words === words)!;
    sheet.distance = distance;
    for (const [key, value] of [
      ['fs', 348.13],
      ['re', 7.2],
      ['qms', 3],
      ['mms', 0.55],
      ['sensitivity', db]
    ] as const)
      sheet.enter(key, String(value));
    expect(lackingWords(sheet.reading)).toBe(null);
    expect(sheet.use()).toBe(null);
    close(inHand.speaker.motor!.bl, 1.6, { rel: 1e-6, because: `the force factor from ${words}` });
  }
});

test('a contradiction is told with its figures, how far it goes and what would pass', () => {
  const { sheet } = sheetInHand();
  sheet.enter('fs', '410');
  sheet.enter('mms', '0.55');
  sheet.enter('cms', '0.38');
  const [one, ...more] = sheet.reading.contradictions;
  expect(more).toEqual([]);
  expect(contradictionWords(one, sheet.at, 1, true)).toBe(
    'Compliance: the sheet says 0.38 mm/N. Resonance and moving mass make it 0.274 mm/N. That is 39 % apart; up to 5 % would pass as rounding.'
  );
  sheet.clear();
  expect(sheet.empty).toBe(true);
  sheet.enter('qms', '3');
  sheet.enter('qts', '4');
  expect(contradictionWords(sheet.reading.contradictions[0], sheet.at, 1, true)).toBe(
    'Total Q 4 does not go with mechanical Q: no speaker has them together. It is left out.'
  );
});

test('the cone as it is drawn can be what contradicts, and a sensitivity is told in decibels', () => {
  const { sheet } = sheetInHand();
  for (const [key, typed] of [
    ['fs', '348'],
    ['re', '7.2'],
    ['mms', '0.55'],
    ['bl', '1.6'],
    ['vas', '30'],
    ['sensitivity', '90']
  ] as const)
    sheet.enter(key, typed);
  const words = sheet.reading.contradictions.map((one) => contradictionWords(one, sheet.at, 1, true));
  expect(words).toEqual([
    'Equivalent volume: the sheet says 30 cm³. Resonance, the cone as it is drawn and moving mass make it 19.5 cm³. That is 54 % apart; up to 5 % would pass as rounding.',
    'Sensitivity: the sheet says 90.0 dB. Coil resistance, the cone as it is drawn, moving mass and force factor make it 76.4 dB. That is 13.6 dB apart; up to 2 dB would pass as rounding.'
  ]);
});

test('refuses what no sheet says, each in one sentence, and keeps what was there', () => {
  const { sheet } = sheetInHand();
  sheet.enter('fs', '350');
  expect(sheet.enter('fs', 'low')).toBe('resonance must be a number');
  expect(sheet.enter('fs', '0')).toBe('resonance must be above 0, got 0');
  expect(sheet.enter('fs', '-3')).toBe('resonance must be above 0, got -3');
  expect(sheet.enter('fs', '1e999')).toBe('resonance must be above 0, got 1e999');
  expect(sheet.typed).toEqual({ fs: '350' });
  expect(sheet.enter('fs', ' ')).toBe(null);
  expect(sheet.empty).toBe(true);
});

test('each speaker has a sheet of its own', () => {
  const { inHand, sheet } = sheetInHand();
  sheet.enter('fs', '350');
  inHand.show('round-28');
  expect(sheet.typed).toEqual({});
  inHand.show('oval');
  expect(sheet.typed).toEqual({ fs: '350' });
});

test('a speaker without motor values gets them from its sheet, and nothing is taken from it', () => {
  const file = demoBench();
  const { motor, ...bare } = OVAL;
  const inHand = new SpeakerInHand(new Bench({ ...file, speakers: { ...file.speakers, bare } }));
  inHand.show('bare');
  const sheet = new SheetInHand(inHand);
  sheet.completed = true;
  expect(sheet.taken).toEqual([]);
  for (const key of SHEET_KEYS) {
    const given = { fs: '348.13', re: '7.2', qms: '3', mms: '0.55', bl: '1.6' }[key as string];
    if (given) sheet.enter(key, given);
  }
  expect(sheet.use()).toBe(null);
  close(inHand.speaker.motor!.cms, motor.cms, { rel: 1e-4, because: 'fs in five digits' });
});

test('lists read as one says them', () => {
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map((names) => listed(names, 'or'))).toEqual([
    '',
    'a',
    'a or b',
    'a, b or c'
  ]);
});

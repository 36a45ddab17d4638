import { expect, test } from 'vitest';
import { MEASURE_NAMES } from '../../../../src/lib/evaluation/fit/ranking.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { PLACES } from '../../../../src/lib/acoustics/listener.js';
import { setupOfCandidate } from '../../../../src/lib/evaluation/fit/drawer.js';
import { DEMO_MODELS } from '../../../../src/lib/file/demo-vehicles.js';
import { installationOf } from '../../../../src/lib/file/installation-of.js';
import { layoutBench } from '../../../../src/lib/file/layout-bench.js';
import { fit } from '../../../../src/lib/fitting/fit.js';
import { mountLine } from '../../../../src/lib/screens/drive/mount-lines.js';
import { WAYS, type Way } from '../../../../src/lib/fitting/ways.js';
import type { FitLine } from '../../../../src/lib/bench/fit/fit-run.svelte.js';
import {
  bestSizes,
  changeOf,
  CHANGE_WORDS,
  MEASURE_WORDS,
  measureWords,
  misfitWords,
  noChangeWords,
  placeWords
} from '../../../../src/lib/screens/fit/fit-words.js';

const LINE = {
  measures: { levelDb: 61.24, reachesDown: 243, unevennessDb: 4.26 },
  space: 13.44e-6,
  price: null,
  loudest: null
} as FitLine;
const words = (part: Partial<FitLine>, by: keyof typeof MEASURE_WORDS) =>
  measureWords({ ...LINE, ...part }, by);

test('a line says each of its figures with what it is of', () => {
  expect(words({}, 'level')).toBe('61.2 dB loud');
  expect(words({}, 'deep')).toBe('down to 240 Hz');
  expect(words({ measures: { ...LINE.measures, reachesDown: null } }, 'deep')).toBe('thin throughout');
  expect(words({}, 'even')).toBe('uneven by 4.3 dB');
  expect(words({}, 'space')).toBe('takes 13 cm³');
  expect(words({}, 'price')).toBe('no price told');
  expect(words({ price: 7.5 }, 'price')).toBe('costs 7.5');
  expect(words({}, 'loudest')).toBe('limits not measured yet');
  expect(words({ loudest: { levelDb: 75.2, volts: 2, limit: 'travel' } }, 'loudest')).toBe(
    'at most 75.2 dB, by its travel'
  );
  expect(words({ loudest: { levelDb: 49.1, volts: 0.2, limit: 'travel' } }, 'loudest')).toBe(
    'at most 49.1 dB, by its travel: it cannot take this voltage'
  );
});

test('of boxes that differ by their size alone the best is listed, with how many there are, and where it lies', () => {
  const { candidates, ladders } = fit(DEMO_MODELS[0], SPEAKERS);
  const best = bestSizes(
    candidates.map((candidate, i) => ({
      line: { ...LINE, key: candidate.key, candidate },
      place: i + 1,
      tied: false
    })),
    ladders
  );
  expect(best.reduce((sum, { others }) => sum + 1 + others, 0)).toBe(candidates.length);
  expect(best.length).toBeLessThan(candidates.length / 3);
  const ofBoxes = best.filter(({ others }) => others > 0).map(({ ranked }) => ranked.line.candidate);
  expect(ofBoxes.length).toBeGreaterThan(5);
  // In the order of the ranking, numbered as they are listed.
  const order = best.map(({ ranked }) => candidates.indexOf(ranked.line.candidate));
  expect([...order].sort((a, b) => a - b)).toEqual(order);
  expect(best.map(({ ranked }) => ranked.place)).toEqual(best.map((_, i) => i + 1));
  for (const { mount, way, takes } of ofBoxes) {
    expect(mount.kind).toBe('box');
    expect(placeWords({ way, takes })).toBe(
      `${Math.round(1e3 * takes[0].x[0])} to ${Math.round(1e3 * takes[0].x[1])} mm from the left`
    );
  }
  // One that is tied with sizes of its own box alone is tied with nothing that is listed.
  const alike = bestSizes(
    [...ladders[0], ...ladders[1].slice(1)].map((key, i) => ({
      line: { ...LINE, key },
      place: i < 2 ? 1 : 3,
      tied: true
    })),
    ladders
  );
  expect(alike.map(({ ranked: { place, tied } }) => ({ place, tied }))).toEqual([
    { place: 1, tied: false },
    { place: 2, tied: false }
  ]);
  // Another place, another way or another speaker is another mount.
  const roofs = candidates.filter(({ way }) => way === 'roof');
  expect(best.filter(({ ranked }) => ranked.line.candidate.way === 'roof')).toHaveLength(roofs.length);
});

test('what a mount takes is the same figure here as where it stands on the shelf, of every model of the drawer', () => {
  let counted = 0;
  for (const model of DEMO_MODELS)
    for (const candidate of fit(model, SPEAKERS).candidates) {
      // in the floor the box is the body itself
      if (candidate.way === 'floor') continue;
      const setup = setupOfCandidate(candidate);
      const installation = installationOf({ speakers: SPEAKERS, listener: PLACES.layout }, setup);
      const file = { speakers: SPEAKERS, view: layoutBench().view };
      const { taken } = mountLine(
        file,
        { setup, installation, problem: null },
        { levelDb: null, differenceDb: null, isAgainst: false }
      );
      expect(measureWords({ ...LINE, space: candidate.space }, 'space')).toBe(taken);
      counted++;
    }
  expect(counted).toBeGreaterThan(500);
});

test('a small change is told in the measure that is asked for', () => {
  const then = {
    measures: { levelDb: 60.1, reachesDown: 270, unevennessDb: 4.9 },
    space: 12.84e-6,
    loudest: null
  };
  expect(changeOf(LINE, then, 'level')).toMatchObject({ words: '1.1 dB softer', idle: false });
  expect(changeOf(LINE, then, 'deep').words).toBe('reaches 11 % less low');
  expect(changeOf(LINE, then, 'even').words).toBe('0.6 dB more uneven');
  expect(changeOf(LINE, then, 'space').words).toBe('takes 0.6 cm³ less');
  expect(changeOf(LINE, then, 'loudest').words).toBe('no figure');
  const [loud, louder] = [75.2, 75.5].map((levelDb) => ({
    ...LINE,
    loudest: { levelDb, volts: 2, limit: 'travel' as const }
  }));
  expect(changeOf(loud, louder, 'loudest')).toMatchObject({ words: '0.3 dB louder at most', idle: false });
  expect(changeOf(louder, loud, 'loudest').words).toBe('0.3 dB softer at most');
  for (const by of MEASURE_NAMES)
    expect(changeOf(loud, loud, by)).toEqual({ size: 0, idle: true, words: 'nothing' });
});

test('a small change of no measure but the price is said not to concern it', () => {
  expect(MEASURE_NAMES.filter((by) => noChangeWords(by) !== null)).toEqual(['price']);
});

test('a small change of depth is worth 12 dB an octave, and says what was changed by how much', () => {
  const octave = { ...LINE, measures: { ...LINE.measures, reachesDown: 2 * LINE.measures.reachesDown! } };
  expect(changeOf(LINE, octave, 'deep')).toEqual({ size: 12, idle: false, words: 'reaches 100 % less low' });
  expect(CHANGE_WORDS).toEqual({
    length: '1 mm longer',
    width: '1 mm wider',
    height: '1 mm higher',
    depth: '1 mm deeper',
    place: '1 mm off its place',
    'over the board': '1 mm higher over the board',
    gap: 'a gap of 0.1 mm round the frame',
    'resonance up': 'resonance 15 % higher',
    'resonance down': 'resonance 15 % lower'
  });
});

test('what does not fit is told by speaker, the same reason of several ways once', () => {
  const of = (speaker: string, way: Way, why: string, remedy: string | null = null) => ({
    speaker,
    way,
    why,
    remedy
  });
  const cut = 'the roof may not be cut';
  expect(
    misfitWords([
      of('oval', 'roof', cut),
      of('oval', 'roof box', cut),
      of('round', 'box up', 'any', '1 mm off the top of “motor”')
    ])
  ).toEqual([
    {
      speaker: 'oval',
      fits: 'in a box inside the body and in a box that looks down and in the floor',
      reasons: [{ ways: 'in the roof and in a box under the roof', why: cut, remedy: null }]
    },
    {
      speaker: 'round',
      fits: 'in the roof and in a box under the roof and in a box that looks down and in the floor',
      reasons: [{ ways: 'in a box inside the body', why: 'any', remedy: '1 mm off the top of “motor”' }]
    }
  ]);
  const all = misfitWords(WAYS.map((way) => of('oval', way, way)));
  expect(all).toMatchObject([{ speaker: 'oval', fits: null }]);
  expect(all[0].reasons).toHaveLength(WAYS.length);
});

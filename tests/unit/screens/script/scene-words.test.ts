import { expect, test } from 'vitest';
import { PLACES } from '../../../../src/lib/acoustics/listener.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { missingWords, planWords, shownWords } from '../../../../src/lib/screens/script/scene-words.js';
import { sceneOf, words } from '../../../helpers/scenes.js';

const demo = demoBench();

test('a scene says what is seen of it, and where one listens', () => {
  expect(shownWords(words('a'))).toBe('words');
  expect(shownWords(sceneOf(demo, 0))).toBe('curves');
  expect(shownWords(sceneOf(demo, 0, { shows: 'tone', frequency: 300 }))).toBe('a tone, 300 Hz');
  expect(shownWords(sceneOf(demo, 0, { shows: 'puff' }))).toBe('one push of the cone');
  expect(shownWords(sceneOf(demo, 0, { heard: { listener: PLACES.layout } }))).toBe('curves; on the layout');
});

test('what is gone is told by its name', () => {
  const scene = sceneOf(demo, 2, { heard: { sound: { kind: 'recording', name: 'chuffs.wav' } } });
  expect(missingWords(scene, [])).toEqual([]);
  expect(missingWords(scene, ['speaker', 'recording'])).toEqual([
    'The speaker of “Cab body” is not on this bench any more: what was heard before goes on.',
    'The recording “chuffs.wav” is not open: the sound from before goes on.'
  ]);
});

test('the time stands against the plan of the present scene', () => {
  expect(planWords(59, 60, 90)).toBe('0:01 ahead of the plan');
  expect(planWords(60, 60, 90)).toBe('as planned');
  expect(planWords(90, 60, 90)).toBe('as planned');
  expect(planWords(165, 60, 90)).toBe('1:15 behind the plan');
});

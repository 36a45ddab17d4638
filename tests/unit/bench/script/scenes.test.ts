import { expect, test } from 'vitest';
import {
  withoutScene,
  withSceneChanged,
  withSceneMoved,
  withScenes
} from '../../../../src/lib/bench/script/scenes.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { writeBenchFile } from '../../../../src/lib/file/write-bench-file.js';
import { sceneOf, words } from '../../../helpers/scenes.js';

const demo = demoBench();
const three = { ...demo, script: [words('a'), sceneOf(demo, 1, { name: 'b', frequency: 400 }), words('c')] };
const names = ({ script }: { script?: { name: string }[] }): string =>
  (script ?? []).map(({ name }) => name).join('');

test('scenes are put in at a place, moved and taken out; without one there is no script', () => {
  expect(names(withScenes(demo, [words('x')], 0))).toBe('x');
  expect(names(withScenes(three, [words('x'), words('y')], 1))).toBe('axybc');
  expect(names(withSceneMoved(three, 0, 2))).toBe('bca');
  expect(names(withSceneMoved(three, 2, 0))).toBe('cab');
  expect(names(withoutScene(three, 1))).toBe('ac');
  expect(withoutScene({ ...demo, script: [words('a')] }, 0)).toEqual(demo);
});

test('a script that is full says so', () => {
  const full = { ...demo, script: Array.from({ length: 60 }, () => words('a')) };
  expect(() => withScenes(full, [words('b')], 60)).toThrow(
    new RangeError('a script holds 60 scenes: delete one first')
  );
});

test('what is changed of a scene leaves the rest of it', () => {
  const changed = withSceneChanged(three, 1, { name: 'd', minutes: 2 });
  expect(changed.script![1]).toEqual({ ...three.script[1], name: 'd', minutes: 2 });
  expect(changed.script![0]).toBe(three.script[0]);
  expect(withSceneChanged(three, 1, { frequency: undefined }).script![1]).not.toHaveProperty('frequency');
});

test.each([
  [0, { name: ' ' }, 'a scene needs a name'],
  [0, { minutes: 0 }, 'the time of a scene must be within 0.1 … 60 minutes, got 0'],
  [1, { frequency: 30_000 }, 'the tone must be within 20 … 20000 Hz, got 30000'],
  [0, { text: 'a\n'.repeat(8) }, 'the hall reads at most 8 lines, got 9'],
  [0, { text: 'a'.repeat(321) }, 'the text of a scene may have 320 signs, got 321'],
  [0, { text: ' ' }, 'a scene must have a text, since it shows nothing else'],
  [0, { shows: 'curves' as const }, 'a scene must say what is heard'],
  [0, { notes: 'a'.repeat(4001) }, 'the words of a scene may have 4000 signs, got 4001']
])('what a scene cannot be is refused: %i %j', (at, change, sentence) => {
  expect(() => withSceneChanged(three, at, change)).toThrow(new RangeError(sentence));
});

test('whatever is accepted can be written', () => {
  for (const change of [
    { name: 'x'.repeat(80) },
    { text: 'a\n'.repeat(7) },
    { minutes: 60 },
    { notes: 'a\nb' }
  ])
    expect(() => writeBenchFile(withSceneChanged(three, 0, change))).not.toThrow();
});

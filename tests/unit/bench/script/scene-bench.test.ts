import { expect, test } from 'vitest';
import { PLACES } from '../../../../src/lib/acoustics/listener.js';
import { missingOf, sceneBench, type SceneWays } from '../../../../src/lib/bench/script/scene-bench.js';
import type { BenchFile } from '../../../../src/lib/file/bench-file.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import type { Scene } from '../../../../src/lib/file/scene.js';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import { sceneOf, words } from '../../../helpers/scenes.js';

const demo = demoBench();
const ways: SceneWays = { isOpen: () => true, same: (value) => value };
const small: Scene = sceneOf(demo, 1, {
  heard: {
    setup: {
      ...demo.setups[1],
      mount: { kind: 'plate', shape: 'rectangle', length: 0.06, width: 0.06, offset: [0, 0] }
    },
    sound: usualSound('bell'),
    listener: PLACES.layout,
    model: 'wave',
    sameLoudness: true
  }
});
const of = (...script: Scene[]): BenchFile => ({ ...demo, script });

test('a scene hears its mount in the place of the one of its name, its sound, its place, its model and its loudness', () => {
  const shown = sceneBench(of(small), 0, ways);
  expect(shown.setups.map(({ name }) => name)).toEqual(demo.setups.map(({ name }) => name));
  expect(shown.setups[1]).toBe(small.heard!.setup);
  expect(shown.setups[2]).toBe(demo.setups[2]);
  expect(shown).toMatchObject({ sound: { kind: 'bell' }, listener: PLACES.layout });
  expect(shown.view).toMatchObject({ heard: 1, measuredAgainst: 0, model: 'wave', sameLoudness: true });
});

test('a mount that the bench has not stands beside the others, where there is room; never where levels are written against', () => {
  const own = { ...small.heard!.setup, name: 'Another' };
  const scene: Scene = { ...small, heard: { ...small.heard!, setup: own } };
  const beside = sceneBench(of(scene), 0, ways);
  expect([beside.setups.length, beside.view.heard, beside.setups[4]]).toEqual([5, 4, own]);
  const full = {
    ...of(scene),
    setups: [
      ...demo.setups,
      ...demo.setups.slice(2).map((setup) => ({ ...setup, name: `${setup.name} again` }))
    ]
  };
  expect(sceneBench(full, 0, ways)).toMatchObject({ view: { heard: 5 } });
  const against = { ...full, view: { ...full.view, measuredAgainst: 5 } };
  expect(sceneBench(against, 0, ways)).toMatchObject({ view: { heard: 0, measuredAgainst: 5 } });
});

test('words go on with what was heard before them, and with the bench where nothing was', () => {
  const work = of(words('first'), small, words('then'), words('and then'));
  expect(sceneBench(work, 0, ways)).toBe(work);
  for (const at of [2, 3]) expect(sceneBench(work, at, ways)).toEqual(sceneBench(work, 1, ways));
});

test('a speaker or a recording that is gone is told, and what was heard before it goes on', () => {
  const gone = sceneOf(demo, 2, { heard: { setup: { ...demo.setups[2], speaker: 'sold' } } });
  const silent = sceneOf(demo, 3, { heard: { sound: { kind: 'recording', name: 'chuffs.wav' } } });
  const work = of(small, gone, silent);
  const isOpen: SceneWays['isOpen'] = ({ kind }) => kind !== 'recording';
  expect(work.script!.map((scene) => missingOf(scene, work, { isOpen }))).toEqual([
    [],
    ['speaker'],
    ['recording']
  ]);
  const second = sceneBench(work, 1, { ...ways, isOpen });
  expect([second.setups[second.view.heard], second.sound, second.listener]).toEqual([
    small.heard!.setup,
    demo.sound,
    demo.listener
  ]);
  const third = sceneBench(work, 2, { ...ways, isOpen });
  expect([third.view.heard, third.sound]).toEqual([3, demo.sound]);
  // Nothing was heard before: the bench goes on.
  const first = sceneBench(of(gone, silent), 0, { ...ways, isOpen });
  expect([first.view.heard, first.setups]).toEqual([0, demo.setups]);
});

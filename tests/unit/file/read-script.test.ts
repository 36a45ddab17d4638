import { expect, test } from 'vitest';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import type { Scene } from '../../../src/lib/file/scene.js';
import { writeBenchFile } from '../../../src/lib/file/write-bench-file.js';

const bench = demoBench();
const TEXT: Scene = { name: 'Why', minutes: 0.5, shows: 'text', text: 'Air\ngoes round', notes: 'slowly' };
const TONE: Scene = {
  name: 'The plate',
  minutes: 1,
  shows: 'tone',
  heard: {
    setup: bench.setups[1],
    sound: bench.sound,
    listener: bench.listener,
    model: 'wave',
    sameLoudness: true
  },
  frequency: 400,
  notes: ''
};

/** What a bench with one scene is refused for; null where it is read. */
function refused(change: Record<string, unknown>, scene: Scene = TONE): string | null {
  try {
    readBenchFile(JSON.stringify({ ...bench, script: [{ ...scene, ...change }] }));
    return null;
  } catch (error) {
    return (error as Error).message;
  }
}

test('scenes are kept as they are', () => {
  const file = { ...bench, script: [TEXT, TONE] };
  expect(readBenchFile(writeBenchFile(file)).script).toEqual(file.script);
});

test('what a scene does not say is filled in, its mount too', () => {
  const { heard } = TONE;
  const script = [
    {
      name: 'a',
      shows: 'curves',
      heard: { setup: { mount: { kind: 'free' } }, sound: heard!.sound, listener: {} }
    }
  ];
  expect(readBenchFile(JSON.stringify({ ...bench, script })).script).toEqual([
    {
      name: 'a',
      minutes: 1,
      shows: 'curves',
      heard: {
        setup: { name: 'Free air', speaker: 'oval', mount: { kind: 'free' }, turn: 0, notes: '' },
        sound: heard!.sound,
        listener: { angleDeg: 0, plane: 'width' },
        model: 'wave',
        sameLoudness: false
      },
      notes: ''
    }
  ]);
});

test('a scene outlives the speaker of its mount', () => {
  const setup = { ...TONE.heard!.setup, speaker: 'sold' };
  expect(refused({ heard: { ...TONE.heard, setup } })).toBeNull();
});

test.each([
  [{ shows: 'film' }, 'script[0].shows must be "curves" or "tone" or "puff" or "text", got "film"'],
  [{ minutes: 61 }, 'script[0].minutes must be within 0.1 … 60 minutes, got 61'],
  [{ minutes: 0 }, 'script[0].minutes must be within 0.1 … 60 minutes, got 0'],
  [{ frequency: 5 }, 'script[0].frequency must be within 20 … 20000 Hz, got 5'],
  [{ name: ' ' }, 'script[0].name must not be empty, got " "'],
  [{ heard: undefined }, 'script[0] must say what is heard'],
  [{ shows: 'text' }, 'script[0] must have a text, since it shows nothing else'],
  [{ shows: 'text', text: ' \n ' }, 'script[0] must have a text, since it shows nothing else'],
  [
    { heard: { ...TONE.heard, sound: { kind: 'recording', name: 'a.wav', from: 3, until: 2 } } },
    'script[0].heard.sound.until must be later than script[0].heard.sound.from, 3 s, got 2'
  ]
])('what a scene cannot be is refused: %j', (change, sentence) => {
  expect(refused(change)).toBe(sentence);
});

test('a text is of at most 8 lines and 320 signs', () => {
  expect(refused({ text: 'a\n'.repeat(7) }, TEXT)).toBeNull();
  expect(refused({ text: 'a\n'.repeat(8) }, TEXT)).toMatch(/^script\[0\]\.text must be at most 8 lines/);
  expect(refused({ text: 'a'.repeat(320) }, TEXT)).toBeNull();
  expect(refused({ text: 'a'.repeat(321) }, TEXT)).toMatch(/must be at most 320 characters long/);
});

test('more than sixty scenes are refused', () => {
  const read = (scenes: number) => () =>
    readBenchFile(JSON.stringify({ ...bench, script: Array<Scene>(scenes).fill(TEXT) }));
  expect(read(60)).not.toThrow();
  expect(read(61)).toThrow('script must be at most 60');
});

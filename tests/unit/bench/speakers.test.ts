import { expect, test } from 'vitest';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { Bench } from '../../../src/lib/bench/bench.svelte.js';
import {
  hasSpeaker,
  mountsWith,
  speakersToChoose,
  withCopy,
  withoutSpeaker,
  withSpeaker,
  withTaken
} from '../../../src/lib/bench/speakers.js';
import { BENCH_FILE_LIMITS } from '../../../src/lib/file/bench-file-limits.js';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import { writeBenchFile } from '../../../src/lib/file/write-bench-file.js';

const file = demoBench();

test('a speaker gets other values, and the mounts that have it follow', () => {
  const bench = new Bench(file);
  const speaker = { ...SPEAKERS.oval, name: 'mine' };
  expect(bench.revise((now) => withSpeaker(now, 'oval', speaker))).toBe(null);
  expect(bench.stands.map(({ installation }) => installation.speaker.name)).toEqual(Array(4).fill('mine'));
  bench.undo();
  expect(bench.heard.installation.speaker.name).toBe('28 × 40 mm');
});

test('what cannot be is refused in one sentence and changes nothing', () => {
  const bench = new Bench(file);
  const heavy = { ...SPEAKERS.oval, motor: { ...SPEAKERS.oval.motor, mms: 0 } };
  expect(bench.revise((now) => withSpeaker(now, 'oval', heavy))).toMatch(
    /^moving mass must be within .* g, got 0$/
  );
  expect(bench.file).toBe(file);
  expect(bench.canUndo).toBe(false);
});

test('one without motor values is checked by its sizes', () => {
  const { motor, ...bare } = SPEAKERS.oval;
  expect(motor).toBeDefined();
  expect(withSpeaker(file, 'bare', bare).speakers.bare).toBe(bare);
  expect(() => withSpeaker(file, 'bare', { ...bare, depth: 0 })).toThrow(/^speaker depth must be within/);
});

test('a copy has a name and a key of its own, and the file with it is read again', () => {
  const once = withCopy(file, 'oval');
  const twice = withCopy(once.file, once.key);
  expect([once.key, twice.key]).toEqual(['oval-2', 'oval-3']);
  expect(twice.file.speakers['oval-3'].name).toBe('28 × 40 mm again again');
  expect(readBenchFile(writeBenchFile(twice.file)).speakers['oval-3'].motor).toEqual(SPEAKERS.oval.motor);
  const long = withSpeaker(file, 'k'.repeat(80), { ...SPEAKERS.oval, name: 'n'.repeat(80) });
  const copied = withCopy(long, 'k'.repeat(80));
  expect(copied.file.speakers[copied.key].name).toHaveLength(80);
  expect(() => readBenchFile(writeBenchFile(copied.file))).not.toThrow();
});

test('one of the sizes that come with the program is copied into the bench, under another key than theirs', () => {
  const { key, file: copied } = withCopy(file, 'round-28');
  expect(key).toBe('round-2');
  expect(Object.keys(SPEAKERS)).not.toContain(key);
  expect(copied.speakers['round-28']).toBeUndefined();
});

test('only one that no mount has is deleted', () => {
  const { key, file: copied } = withCopy(file, 'oval');
  expect(mountsWith(copied, 'oval')).toEqual([0, 1, 2, 3]);
  expect(mountsWith(copied, key)).toEqual([]);
  expect(() => withoutSpeaker(copied, 'oval')).toThrow(
    'the speaker “28 × 40 mm” is in a mount: give that another one first'
  );
  expect(withoutSpeaker(copied, key)).toEqual(file);
});

test('speakers from another bench get keys of their own', () => {
  const other = { ...SPEAKERS.oval, name: 'another oval' };
  const taken = withTaken(file, { oval: other, mine: SPEAKERS['round-36'] });
  expect(Object.keys(taken.speakers)).toEqual(['oval', 'oval-2', 'mine']);
  expect(taken.speakers.oval).toBe(file.speakers.oval);
  expect(taken.speakers['oval-2']).toBe(other);
  expect([hasSpeaker(file, other), hasSpeaker(taken, other), hasSpeaker(file, SPEAKERS['round-36'])]).toEqual(
    [false, true, true]
  );
});

test('a bench that is full takes no more, and says so', () => {
  const many = Object.fromEntries(
    Array.from({ length: BENCH_FILE_LIMITS.speakers }, (_, i) => [`s${i}`, SPEAKERS.oval])
  );
  const full = { ...file, speakers: many };
  expect(() => withCopy(full, 's0')).toThrow('a bench holds 64 speakers: delete one first');
  expect(() => withTaken(full, { one: SPEAKERS.oval })).toThrow(/64 speakers/);
  // One that is there already can still be changed.
  expect(withSpeaker(full, 's0', SPEAKERS['round-23']).speakers.s0).toBe(SPEAKERS['round-23']);
});

test('one chooses among the nine and what the bench has made of them', () => {
  const mine = { ...SPEAKERS.oval, name: 'mine' };
  const choices = speakersToChoose({ speakers: { oval: mine, own: mine } });
  expect(Object.keys(choices)).toEqual([...Object.keys(SPEAKERS), 'own']);
  expect(choices.oval).toBe(mine);
});

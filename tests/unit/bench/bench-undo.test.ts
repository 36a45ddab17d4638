import type { MovingSound } from '../../../src/lib/sounds/kinds.js';
import { usualSound } from '../../../src/lib/sounds/roster.js';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { Bench, MAX_SETUPS } from '../../../src/lib/bench/bench.svelte.js';
import { withAmplifier, withDrive } from '../../../src/lib/bench/circumstances.js';
import { withCopy, withoutSpeaker, withSpeaker } from '../../../src/lib/bench/speakers.js';
import type { BenchFile } from '../../../src/lib/file/bench-file.js';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { readBenchFile } from '../../../src/lib/file/read-bench-file.js';
import { writeBenchFile } from '../../../src/lib/file/write-bench-file.js';
import { workIn } from '../../../src/lib/bench/keep/same-work.js';
import type { KnobKey } from '../../../src/lib/acoustics/mounts/every-knob.js';
import { MOUNT_DRAWER, setupOf } from '../../../src/lib/screens/shelf/mount-drawer.js';
import { arbitraryBench } from '../../helpers/arbitrary-bench.js';

interface Edit {
  says: string;
  do(bench: Bench): unknown;
}

/** What is remembered is the printed edit, so that a failing sequence reads as one. */
const edit = (says: string, deed: Edit['do']): Edit => ({ says, do: deed, toString: () => says }) as Edit;

const KNOBS: KnobKey[] = [
  'length',
  'width',
  'height',
  'depth',
  'diameter',
  'offsetLength',
  'offsetWidth',
  'above'
];
const length = fc.oneof(
  fc.double({ min: -0.1, max: 0.3, noNaN: true }),
  fc.constantFrom(NaN, Infinity, -Infinity, 0, -0, 1e9)
);
const step = fc.constantFrom(1 as const, -1 as const);

const change: fc.Arbitrary<Edit> = fc.oneof(
  fc.integer({ min: -1, max: 7 }).map((i) => edit(`hear ${i}`, (b) => b.hear(i))),
  step.map((by) => edit(`step ${by}`, (b) => b.step(by))),
  fc
    .tuple(fc.constantFrom(...KNOBS), length)
    .map(([key, value]) => edit(`turn ${key} to ${value}`, (b) => b.turnKnob(key, value))),
  fc
    .tuple(fc.constantFrom(...KNOBS), length)
    .filter(([, value]) => !Number.isNaN(value))
    .map(([key, value]) => edit(`push ${key} to ${value}`, (b) => b.pushKnob(key, value))),
  fc
    .constantFrom(...MOUNT_DRAWER)
    .map((mount) => edit(`add ${mount.name}`, (b) => b.add(setupOf(mount, b.heard.setup.speaker)))),
  fc
    .constantFrom(...MOUNT_DRAWER)
    .map(({ name, mount }) => edit(`make it a ${name}`, (b) => b.setMount(mount))),
  fc
    .constantFrom('hand' as const, 'layout' as const)
    .map((place) => edit(`listen ${place}`, (b) => b.listenOn(place))),
  fc
    .constantFrom('up' as const, 'down' as const)
    .map((facing) => edit(`face ${facing}`, (b) => b.setFacing(facing))),
  fc
    .record({
      at: fc.tuple(fc.constantFrom(-0.05, 0, 0.05), fc.constantFrom(-0.03, 0, 0.03)),
      reversed: fc.boolean(),
      wiring: fc.constantFrom('parallel' as const, 'series' as const)
    })
    .map((second) => edit(`second ${JSON.stringify(second)}`, (b) => b.setSecond(second))),
  fc.constant(edit('no second', (b) => b.setSecond(null))),
  fc
    .constantFrom(0.5, 2)
    .map((volts) => edit(`drive ${volts}`, (b) => b.revise((file) => withDrive(file, { volts }), 'drive'))),
  fc
    .constantFrom(4, 8)
    .map((leastLoad) =>
      edit(`amplifier ${leastLoad}`, (b) =>
        b.revise((file) => withAmplifier(file, { leastLoad, power: 1 }), 'amplifier')
      )
    ),
  fc.constantFrom(0 as const, 90 as const).map((turn) => edit(`lay it ${turn}`, (b) => b.setTurn(turn))),
  fc.constant(edit('copy', (b) => b.duplicate())),
  fc.constant(edit('take off', (b) => b.remove())),
  step.map((by) => edit(`move ${by}`, (b) => b.move(by))),
  fc.string({ maxLength: 100 }).map((name) => edit(`rename ${JSON.stringify(name)}`, (b) => b.rename(name))),
  fc
    .string({ unit: 'grapheme', maxLength: 40 })
    .map((notes) => edit(`note ${JSON.stringify(notes)}`, (b) => b.setNotes(notes))),
  fc.boolean().map((on) => edit(`inches ${on}`, (b) => b.setInches(on))),
  fc.boolean().map((on) => edit(`same loudness ${on}`, (b) => b.setSameLoudness(on))),
  fc
    .integer({ min: 0, max: 8 })
    .map((notch) =>
      edit(`notch ${notch}`, (b) => b.setSound({ ...(usualSound('diesel') as MovingSound), notch }))
    ),
  fc
    .oneof(fc.double(), fc.integer({ min: -45, max: 65 }))
    .map((t) => edit(`air ${t}`, (b) => b.setTemperature(t))),
  fc
    .tuple(fc.constantFrom(...Object.entries(SPEAKERS)), fc.boolean())
    .map(([[key, speaker], everywhere]) =>
      edit(`speaker ${key}, everywhere ${everywhere}`, (b) => b.setSpeaker(key, speaker, everywhere))
    ),
  fc
    .constantFrom(...Object.keys(SPEAKERS))
    .map((key) => edit(`copy speaker ${key}`, (b) => b.revise((file) => withCopy(file, key).file))),
  fc
    .tuple(fc.nat(3), fc.constantFrom(-1, 0.0003, 0.002))
    .map(([i, mms]) =>
      edit(`moving mass ${mms} for speaker ${i}`, (b) => b.revise((file) => heavier(file, i, mms)))
    ),
  fc
    .nat(3)
    .map((i) =>
      edit(`delete speaker ${i}`, (b) =>
        b.revise((file) => withoutSpeaker(file, Object.keys(file.speakers)[i] ?? b.heard.setup.speaker))
      )
    ),
  fc.nat(5).map((i) =>
    edit(`measure against ${i}`, (b) => {
      if (i < b.file.setups.length) b.measureAgainst(i);
    })
  ),
  arbitraryBench.map((file) => edit('open another bench', (b) => b.open(file)))
);

function heavier(file: BenchFile, i: number, mms: number): BenchFile {
  const key = Object.keys(file.speakers)[i];
  if (key === undefined) return file;
  return withSpeaker(file, key, { ...file.speakers[key], motor: { ...SPEAKERS.oval.motor, mms } });
}

const edits = fc.array(change, { minLength: 1, maxLength: 25 });

/** Undoes all there is to undo; the number of steps. */
function undoAll(bench: Bench): number {
  let steps = 0;
  for (; bench.canUndo; steps++) bench.undo();
  return steps;
}

test('any sequence of edits, undone, gives the bench back, and redone, the work', () => {
  fc.assert(
    fc.property(edits, (sequence) => {
      const bench = new Bench(demoBench());
      for (const one of sequence) one.do(bench);
      const after = workIn(bench.file);
      const steps = undoAll(bench);
      expect(workIn(bench.file)).toBe(workIn(demoBench()));
      for (let i = 0; i < steps; i++) bench.redo();
      expect(bench.canRedo).toBe(false);
      expect(workIn(bench.file)).toBe(after);
    }),
    { numRuns: 120 }
  );
}, 60_000);

test('one edit, undone, gives the very value back that stood before it', () => {
  fc.assert(
    fc.property(edits, change, (sequence, last) => {
      const bench = new Bench(demoBench());
      for (const one of sequence) one.do(bench);
      // An edit that joins nothing before it.
      bench.undo();
      bench.redo();
      const [before, could] = [bench.file, bench.canUndo];
      last.do(bench);
      if (workIn(bench.file) !== workIn(before)) {
        bench.undo();
        expect(bench.file).toBe(before);
        expect(bench.canUndo).toBe(could);
      }
    }),
    { numRuns: 80 }
  );
}, 60_000);

test('after any edits, refused or not, the bench can be written and read, and its places are places', () => {
  fc.assert(
    fc.property(edits, (sequence) => {
      const bench = new Bench(demoBench());
      for (const one of sequence) {
        const before = bench.file;
        const answer = one.do(bench);
        // Where an edit is refused, it says why, and nothing has changed.
        if (typeof answer === 'string') {
          expect(answer.length).toBeGreaterThan(5);
          expect(bench.file).toBe(before);
        }
        const { file } = bench;
        expect(readBenchFile(writeBenchFile(file))).toEqual(file);
        expect(file.setups.length).toBeGreaterThanOrEqual(1);
        expect(file.setups.length).toBeLessThanOrEqual(MAX_SETUPS);
        expect(file.setups[file.view.heard]).toBeDefined();
        expect(file.setups[file.view.measuredAgainst]).toBeDefined();
      }
    }),
    { numRuns: 80 }
  );
}, 60_000);

test('the loss inside a shell is typed, kept in the file, undone, and refused beyond its limits', () => {
  const bench = new Bench();
  bench.hear(2);
  const { mount } = bench.heard.setup;
  if (mount.kind !== 'shell') throw new Error('the demo’s third mount is its shell');
  expect(bench.setMount({ ...mount, loss: 0.02 }, 'loss')).toBeNull();
  const kept = readBenchFile(writeBenchFile(bench.file));
  expect(kept.setups[2].mount).toEqual({ ...mount, loss: 0.02 });
  expect(bench.setMount({ ...mount, loss: 0.5 }, 'loss')).toBe(
    'loss inside the shell must be within 0 … 20 %, got 50'
  );
  expect(bench.heard.setup.mount).toEqual({ ...mount, loss: 0.02 });
  bench.undo();
  expect(bench.heard.setup.mount).toEqual(mount);
});

import { expect, test } from 'vitest';
import type { PlateMount } from '../../../src/lib/acoustics/mounts/mount.js';
import { Bench } from '../../../src/lib/bench/bench.svelte.js';
import { Growth } from '../../../src/lib/bench/growth.svelte.js';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { DrivenFrames } from '../../helpers/driven-frames.js';

/** The demonstration bench: free air is heard, the plate stands second. */
function growth(): { bench: Bench; growth: Growth; clock: DrivenFrames; sizes: () => number[] } {
  const bench = new Bench(demoBench());
  const clock = new DrivenFrames();
  return {
    bench,
    clock,
    growth: new Growth(bench, clock),
    sizes: () => {
      const { length, width } = plate(bench);
      return [length, width];
    }
  };
}

function plate(bench: Bench): PlateMount & { shape: 'rectangle' } {
  const { mount } = bench.file.setups[1];
  if (mount.kind !== 'plate' || mount.shape !== 'rectangle') throw new Error(mount.kind);
  return mount;
}

const mm = (metres: number): number => Math.round(metres * 10000) / 10;

test('hears the first plate and lets it grow from the rim to the knobs’ ends in six seconds', () => {
  const { bench, growth: grown, clock, sizes } = growth();
  grown.start(false);
  expect(bench.heard.index).toBe(1);
  const rim = bench.heard.setup.speaker;
  const { frame } = bench.file.speakers[rim];
  clock.at(0);
  const [least] = sizes();
  expect(least).toBeCloseTo(frame.shape === 'round' ? frame.diameter : frame.length, 12);
  clock.at(3000);
  const [half] = sizes();
  clock.at(5999);
  expect(grown.growing).toBe(true);
  clock.at(6000);
  expect(grown.growing).toBe(false);
  expect(sizes().map(mm)).toEqual([200, 200]);
  expect(half).toBeCloseTo((least + 0.2) / 2, 12);
  expect(clock.waiting).toBe(0);
});

test('begins at the first frame there is, however late that comes', () => {
  const { growth: grown, clock, sizes } = growth();
  grown.start(false);
  clock.at(70_000);
  const [first] = sizes();
  expect(first, 'far from its end').toBeLessThan(0.05);
  clock.at(71_500);
  expect(sizes()[0]).toBeCloseTo(first + (0.2 - first) / 4, 12);
});

test('each frame is larger than the one before, and the speaker sits in the middle', () => {
  const { bench, growth: grown, clock, sizes } = growth();
  grown.start(false);
  let last = 0;
  for (let now = 0; now <= 6000; now += 100) {
    clock.at(now);
    expect(sizes()[0]).toBeGreaterThan(last);
    expect(plate(bench).offset.map(Math.abs)).toEqual([0, 0]);
    last = sizes()[0];
  }
});

test('in steps, where no motion is wanted: six sizes and the end, and nothing between', () => {
  const { growth: grown, clock, sizes } = growth();
  grown.start(true);
  const seen = new Set<number>();
  for (let now = 0; now <= 6000; now += 50) {
    clock.at(now);
    seen.add(mm(sizes()[0]));
  }
  expect(seen.size).toBe(7);
});

test('stops where it is, holds the headroom while it grows, and asks for no frame any more', () => {
  const { bench, growth: grown, clock, sizes } = growth();
  grown.start(false);
  clock.at(0);
  clock.at(2000);
  expect(bench.dragging).toBe(true);
  grown.stop();
  const stopped = sizes();
  expect([grown.growing, bench.dragging, clock.waiting]).toEqual([false, false, 0]);
  clock.at(4000);
  expect(sizes()).toEqual(stopped);
});

test('puts back the sizes from before it grew, though it was started twice', () => {
  const { bench, growth: grown, clock } = growth();
  const before = plate(bench);
  grown.start(false);
  clock.at(0);
  clock.at(1000);
  grown.start(false);
  clock.at(1100);
  clock.at(4000);
  bench.hear(0);
  grown.putBack();
  expect(plate(bench)).toEqual(before);
  expect([bench.heard.index, grown.growing, grown.before]).toEqual([1, false, null]);
});

test('does nothing where no plate stands on the shelf', () => {
  const file = demoBench();
  const bench = new Bench({
    ...file,
    setups: file.setups.filter(({ mount }) => mount.kind !== 'plate'),
    view: { ...file.view, heard: 0, measuredAgainst: 0 }
  });
  const clock = new DrivenFrames();
  const grown = new Growth(bench, clock);
  grown.start(false);
  expect([grown.growing, clock.waiting, grown.before]).toEqual([false, 0, null]);
});

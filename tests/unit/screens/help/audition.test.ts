import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { Audition, TURN } from '../../../../src/lib/screens/help/audition.svelte.js';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function at(heard: number, playing: boolean, silenced = false) {
  const bench = new Bench();
  bench.hear(heard);
  const sound = {
    playing,
    silenced,
    stop: () => void (sound.playing = false),
    silence: (on: boolean) => void (sound.silenced = on)
  };
  return { bench, sound, audition: new Audition(bench, sound) };
}

describe('Audition', () => {
  it('hears the mount of a step and puts back what was heard before the first one', () => {
    const { bench, sound, audition } = at(3, true);
    audition.hear(0, ['free air']);
    expect([bench.heard.index, audition.step]).toEqual([0, 0]);
    audition.hear(3, ['shell']);
    expect([bench.heard.index, audition.step]).toEqual([2, 3]);
    audition.stop();
    expect([bench.heard.index, audition.step, sound.playing]).toEqual([3, null, true]);
  });

  it('lets two mounts take turns until another step or the end', () => {
    const { bench, audition } = at(3, true);
    audition.hear(1, ['free air', 'plate']);
    const heard = [bench.heard.index];
    for (let i = 0; i < 3; i++) {
      vi.advanceTimersByTime(TURN * 1000);
      heard.push(bench.heard.index);
    }
    expect(heard).toEqual([0, 1, 0, 1]);
    audition.hear(4, ['box']);
    vi.advanceTimersByTime(5 * TURN * 1000);
    expect(bench.heard.index).toBe(3);
    audition.hear(1, ['free air', 'plate']);
    audition.stop();
    vi.advanceTimersByTime(5 * TURN * 1000);
    expect(bench.heard.index).toBe(3);
  });

  it('stops what did not play before and silences again what was silenced', () => {
    const { sound, audition } = at(1, false, true);
    audition.hear(0, ['free air']);
    expect(sound.silenced).toBe(false);
    sound.playing = true;
    audition.stop();
    expect([sound.playing, sound.silenced]).toEqual([false, true]);
  });

  it('changes nothing where the shelf lacks a mount, or where nothing was heard', () => {
    const { bench, sound, audition } = at(1, true);
    bench.remove();
    audition.hear(2, ['plate']);
    expect(audition.step).toBeNull();
    const { index } = bench.heard;
    audition.stop();
    expect([bench.heard.index, sound.playing]).toEqual([index, true]);
  });

  it('is heard over the board where the step says so, and where one listened before with the next and at the end', () => {
    const { bench, audition } = at(0, true);
    const board = () => bench.file.listener.board ?? false;
    audition.hear(5, ['plate', 'box'], true);
    expect([bench.heard.index, board()]).toEqual([1, true]);
    audition.hear(0, ['free air']);
    expect(board()).toBe(false);
    audition.hear(5, ['plate', 'box'], true);
    audition.stop();
    expect([bench.heard.index, board()]).toEqual([0, false]);
  });

  it('makes no step in the history', () => {
    const { bench, audition } = at(1, true);
    audition.hear(0, ['free air']);
    audition.stop();
    expect(bench.canUndo).toBe(false);
  });
});

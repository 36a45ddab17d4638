import { describe, expect, it } from 'vitest';
import { Bench } from '../../../src/lib/bench/bench.svelte.js';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { lengthFrom } from '../../../src/lib/format/length-words.js';

function hearing(index: number): Bench {
  const bench = new Bench(demoBench());
  bench.hear(index);
  bench.setInches(true);
  return bench;
}

const PLATE = 1;
const SHELL = 2;

describe('a size that is typed in inches', () => {
  it('is refused in inches', () => {
    // The knob of a plate goes to 200 mm, which is 7.874 in: 7 7/8 to the nearest 1/64 (arithmetic).
    expect(hearing(PLATE).turnKnob('width', lengthFrom('9', true))).toMatch(/… 7 7\/8 in, got 9 in$/);
  });

  it('may be an end of the range as it is written there', () => {
    const bench = hearing(PLATE);
    expect(bench.turnKnob('width', lengthFrom('7 7/8', true))).toBeNull();
    expect(bench.heard.setup.mount).toMatchObject({ width: 0.2 });
  });

  it('is refused in inches by what the speaker needs, too', () => {
    const bench = hearing(SHELL);
    const mount = bench.heard.setup.mount;
    if (mount.kind !== 'shell') throw new Error('the third mount of the demo is a shell');
    expect(bench.setMount({ ...mount, width: 0.0254 / 2 })).toContain('(0.5 in wide inside)');
  });
});

describe('the height over the board', () => {
  function onLayout(index: number): Bench {
    const bench = hearing(index);
    bench.setInches(false);
    bench.listenOn('layout');
    return bench;
  }

  it('is a knob on the layout alone', () => {
    const bench = hearing(SHELL);
    expect(bench.knobs.some(({ key }) => key === 'above')).toBe(false);
    expect(bench.turnKnob('above', 0.02)).toBeNull();
    expect(bench.heard.setup.above).toBeUndefined();
    bench.listenOn('layout');
    expect(bench.knobs.at(-1)).toMatchObject({ key: 'above', value: 0.014 });
  });

  it('is turned, and refused where a magnet would lie on the board', () => {
    const bench = onLayout(PLATE);
    expect(bench.turnKnob('above', 0.05)).toBeNull();
    expect(bench.heard.installation.board).toEqual({ above: 0.05, facing: 'up' });
    expect(bench.turnKnob('above', 0.004)).toMatch(/^over the board must be within 1\d … 100 mm, got 4 mm$/);
    expect(bench.heard.setup.above).toBe(0.05);
  });

  it('stays where the mount is turned over, unless its magnet would touch the board', () => {
    const bench = onLayout(PLATE);
    bench.turnKnob('above', 0.03);
    expect(bench.setFacing('down')).toBeNull();
    expect(bench.heard.installation.board).toEqual({ above: 0.03, facing: 'down' });
    bench.turnKnob('above', 0.002);
    expect(bench.setFacing('up')).toBeNull();
    expect(bench.heard.installation.board).toEqual({ above: 0.035, facing: 'up' });
    bench.undo();
    expect(bench.heard.installation.board).toEqual({ above: 0.002, facing: 'down' });
  });
});

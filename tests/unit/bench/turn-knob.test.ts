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

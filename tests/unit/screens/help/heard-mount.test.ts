import { describe, expect, it } from 'vitest';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { layoutBench } from '../../../../src/lib/file/layout-bench.js';
import { missingSentence, standOf } from '../../../../src/lib/screens/help/heard-mount.js';

describe('standOf', () => {
  it('finds the four kinds on the demo bench', () => {
    const { stands } = new Bench();
    expect(
      (['free air', 'plate', 'shell', 'box'] as const).map((one) => standOf(one, stands)?.index)
    ).toEqual([0, 1, 2, 3]);
  });
  it('takes no shell with open ends: it does not ring', () => {
    const bench = new Bench();
    bench.hear(2);
    const { mount } = bench.heard.setup;
    if (mount.kind === 'shell') bench.setMount({ ...mount, ends: 'open' });
    expect(standOf('shell', bench.stands)).toBeNull();
  });
  it('finds chassis and leak on the demo on the layout, and takes neither for the bare one', () => {
    const bench = new Bench();
    bench.open(layoutBench());
    expect(
      (['shell', 'chassis', 'box', 'leak'] as const).map((one) => standOf(one, bench.stands)?.index)
    ).toEqual([0, 1, 2, 3]);
    expect(standOf('chassis', new Bench().stands)).toBeNull();
  });
  it('takes no mount that cannot be built', () => {
    const bench = new Bench();
    const broken = bench.stands.map((stand) => ({ ...stand, problem: 'too narrow' }));
    expect(standOf('plate', broken)).toBeNull();
  });
});

describe('missingSentence', () => {
  it('names what is to be put on the shelf, and nothing where all is there', () => {
    const { stands } = new Bench();
    expect(missingSentence(['free air', 'plate'], stands)).toBeNull();
    expect(missingSentence(['free air', 'plate'], stands.slice(2))).toBe(
      'Put the bare speaker and a plate on the shelf to hear this.'
    );
    expect(missingSentence(['shell'], [])).toBe('Put a shell with closed ends on the shelf to hear this.');
  });
});

import { createRawSnippet } from 'svelte';
import { render } from 'svelte/server';
import { describe, expect, it } from 'vitest';
import PolarPicture from '../../../../src/lib/plot/pictures/PolarPicture.svelte';
import WavePicture from '../../../../src/lib/plot/pictures/WavePicture.svelte';

const anglesDeg = Float64Array.from({ length: 73 }, (_, i) => -180 + 5 * i);
const levelDb = anglesDeg.map((angle) => 20 * Math.log10(Math.abs(Math.cos((angle * Math.PI) / 180))));
const polar = {
  anglesDeg,
  levelDb,
  listenerDeg: 60,
  label: 'level round the plate',
  style: 2,
  size: 300
} as const;

describe('PolarPicture, drawn without a browser', () => {
  const { body } = render(PolarPicture, { props: { ...polar, ghost: levelDb, onpick: () => {} } });
  it('has no style attribute and no NaN', () => {
    expect(body).not.toMatch(/\sstyle=|NaN|undefined|Infinity/);
  });
  it('says what it shows: the listener and where it is loudest', () => {
    expect(body).toMatch(
      /role="img" aria-label="level round the plate: −6 dB at the listener, 60°; loudest 0 dB at /
    );
  });
  it('draws the curve solid and the other one dashed', () => {
    expect(body.match(/class="curve[^>]*>/g)).toHaveLength(2);
    expect(body.match(/class="curve[^>]*stroke-dasharray/g)).toHaveLength(1);
  });
  it('has a table behind it, and none when bare or waiting', () => {
    expect(body).toContain('<details');
    for (const props of [
      { ...polar, bare: true },
      { ...polar, levelDb: null }
    ])
      expect(render(PolarPicture, { props }).body).not.toContain('<details');
  });
  it('waits without a curve', () => {
    const waiting = render(PolarPicture, { props: { ...polar, levelDb: null } }).body;
    expect(waiting).not.toMatch(/class="curve|NaN/);
  });
  it('over a board says nothing of what lies below it', () => {
    const over = render(PolarPicture, { props: { ...polar, board: true } }).body;
    expect(over).toContain('straight up');
    expect(over).not.toMatch(/behind<|−120°|>120°/);
    expect(body).toMatch(/behind<.*−120°/s);
  });
  it('takes a pointer only where somebody listens', () => {
    expect(body).toContain('role="presentation"');
    expect(render(PolarPicture, { props: polar }).body).not.toContain('role="presentation"');
  });
});

describe('WavePicture, drawn without a browser', () => {
  const children = createRawSnippet(() => ({ render: () => '<path d="M0,0H9"></path>' }));
  const { body } = render(WavePicture, {
    props: {
      columns: 8,
      rows: 5,
      full: 1,
      running: true,
      width: 320,
      label: 'a swing of the air',
      height: 200,
      children
    }
  });
  it('has no style attribute, a name, a key in words and what is drawn over it', () => {
    expect(body).not.toMatch(/\sstyle=|NaN|undefined/);
    expect(body).toMatch(/role="img" aria-label="a swing of the air"/);
    expect(body).toMatch(/thinned out.*pressed together/s);
    expect(body).toContain('M0,0H9');
  });
  it('turns the field of a mount that looks down, and not what is drawn over it', () => {
    expect(body).not.toMatch(/upside-down|sides-changed/);
    const props = {
      columns: 8,
      rows: 5,
      full: 1,
      running: false,
      width: 320,
      height: 200,
      label: '',
      children
    };
    const turned = render(WavePicture, { props: { ...props, turned: { down: -1, right: -1 } } }).body;
    expect(turned).toMatch(/<canvas class="[^"]*upside-down sides-changed/);
  });
});

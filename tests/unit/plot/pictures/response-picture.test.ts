import { createRawSnippet } from 'svelte';
import { render } from 'svelte/server';
import { describe, expect, it } from 'vitest';
import ResponsePicture from '../../../../src/lib/plot/pictures/ResponsePicture.svelte';
import { sampleFamily } from '../../../browser/harness-plot/sample-family.js';

const props = {
  ...sampleFamily(4, 2, 1260),
  markers: [{ frequency: 1260, text: 'half a wave', kind: 'half-wave' as const }],
  onpick: () => {}
};

describe('ResponsePicture, drawn without a browser', () => {
  const { body } = render(ResponsePicture, { props });
  it('has no style attribute, which a content security policy would block', () => {
    expect(body).not.toMatch(/\sstyle=/);
  });
  it('draws each curve, numbers each with a disc and draws only the heard one solid', () => {
    const curves = body.match(/<path[^>]*data-curve[^>]*>/g) ?? [];
    expect(curves).toHaveLength(4);
    expect(curves.filter((path) => !path.includes('stroke-dasharray'))).toHaveLength(1);
    expect(body.match(/role="button"/g)).toHaveLength(4);
  });
  it('says the readout in words', () => {
    expect(body).toMatch(/aria-valuetext="1\.0 kHz: flat plate −\d+ dB, heard; free air −\d+ dB; /);
  });
  it('calls what the bands are parts of by the words that it is given', () => {
    const named = render(ResponsePicture, { props: { ...props, source: 'the bell' } }).body;
    expect(named).toMatch(/aria-valuetext="[^"]*; this band of the bell: \d+ dB lost"/);
    expect(body).toMatch(/aria-valuetext="[^"]*; this band of the sound: \d+ dB lost"/);
  });
  it('writes no NaN into any attribute', () => {
    expect(body).not.toMatch(/="[^"]*NaN/);
  });
  it('takes no bands, no markers and no curves', () => {
    const empty = render(ResponsePicture, { props: { curves: [], bands: null, markers: [] } });
    expect(empty.body).not.toMatch(/NaN|undefined/);
    expect(empty.body).toContain('role="slider"');
  });
  it('draws the ground below its level down to the floor, behind the curves', () => {
    const frequency = Float64Array.of(50, 500, 16000);
    const ground = { frequency, levelDb: Float64Array.of(-Infinity, -10, 0) };
    const grounded = render(ResponsePicture, { props: { ...props, ground } }).body;
    expect(grounded).not.toMatch(/="[^"]*NaN/);
    const [shape] = grounded.match(/<path class="ground[^>]* d="M[^"]*Z"[^>]*>/)!;
    expect(grounded.indexOf(shape)).toBeLessThan(grounded.indexOf('data-curve'));
    expect(body).not.toContain('class="ground');
  });
  it('marks a range by words on its side, without a line', () => {
    const marked = (kind: 'remark' | 'range-below') =>
      render(ResponsePicture, {
        props: { ...props, bare: true, markers: [{ frequency: 400, text: '← late', kind }] }
      }).body;
    const lines = (picture: string) => picture.match(/<path d="M[\d.]+,[\d.]+V\d+"/g)?.length ?? 0;
    expect(lines(marked('remark')) - lines(marked('range-below'))).toBe(1);
    expect(marked('range-below')).toMatch(/text-anchor="end"[^>]*>← late/);
  });
  it('leaves readout and table out when bare, and carries a caption', () => {
    const caption = createRawSnippet(() => ({ render: () => '<span>drawn by the rule of thumb</span>' }));
    const bare = render(ResponsePicture, { props: { ...props, bare: true, caption } });
    expect(bare.body).not.toMatch(/role="slider"|<details/);
    expect(bare.body).toMatch(/<figcaption[^>]*>.*drawn by the rule of thumb/);
  });
});

import { createRawSnippet } from 'svelte';
import { render } from 'svelte/server';
import { describe, expect, it } from 'vitest';
import HarmonicTable from '../../../../src/lib/plot/readout/HarmonicTable.svelte';
import LevelPicture from '../../../../src/lib/plot/pictures/LevelPicture.svelte';
import SpectrumPicture from '../../../../src/lib/plot/pictures/SpectrumPicture.svelte';
import { sampleSound } from '../../../browser/harness-plot/sample-sound.js';

const sample = sampleSound(68, 2, 4);
const caption = createRawSnippet(() => ({ render: () => '<span>in plain words</span>' }));
const spectrum = {
  sound: sample.sound,
  through: sample.through,
  throughText: 'behind the flat plate',
  marks: sample.marks,
  reaches: 350
};
const nothing = { frequency: new Float64Array(0), levelDb: new Float64Array(0) };

describe('the pictures of the sound, drawn without a browser', () => {
  const level = render(LevelPicture, { props: { ...sample.course, caption } }).body;
  const lines = render(SpectrumPicture, { props: { ...spectrum, caption } }).body;
  const table = render(HarmonicTable, {
    props: { rows: sample.rows, columns: sample.columns, caption }
  }).body;

  it('have no style attribute, which a content security policy would block, and no NaN', () => {
    for (const body of [level, lines, table]) {
      expect(body).not.toMatch(/\sstyle=/);
      expect(body).not.toMatch(/="[^"]*(NaN|undefined)/);
      expect(body).toContain('in plain words');
    }
  });
  it('say the level at a time in words', () => {
    expect(level).toMatch(/aria-valuetext="0\.00 s: average −\d+ dB; peaks −\d+ dB; peaks \d+ dB above it"/);
    expect(level).toContain('0 dB: full scale');
  });
  it('begin to read the spectrum at the firing rate, and say what is lost there', () => {
    expect(lines).toMatch(
      /aria-valuetext="68 Hz, fires 68 times a second: the sound itself 0 dB; behind the flat plate −\d+ dB; \d+ dB lost"/
    );
    expect(lines).toContain('>fires 68 times a second</text>');
    expect(lines).toContain('shaded: below what this speaker can do');
  });
  it('write the words about the speaker under the picture, and not at all without a region', () => {
    for (const reaches of [null, 15]) {
      const none = render(SpectrumPicture, { props: { ...spectrum, reaches } }).body;
      expect(none).not.toContain('below what this speaker can do');
    }
    const all = render(SpectrumPicture, { props: { ...spectrum, reaches: 20000 } }).body;
    expect(all).toContain('shaded: below what this speaker can do');
  });
  it('say so where the firing rate itself lies below the axis', () => {
    const slow = [{ frequency: 5, text: 'fires 5 times a second', strong: true }];
    const body = render(SpectrumPicture, { props: { ...spectrum, marks: slow } }).body;
    expect(body).toContain('fires 5 times a second: left of this picture');
    expect(lines).not.toContain('left of this picture');
  });
  it('fill the sound itself where there is no mount', () => {
    const alone = render(SpectrumPicture, { props: { ...spectrum, through: null } }).body;
    expect(alone).toContain('filled: the sound itself');
    expect(alone).not.toMatch(/outline:|hatched:/);
    expect(alone.match(/class="rim/g)).toBeNull();
    expect(lines.match(/class="rim/g)).toHaveLength(1);
  });
  it('take a sound without a single point', () => {
    const silent = { duration: 1, rmsDb: new Float64Array(0), peakDb: new Float64Array(0) };
    expect(render(LevelPicture, { props: silent }).body).toContain('average no figure; peaks no figure');
    const none = render(SpectrumPicture, { props: { sound: nothing, through: nothing, marks: [] } }).body;
    expect(none).toContain('the sound itself no figure');
    expect(level + none).not.toMatch(/="[^"]*NaN/);
  });
});

describe('HarmonicTable', () => {
  const rows = [
    { number: 1, frequencyText: '68 Hz', ownDb: 0, throughDb: [-53.4, null] },
    { number: 2, frequencyText: '136 Hz', ownDb: -3.6, throughDb: [-Infinity, NaN] },
    { number: 3, frequencyText: '204 Hz', ownDb: NaN, throughDb: [2.2] }
  ];
  const columns = [
    { numeral: '1', name: 'free air', style: 1 as const, heard: false },
    { numeral: '2', name: 'flat plate', style: 2 as const, heard: true }
  ];
  const { body } = render(HarmonicTable, { props: { rows, columns } });
  /** What a reader of the screen hears, cell by cell. */
  const cells = [...body.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/gs)].map(([, inside]) =>
    inside
      .replace(/<svg.*?<\/svg>/gs, '')
      .replace(/<span[^>]*aria-hidden[^>]*>.*?<\/span>/gs, '')
      .replace(/<[^>]*>/g, '')
      .replace(/\s+/g, ' ')
      .trim()
  );
  it('heads each column with the disc of its mount, solid where it is heard', () => {
    expect(cells.slice(0, 5)).toEqual([
      'harmonic',
      'frequency',
      'the sound itself, dB',
      '1, free air',
      '2, flat plate, heard'
    ]);
    const fills = [...body.matchAll(/<circle[^>]*fill="([^"]*)"/g)].map(([, fill]) => fill);
    expect(fills).toEqual(['var(--sheet)', 'var(--mount-2, currentColor)']);
  });
  it('writes whole decibels, and in words where there is none', () => {
    expect(cells.slice(5)).toEqual([
      ...['1', '68 Hz', '0', '−53', 'no figure'],
      ...['2', '136 Hz', '−4', 'silent', 'no figure'],
      ...['3', '204 Hz', 'no figure', '+2', 'no figure']
    ]);
    expect(body.match(/>–</g)).toHaveLength(4);
    expect(body.match(/>−∞</g)).toHaveLength(1);
  });
});

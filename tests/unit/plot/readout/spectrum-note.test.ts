import { describe, expect, it } from 'vitest';
import { addsAnything } from '../../../../src/lib/plot/readout/adds-anything.js';
import { harmonicMarks } from '../../../../src/lib/plot/marks/harmonic-marks.js';
import { noteText } from '../../../../src/lib/plot/readout/note-text.js';
import { spectrumNote } from '../../../../src/lib/plot/readout/spectrum-note.js';
import { markAt, spectrumStops } from '../../../../src/lib/plot/readout/spectrum-stops.js';

const frequency = Float64Array.of(20, 68, 136, 1000, 16000);
const sound = { frequency, levelDb: Float64Array.of(-30, 0, -6, -30, -60) };
const through = { frequency, levelDb: Float64Array.of(-Infinity, -53.2, -41, -27, -60) };
const marks = harmonicMarks([{ frequency: 68, name: 'firing rate', harmonics: 32 }], 16000);

describe('spectrumNote', () => {
  it.each([
    [68, '68 Hz, firing rate: the sound itself 0 dB; behind the plate −53 dB; 53 dB lost'],
    [136, '136 Hz, 2 × firing rate: the sound itself −6 dB; behind the plate −41 dB; 35 dB lost'],
    [1000, '1.0 kHz: the sound itself −30 dB; behind the plate −27 dB; 3 dB gained'],
    [20, '20 Hz: the sound itself −30 dB; behind the plate silent; all lost'],
    [17000, '17.0 kHz: the sound itself no figure; behind the plate no figure']
  ])('reads %d Hz', (at, text) => {
    expect(noteText(spectrumNote(sound, through, 'behind the plate', marks, at))).toBe(text);
  });
  it('speaks of the sound alone where there is no mount, drawn filled then', () => {
    const note = spectrumNote(sound, null, '', marks, 1000);
    expect(noteText(note)).toBe('1.0 kHz: the sound itself −30 dB');
    expect(note.rows[0].look).toBe('filled');
    expect(spectrumNote(sound, through, '', marks, 1000).rows.map(({ look }) => look)).toEqual([
      'outline',
      'filled'
    ]);
  });
});

describe('spectrumStops', () => {
  const stops = spectrumStops(marks, 50, 16000);
  it('halts at every mark and at the third octaves clear of them, ascending', () => {
    expect(stops.slice(0, 6)).toEqual([50, 63, 68, 80, 100, 125]);
    stops.forEach((each, i) => i && expect(each).toBeGreaterThan(stops[i - 1]));
    for (const mark of marks) expect(stops).toContain(mark.frequency);
    // 200 Hz gives way to the third harmonic at 204.
    expect(stops).not.toContain(200);
    expect(stops).toContain(16000);
  });
  it('leaves out what is beyond the axis and what is there twice', () => {
    const twice = [...marks.slice(0, 1), ...marks.slice(0, 1)];
    expect(spectrumStops(twice, 60, 100)).toEqual([63, 68, 80, 100]);
    expect(spectrumStops(marks, 70, 100)).toEqual([80, 100]);
  });
});

describe('markAt', () => {
  const x = (f: number) => f / 10;
  it('takes hold of the nearest mark within reach', () => {
    expect(markAt(marks, 10, x, 5)?.frequency).toBe(68);
    expect(markAt(marks, 10.3, x, 5)?.frequency).toBe(136);
    expect(markAt(marks, 1, x, 5)).toBeNull();
    expect(markAt([], 6.8, x, 5)).toBeNull();
  });
});

describe('addsAnything', () => {
  it('tells whether there is anything above the sound and above the floor', () => {
    expect(addsAnything(sound, through, -70)).toBe(true);
    expect(addsAnything(sound, through, -20)).toBe(false);
    expect(addsAnything(sound, { frequency, levelDb: sound.levelDb.map((l) => l - 3) }, -70)).toBe(false);
    expect(addsAnything(sound, sound, -70)).toBe(false);
  });
});

import { describe, expect, it } from 'vitest';
import { boxesMeet } from '../../../../src/lib/plot/scales/box.js';
import { frequencyScale } from '../../../../src/lib/plot/scales/frequency-scale.js';
import { harmonicMarks } from '../../../../src/lib/plot/marks/harmonic-marks.js';
import { tickLabels } from '../../../../src/lib/plot/labels/tick-labels.js';

const area = { left: 50, right: 800, top: 8, bottom: 300 };

describe('tickLabels', () => {
  it('never lets two figures meet, whatever the rate and the width', () => {
    for (const rate of [4, 12.5, 68, 310, 2000])
      for (const right of [362, 800, 1400]) {
        const room = { ...area, right };
        const x = frequencyScale({ from: 20, to: 16000 }, room);
        const ticks = harmonicMarks([{ frequency: rate, name: 'rate', harmonics: 32 }], 16000).map(
          ({ frequency, text }) => ({
            x: x(frequency),
            text
          })
        );
        const labels = tickLabels(ticks, 30, room, 12, [{ left: 200, right: 240, top: 0, bottom: 300 }]);
        const boxes = labels.filter((box) => box !== null);
        boxes.forEach((box, i) => {
          boxes.slice(i + 1).forEach((other) => expect(boxesMeet(box, other)).toBe(false));
          expect(box.right <= 200 || box.left >= 240).toBe(true);
          expect(box.left).toBeGreaterThanOrEqual(room.left);
          expect(box.right).toBeLessThanOrEqual(room.right);
        });
        expect(boxes.length).toBeGreaterThan(2);
      }
  });
  it('gives the earlier one the right of way and leaves ticks without text alone', () => {
    const labels = tickLabels(
      [
        { x: 300, text: '2' },
        { x: 305, text: '3' },
        { x: 340, text: '' },
        { x: 345, text: '5' }
      ],
      30,
      area,
      12,
      []
    );
    expect(labels.map((label) => label !== null)).toEqual([true, false, false, true]);
    const [first] = labels;
    expect((first!.left + first!.right) / 2).toBe(300);
  });
});

describe('harmonicMarks', () => {
  const firing = { frequency: 1500, name: 'firing rate', harmonics: 32 };
  it('marks a rate by its name and its multiples by round numbers, up to the end of the axis', () => {
    const marks = harmonicMarks([firing], 16000);
    expect(marks.map(({ frequency }) => frequency)).toEqual(
      Array.from({ length: 10 }, (_, i) => 1500 * (i + 1))
    );
    expect(marks.map(({ text }) => text)).toEqual([
      'firing rate',
      '2×',
      '3×',
      '4×',
      '5×',
      '6×',
      '',
      '8×',
      '',
      '10×'
    ]);
    expect(marks.map(({ strong }) => strong)).toEqual([true, ...Array(9).fill(false)]);
    expect(marks[6].name).toBe('7 × firing rate');
  });
  it('numbers the multiples of the leading rate only, no more than it has, and none where none leads', () => {
    const lope = { frequency: 750, name: 'lope', harmonics: 1 };
    const marks = harmonicMarks(
      [lope, { ...firing, harmonics: 3 }, { frequency: 400, name: 'hum', harmonics: 2 }],
      16000
    );
    expect(marks.map(({ frequency, text, strong }) => [frequency, text, strong])).toEqual([
      [750, 'lope', true],
      [1500, 'firing rate', true],
      [3000, '2×', false],
      [4500, '3×', false],
      [400, 'hum', true]
    ]);
    const chord = ['A4', 'C5', 'F5'].map((name, i) => ({ frequency: 440 + 100 * i, name, harmonics: 4 }));
    expect(harmonicMarks(chord, 16000).map(({ text }) => text)).toEqual(['A4', 'C5', 'F5']);
  });
  it('makes ticks of many rates, and nothing of what is beyond the axis or no rate', () => {
    const tones = Array.from({ length: 9 }, (_, i) => ({
      frequency: 1000 * (i + 1),
      name: `${i + 1} kHz`,
      harmonics: 1
    }));
    expect(harmonicMarks(tones, 8000).map(({ text, strong }) => [text, strong])).toEqual(
      tones.slice(0, 8).map(({ name }) => [name, false])
    );
    expect(harmonicMarks(tones.slice(0, 6), 8000).every(({ strong }) => strong)).toBe(true);
    expect(
      harmonicMarks(
        [
          { ...firing, frequency: 0 },
          { ...firing, frequency: 20000 }
        ],
        16000
      )
    ).toEqual([]);
    expect(harmonicMarks([], 16000)).toEqual([]);
  });
});

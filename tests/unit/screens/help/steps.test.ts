import { describe, expect, it } from 'vitest';
import { steps } from '../../../../src/lib/screens/help/steps.js';
import { levelDb } from '../../../../src/lib/numeric/level-db.js';
import { solveMount, waveResponse } from '../../../../src/lib/waves/wave-solution.js';
import { close } from '../../../helpers/close.js';
import { AIR, DEMO, IN_FRONT } from '../../../helpers/demo-installations.js';
import { lengthWords } from '../../../../src/lib/format/length-words.js';

const plain = (inches = false) =>
  steps((metres) => lengthWords(metres, inches)).map((step) =>
    Object.values(step).flat().join(' ').replaceAll('\u00a0', ' ')
  );

describe('steps', () => {
  it('are five, each with a source, something to hear and something to listen for', () => {
    const all = steps((metres) => lengthWords(metres, false));
    expect(all.length).toBe(5);
    for (const step of all)
      for (const part of [step.plain, step.trade, step.symbols, step.source, step.listenFor, ...step.hear])
        expect(part).not.toBe('');
  });

  // c = 343.2 m/s at 20 °C (ISO 9613-1:1993).
  it('say half a wave of 28 and of 102 mm: c/(2·D)', () => {
    expect(343.2 / (2 * 0.028)).toBeCloseTo(6129, 0);
    expect(343.2 / (2 * 0.102)).toBeCloseTo(1682, 0);
    expect(plain()[1]).toContain('28 mm long at 6.13 kHz, and 102 mm long at 1.68 kHz');
  });

  it('say how much further down the plate begins to lose: log2(102/28) octaves', () => {
    expect(Math.log2(102 / 28)).toBeCloseTo(1.87, 2);
    expect(plain()[2]).toContain('1.9 octaves');
  });

  it('say the shell’s string 2·(40 + 16.5) mm, and its ring as the wave solution has it', () => {
    expect(plain()[3]).toContain('113 mm');
    const grid = Float64Array.from({ length: 200 }, (_, i) => 1300 + 2 * i);
    const solved = solveMount(DEMO['cab body'], AIR, { accuracy: 'full' });
    const level = levelDb(waveResponse(solved, IN_FRONT, grid, 'ideal'));
    const peak = Math.max(...level);
    close(grid[level.indexOf(peak)], 1520, {
      rel: 0.01,
      because: 'three figures are said, foretold within 1 %'
    });
    expect(plain()[3]).toContain('1.52 kHz');
    expect(Math.round(peak)).toBe(11);
    expect(plain()[3]).toContain('a peak of 11 dB');
  });

  // R. H. Small 1972: V = 42 × 29 × 17 mm less 6.72 cm³ of speaker, Vas = 19.5 cm³, fs = 348 Hz.
  it('say the box’s air and its resonance fs·√(1 + Vas/V)', () => {
    const air = 4.2 * 2.9 * 1.7 - 6.72;
    expect(348 * Math.sqrt(1 + 19.5 / air)).toBeCloseTo(540, -1);
    expect(plain()[4]).toContain(`${Math.round(air)} cm³`);
    expect(plain()[4]).toContain('350 Hz to 540 Hz');
  });

  it('write lengths as the user wants them', () => {
    expect(plain(true)[1]).toContain('4 1/64 in long');
  });
});

import { EXPLANATIONS } from '../../../../src/lib/screens/parts/explanations.js';
import { describe, expect, it } from 'vitest';
import { steps } from '../../../../src/lib/screens/help/steps.js';
import { levelDb } from '../../../../src/lib/numeric/level-db.js';
import type { Installation } from '../../../../src/lib/acoustics/installation.js';
import type { Listener } from '../../../../src/lib/acoustics/listener.js';
import { usualAbove } from '../../../../src/lib/acoustics/mounts/board.js';
import type { Mount } from '../../../../src/lib/acoustics/mounts/mount.js';
import { PAPER_GAP, RUNNING_CAB } from '../../../../src/lib/file/layout-bench.js';
import { solveMount, waveResponse, waveSolution } from '../../../../src/lib/waves/wave-solution.js';
import { close } from '../../../helpers/close.js';
import { AIR, DEMO, IN_FRONT } from '../../../helpers/demo-installations.js';
import { lengthWords } from '../../../../src/lib/format/length-words.js';

const plain = (inches = false) =>
  steps((metres) => lengthWords(metres, inches)).map((step) =>
    Object.values(step).flat().join(' ').replaceAll('\u00a0', ' ')
  );

describe('steps', () => {
  it('are eight, each with a source, something to hear and something to listen for', () => {
    const all = steps((metres) => lengthWords(metres, false));
    expect(all.length).toBe(8);
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

  /** Level of one mount in one place against another, so many hertz. */
  function difference(
    one: Installation,
    other: Installation,
    frequency: number[],
    where = IN_FRONT as Listener
  ) {
    const grid = Float64Array.from(frequency);
    const [a, b] = [one, other].map((installation) => {
      const listener = installation.board ? { ...where, board: true } : where;
      return levelDb(waveSolution(installation, AIR, listener, grid, 'ideal', { accuracy: 'draft' }));
    });
    return frequency.map((_, i) => a[i] - b[i]);
  }

  it('say what the board takes from plate and shell, and gives to the box, at 300 Hz to the side', () => {
    const aside = { angleDeg: 60, plane: 'width' } as const;
    const by = (name: string, above: number): number => {
      const one = DEMO[name];
      return difference({ ...one, board: { above, facing: 'up' } }, one, [300], aside)[0];
    };
    const whole = { abs: 0.5, because: 'whole decibels' };
    close(by('flat plate', 0.035), -13, whole);
    close(by('cab body', 0.014), -4, whole);
    close(by('closed box', 0.02), 6, whole);
    expect(plain()[5]).toContain('at 300 Hz the plate 35 mm above the board loses 13 dB');
    expect(plain()[5]).toContain('the empty shell 14 mm above it 4 dB');
    expect(plain()[5]).toContain('low notes gain 6 dB');
    // The same figures stand behind the sentence on what turns over.
    expect(EXPLANATIONS.turn.text).toContain('300 Hz lose 13 dB of a plate 35 mm above it');
    expect(EXPLANATIONS.turn.text).toContain('the low notes gain 6 dB');
    // The usual heights of the two.
    const { speaker } = DEMO['flat plate'];
    expect(usualAbove(speaker, DEMO['flat plate'].mount, 'up')).toBe(0.035);
    expect(usualAbove(speaker, DEMO['cab body'].mount, 'up')).toBe(0.014);
  });

  it('say where the shell rings with its chassis in, and how much', () => {
    const ring = (mount: Mount): [number, number] => {
      const grid = Float64Array.from({ length: 160 }, (_, i) => 700 + 6 * i);
      const level = levelDb(
        waveSolution({ ...DEMO['cab body'], mount }, AIR, IN_FRONT, grid, 'ideal', { accuracy: 'draft' })
      );
      const peak = Math.max(...level);
      return [grid[level.indexOf(peak)], peak];
    };
    const tenth = { abs: 50, because: 'a tenth of a kilohertz' };
    const [wide, tight] = [0.001, 0.0003].map((slit) =>
      ring({ ...RUNNING_CAB, chassis: { ...RUNNING_CAB.chassis!, slit } })
    );
    close(wide[0], 1200, tenth);
    close(tight[0], 900, tenth);
    close(wide[1], 17, { abs: 0.5, because: 'whole decibels' });
    expect(plain()[6]).toContain('from 1.5 kHz to 1.2 kHz with slits of 1 mm, to 0.9 kHz with 0.3 mm');
    expect(plain()[6]).toContain('by 17 dB in place of 11');
  });

  it('say what a gap of 0.1 mm costs the small box', () => {
    const box = DEMO['closed box'];
    const leaky = { ...box, mount: { ...box.mount, leak: PAPER_GAP } };
    const [at300, at500] = difference(leaky, box, [300, 500], IN_FRONT);
    const whole = { abs: 0.5, because: 'whole decibels' };
    close(fullSpeaker(leaky, 300) - fullSpeaker(box, 300), -3, whole);
    close(fullSpeaker(leaky, 500) - fullSpeaker(box, 500), -7, whole);
    // With a cone that moves alike it is the cancelling alone.
    expect(at300).toBeLessThan(0.1);
    expect(at500).toBeLessThan(0.1);
    expect(plain()[7]).toContain('costs the small box 3 dB at 300 Hz and 7 dB at 500 Hz');
  });

  function fullSpeaker(installation: Installation, frequency: number): number {
    const grid = Float64Array.of(frequency);
    return levelDb(waveSolution(installation, AIR, IN_FRONT, grid, 'full', { accuracy: 'draft' }))[0];
  }

  it('write lengths as the user wants them', () => {
    expect(plain(true)[1]).toContain('4 1/64 in long');
  });
});

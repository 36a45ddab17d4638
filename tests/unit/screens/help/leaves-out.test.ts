import { describe, expect, it } from 'vitest';
import type { ShellMount } from '../../../../src/lib/acoustics/mounts/mount.js';
import { ruleOfThumb } from '../../../../src/lib/acoustics/rule/rule-of-thumb.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { LEAVES_OUT } from '../../../../src/lib/screens/help/leaves-out.js';
import { ACCURACY } from '../../../../src/lib/waves/mesh/accuracy.js';
import { transfer } from '../../../../src/lib/waves/field/transfer.js';
import { mountMesh } from '../../../../src/lib/waves/mesh/mount-mesh.js';
import { solveWave, waveProblem } from '../../../../src/lib/waves/solve/wave-problem.js';
import { close } from '../../../helpers/close.js';
import { AIR, IN_FRONT } from '../../../helpers/demo-installations.js';
import plain from '../../../reference/waves-plain.json';
import { C, db, waveNumber } from '../../waves/wave-cases.js';

/** Inside, a small shell and a large one. */
const SIZES: (readonly [number, number, number])[] = [
  [0.1, 0.03, 0.02],
  [0.29, 0.06, 0.08]
];
const LOW = Float64Array.of(50, 300);

const text = LEAVES_OUT.flatMap(({ gaps }) => gaps.map((gap) => `${gap.title} ${gap.text}`)).join('\n');

/** By how much the rule of thumb is too low at 50 and 300 Hz, in dB. */
function tooLow(
  speaker: keyof typeof SPEAKERS,
  [length, width, height]: readonly [number, number, number],
  ends: ShellMount['ends'],
  offset: number
): number[] {
  const mount = { kind: 'shell', length, width, height, ends, offset } as const;
  const installation = { speaker: SPEAKERS[speaker], mount, turn: 0 } as const;
  const { mesh, pistons } = mountMesh(installation, C, ACCURACY.draft);
  const problem = waveProblem(mesh, pistons);
  const rule = ruleOfThumb(installation, AIR, IN_FRONT, LOW, 'ideal');
  return [...LOW].map((f, i) => {
    const wave = transfer(problem, solveWave(problem, waveNumber(f)), IN_FRONT);
    return db(wave) - db({ re: rule.re[i], im: rule.im[i] });
  });
}

describe('LEAVES_OUT', () => {
  it('says how far each model is from the truth where that is known', () => {
    expect(LEAVES_OUT.map(({ title }) => title)).toEqual([
      'The rule of thumb does not know',
      'The wave solution does not know',
      'Neither of them knows'
    ]);
    for (const size of ['9 dB too low', '9 to 15 dB', 'within 0.3 dB', 'within 0.6 dB', '10 kHz', '3 kHz'])
      expect(text).toContain(size);
  });

  it('a speaker at the open end of a shell: the rule is 4 to 10 dB too low, with the smallest up to 15 dB', () => {
    expect(text).toContain('right at an open end it is 4 to 10 dB too low');
    expect(text).toContain('20 mm away from it up to 7 dB; with the smallest speakers up to 15 and 9 dB');
    const whole = { abs: 0.5, because: 'whole decibels' };
    const from = (speaker: keyof typeof SPEAKERS, toEnd: number, sizes: typeof SIZES) =>
      sizes.flatMap((size) => tooLow(speaker, size, 'open', size[0] / 2 - toEnd));
    const oval = [0, 0.02].map((away) => from('oval', 0.017 + away, SIZES));
    close(Math.min(...oval[0]), 4, whole);
    close(Math.max(...oval[0]), 10, whole);
    close(Math.max(...oval[1]), 7, whole);
    const smallest = [0, 0.02].map((away) => from('phone-11x15', 0.0057 + away, SIZES.slice(1)));
    close(Math.max(...smallest[0]), 15, whole);
    close(Math.max(...smallest[1]), 9, whole);
  });

  it('elsewhere in shells the rule is right within 2.5 dB at low frequency', () => {
    expect(text).toContain('it is right within 2.5 dB there');
    for (const size of SIZES)
      for (const [ends, share] of [
        ['open', 0],
        ['closed', 0],
        ['closed', 1]
      ] as const)
        for (const miss of tooLow('oval', size, ends, share * (size[0] / 2 - 0.02)))
          expect(Math.abs(miss)).toBeLessThan(2.5);
  });

  it('another program says the same of an open shell', () => {
    // tests/reference/waves-plain.py, NumPy and LAPACK
    const { sides, offset, cone, rows } = { ...plain.cases[1], cone: plain.cone };
    const [length, width, height] = sides;
    const mount = { kind: 'shell', length, width, height, ends: 'open', offset } as const;
    const speaker = {
      ...SPEAKERS.oval,
      cone: { shape: 'ellipse', length: cone[0], width: cone[1] }
    } as const;
    const [{ f, heard }] = rows;
    const rule = ruleOfThumb({ speaker, mount, turn: 0 }, AIR, IN_FRONT, Float64Array.of(f), 'ideal');
    const low = db(heard[0]) - db({ re: rule.re[0], im: rule.im[0] });
    close(low, 4.4, { abs: 0.1, because: 'between 4 and 10 dB: its cone ends 2 mm before the end' });
  });
});

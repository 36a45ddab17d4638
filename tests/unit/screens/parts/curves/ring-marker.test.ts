import { expect, test } from 'vitest';
import { PLACES } from '../../../../../src/lib/acoustics/listener.js';
import { waveAnswer } from '../../../../../src/lib/evaluation/answer.js';
import { compute } from '../../../../../src/lib/evaluation/stand.js';
import { ringMarker, ringOf } from '../../../../../src/lib/screens/parts/curves/ring-marker.js';
import { hearWaves } from '../../../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../../../src/lib/waves/wave-solution.js';
import { computedByRule } from '../../../../helpers/by-rule.js';
import { AIR, DEMO } from '../../../../helpers/demo-installations.js';

const SHELL = DEMO['cab body'];

test('over a board a shell rings lower than in the hand, and that is what is told', () => {
  const rings = [SHELL, { ...SHELL, board: { above: 0.014, facing: 'up' as const } }].map((installation) => {
    const { board } = installation as { board?: unknown };
    const listener = PLACES[board ? 'layout' : 'hand'];
    const heard = hearWaves(solveMount(installation, AIR, { accuracy: 'draft' }), listener);
    const computed = compute(installation, AIR, waveAnswer(heard, 'draft', installation, AIR), 48000);
    expect(ringMarker(computed)!.frequency).toBe(ringOf(computed));
    return ringOf(computed)!;
  });
  expect(rings[1]).toBeLessThan(rings[0] / 1.1);
});

test('by the rule of thumb it is what the fit says; where nothing rings, nothing is told', () => {
  const computed = computedByRule(SHELL);
  expect(ringOf(computed)).toBe(computed.figures.ring);
  for (const name of ['free air', 'flat plate', 'closed box']) {
    expect(ringOf(computedByRule(DEMO[name]))).toBeNull();
    expect(ringMarker(computedByRule(DEMO[name]))).toBeNull();
  }
});

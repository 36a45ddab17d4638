import { expect, it } from 'vitest';
import { waveAnswer } from '../../../../../src/lib/evaluation/answer.js';
import { compute } from '../../../../../src/lib/evaluation/stand.js';
import { hallMarkers } from '../../../../../src/lib/screens/parts/curves/hall-markers.js';
import { hearWaves } from '../../../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../../../src/lib/waves/wave-solution.js';
import { computedByRule } from '../../../../helpers/by-rule.js';
import { AIR, DEMO, IN_FRONT } from '../../../../helpers/demo-installations.js';

/** A draft, taken for the full solution that alone is marked. */
function said(name: keyof typeof DEMO): string[] {
  const heard = hearWaves(solveMount(DEMO[name], AIR, { accuracy: 'draft' }), IN_FRONT);
  const computed = compute(DEMO[name], AIR, waveAnswer(heard, 'full', DEMO[name], AIR), 48000);
  return hallMarkers({ computed }, AIR, IN_FRONT).map(({ text }) => text);
}

it('a hall is told of a shell that it rings where its hump is, and of a plate that the back adds there', () => {
  expect(said('flat plate')).toContain('½ wave late: adds');
  expect(said('cab body')).toContain('the shell rings');
  expect(said('cab body')).not.toContain('½ wave late: adds');
  expect(said('closed box')).toEqual([]);
});

it('the rule of thumb marks nothing there', () => {
  expect(hallMarkers({ computed: computedByRule(DEMO['cab body']) }, AIR, IN_FRONT)).toEqual([]);
});

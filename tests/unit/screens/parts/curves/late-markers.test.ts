import { expect, test } from 'vitest';
import type { Installation } from '../../../../../src/lib/acoustics/installation.js';
import { ruleAnswer, waveAnswer } from '../../../../../src/lib/evaluation/answer.js';
import { lateMarkers } from '../../../../../src/lib/screens/parts/curves/late-markers.js';
import { SHORT } from '../../../../../src/lib/screens/parts/curves/late-words.js';
import { compute } from '../../../../../src/lib/evaluation/stand.js';
import type { AccuracyName } from '../../../../../src/lib/waves/mesh/accuracy.js';
import { hearWaves } from '../../../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../../../src/lib/waves/wave-solution.js';
import { close } from '../../../../helpers/close.js';
import { AIR, DEMO, IN_FRONT } from '../../../../helpers/demo-installations.js';

function solved(installation: Installation, accuracy: AccuracyName = 'full') {
  const heard = hearWaves(solveMount(installation, AIR, { accuracy }), IN_FRONT);
  return { computed: compute(installation, AIR, waveAnswer(heard, accuracy, installation, AIR), 48000) };
}

test('an open mount: half a wave late, a whole wave late, and hardly late at an eighth of a wave of the string', () => {
  const stand = solved(DEMO['cab body']);
  const markers = lateMarkers(stand, AIR, IN_FRONT, SHORT);
  expect(markers.map(({ text }) => text)).toEqual([
    '½ wave late: adds',
    '1 wave: cancels',
    '← hardly late: cancels'
  ]);
  const GRID = { rel: 0.02, because: 'the figures of docs/models/wave-solution.md, on a grid of 1.4 %' };
  [1525, 2715, 343.2 / (8 * 0.113)].forEach((frequency, i) => close(markers[i].frequency, frequency, GRID));
  expect(lateMarkers(stand, AIR, { ...IN_FRONT, angleDeg: 30 }, SHORT)).toEqual([]);
});

test('nothing is marked on a draft, on the rule of thumb, on a box, or where nothing is computed', () => {
  expect(lateMarkers(solved(DEMO['flat plate'], 'draft'), AIR, IN_FRONT, SHORT)).toEqual([]);
  const rule = ruleAnswer(DEMO['flat plate'], AIR, IN_FRONT);
  const byRule = { computed: compute(DEMO['flat plate'], AIR, rule, 48000) };
  expect(lateMarkers(byRule, AIR, IN_FRONT, SHORT)).toEqual([]);
  expect(lateMarkers(solved(DEMO['closed box']), AIR, IN_FRONT, SHORT)).toEqual([]);
  expect(lateMarkers({ computed: null }, AIR, IN_FRONT, SHORT)).toEqual([]);
});

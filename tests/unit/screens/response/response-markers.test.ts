import { expect, test } from 'vitest';
import { responseMarkers } from '../../../../src/lib/screens/response/response-markers.js';
import { computedByRule } from '../../../helpers/by-rule.js';
import { waveAnswer } from '../../../../src/lib/evaluation/answer.js';
import { compute } from '../../../../src/lib/evaluation/stand.js';
import { hearWaves } from '../../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../../src/lib/waves/wave-solution.js';
import { levelDb } from '../../../../src/lib/numeric/level-db.js';
import { close } from '../../../helpers/close.js';
import { AIR, DEMO, IN_FRONT } from '../../../helpers/demo-installations.js';

const mm = (metres: number) => `${Math.round(1000 * metres)} mm`;

test('by the rule of thumb: half a wave of the string, c/(2·D), and where a closed shell rings', () => {
  const computed = computedByRule(DEMO['cab body']);
  const [half, ring] = responseMarkers({ computed }, AIR, IN_FRONT, mm);
  close(half.frequency, 343.2 / (2 * 0.113), { rel: 0.002, because: 'c and the string to three figures' });
  expect(half).toMatchObject({
    kind: 'half-wave',
    text: '← front and back cancel: half a wave of the string'
  });
  expect(ring).toMatchObject({ kind: 'ring', frequency: computed.figures.ring });
  expect(ring.text).toBe('rings here: louder than drawn');
});

test('a plate of other lengths to its edges acts like a length of its own; a box has no marks', () => {
  const plate = responseMarkers({ computed: computedByRule(DEMO['flat plate']) }, AIR, IN_FRONT, mm);
  expect(plate).toHaveLength(1);
  expect(responseMarkers({ computed: computedByRule(DEMO['closed box']) }, AIR, IN_FRONT, mm)).toEqual([]);
  expect(responseMarkers({ computed: null }, AIR, IN_FRONT, mm)).toEqual([]);
});

test('by the wave solution: how late the back comes, and the shell’s ring at the very top of its curve', () => {
  const installation = DEMO['cab body'];
  const by = (listener: { angleDeg: number; plane: 'length' }, accuracy: 'draft' | 'full' = 'full') => {
    const heard = hearWaves(solveMount(installation, AIR, { accuracy }), listener);
    const computed = compute(installation, AIR, waveAnswer(heard, accuracy, installation, AIR), 48000);
    const marks = responseMarkers({ computed }, AIR, listener, mm);
    const { frequency } = marks.find(({ kind }) => kind === 'ring')!;
    const fine = Float64Array.from({ length: 300 }, (_, i) => 1300 + i * 1.5);
    const level = levelDb(computed.answer.respond(fine));
    close(frequency, fine[level.indexOf(Math.max(...level))], {
      rel: 0.003,
      because: 'a parabola for the top'
    });
    return marks.map(({ text }) => text);
  };
  expect(by(IN_FRONT)).toEqual([
    expect.stringMatching(/^the shell rings here, 1\.5[0-2] kHz$/),
    'a whole wave late: they cancel',
    '← the back comes hardly late: front and back cancel'
  ]);
  // Aside, and of a draft, nothing is said of the rule's one bend: the curve is another one.
  const ringAlone = [expect.stringMatching(/^the shell rings here, 1\.5[0-2] kHz$/)];
  expect(by({ ...IN_FRONT, angleDeg: 30 })).toEqual(ringAlone);
  expect(by(IN_FRONT, 'draft')).toEqual(ringAlone);
});

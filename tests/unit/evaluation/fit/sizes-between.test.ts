import { expect, test } from 'vitest';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { questionOfCandidate } from '../../../../src/lib/evaluation/fit/drawer.js';
import { measuresOf, triedSound } from '../../../../src/lib/evaluation/fit/measures.js';
import { isTie, type Measured, type MeasureName } from '../../../../src/lib/evaluation/fit/ranking.js';
import { triedWith } from '../../../../src/lib/evaluation/fit/tried-with.js';
import { FIELD_MODEL } from '../../../../src/lib/evaluation/models.js';
import { answerNow } from '../../../../src/lib/evaluation/solve-now.js';
import type { BenchModel } from '../../../../src/lib/file/bench-file.js';
import { layoutBench } from '../../../../src/lib/file/layout-bench.js';
import type { Candidate } from '../../../../src/lib/fitting/candidate.js';
import { fit } from '../../../../src/lib/fitting/fit.js';
import { SIDES } from '../../../../src/lib/fitting/ladder.js';
import { powerSpectrum } from '../../../../src/lib/listening/power-spectrum.js';
import { random } from '../../../../src/lib/sounds/blocks/random.js';
import { noise } from '../../../helpers/noise.js';

/** With a ladder of a few sizes. */
const SMALL: BenchModel = {
  name: 'a small tender',
  length: 0.026,
  width: 0.016,
  height: 0.0075,
  above: 0.01,
  obstacles: [],
  floor: [0, 0.026],
  openings: 0,
  sounds: []
};
const RATE = 48000;

test('solved as drafts, a size between two of a ladder is tied with one of them in every measure', () => {
  const drawer = { phone: SPEAKERS['phone-11x15'] };
  const bench = layoutBench();
  const { uniform } = random(3);
  const strain = async () => Promise.reject(new Error('not asked for'));
  const sound = triedSound(powerSpectrum(Float32Array.from(noise(RATE, 5)), RATE), RATE, strain);
  const tried = { ...triedWith(bench, drawer, [sound], 1, RATE), against: drawer.phone };
  const measured = (candidate: Candidate): Measured => {
    const answer = answerNow(FIELD_MODEL, questionOfCandidate(bench, drawer, candidate), 'draft', 'full');
    const measures = measuresOf(answer, drawer.phone, tried);
    return { ...candidate, accuracy: 'draft', measures, price: null, loudest: null };
  };
  const { candidates, ladders } = fit(SMALL, drawer);
  const [ladder] = ladders.map((keys) => keys.map((key) => candidates.find((one) => one.key === key)!));
  expect(ladder.length).toBeGreaterThan(4);
  const lines = ladder.map(measured);
  for (let i = 1; i < ladder.length; i++) {
    const [a, b] = [ladder[i - 1].mount, ladder[i].mount];
    if (a.kind !== 'box' || b.kind !== 'box') throw new Error('a ladder is of boxes');
    const mount = { ...a };
    for (const side of SIDES) mount[side] = a[side] + (0.3 + 0.4 * uniform()) * (b[side] - a[side]);
    const between = measured({ ...ladder[i], mount });
    for (const by of ['level', 'deep', 'even'] as MeasureName[])
      expect([by, i, isTie(between, lines[i - 1], by) || isTie(between, lines[i], by)]).toEqual([
        by,
        i,
        true
      ]);
  }
  // the ends are no tie: the ladder leads somewhere
  expect(isTie(lines[0], lines.at(-1)!, 'deep')).toBe(false);
});

import { expect, test } from 'vitest';
import { refusal } from '../../../../src/lib/acoustics/refusal.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { questionOfCandidate } from '../../../../src/lib/evaluation/fit/drawer.js';
import { firstToTry } from '../../../../src/lib/evaluation/fit/sizes-to-try.js';
import { FIELD_MODEL } from '../../../../src/lib/evaluation/models.js';
import { checkSolvable } from '../../../../src/lib/evaluation/solve-now.js';
import { DEMO_MODELS } from '../../../../src/lib/file/demo-vehicles.js';
import { layoutBench } from '../../../../src/lib/file/layout-bench.js';
import { fit } from '../../../../src/lib/fitting/fit.js';

test.each(DEMO_MODELS)(
  'whatever fits into $name can be solved, the least box in its body as well',
  (model) => {
    const bench = layoutBench();
    const fitted = fit(model, SPEAKERS);
    const whyNot = (accuracy: 'draft' | 'full') => (candidate: (typeof fitted.candidates)[number]) =>
      refusal(() => checkSolvable(FIELD_MODEL, questionOfCandidate(bench, SPEAKERS, candidate), accuracy));
    expect(fitted.candidates.map(whyNot('draft')).filter(Boolean)).toEqual([]);
    expect(firstToTry(fitted).map(whyNot('full')).filter(Boolean)).toEqual([]);
  }
);

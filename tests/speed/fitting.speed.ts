import { refusal } from '../../src/lib/acoustics/refusal.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { questionOfCandidate } from '../../src/lib/evaluation/fit/drawer.js';
import { answerNow, checkSolvable } from '../../src/lib/evaluation/solve-now.js';
import { DEMO_MODELS } from '../../src/lib/file/demo-vehicles.js';
import { layoutBench } from '../../src/lib/file/layout-bench.js';
import { fit } from '../../src/lib/fitting/fit.js';
import type { SpeedCase } from './speed-case.js';

const [NO_41] = DEMO_MODELS;
const COUNT = 60;

function candidates(count: number): () => unknown {
  const bench = layoutBench();
  const questions = fit(NO_41, SPEAKERS)
    .candidates.map((candidate) => questionOfCandidate(bench, SPEAKERS, candidate))
    .filter((question) => refusal(() => checkSolvable('wave', question, 'draft')) === null)
    .slice(0, count);
  return () => questions.map((question) => answerNow('wave', question, 'draft', 'full'));
}

/** What a press of "try them all" costs, one core. */
const cases: SpeedCase[] = [
  {
    name: 'what fits into no. 41, and why the rest does not',
    prepare: () => () => fit(NO_41, SPEAKERS)
  },
  {
    name: `${COUNT} candidates as drafts, on the layout`,
    prepare: () => candidates(COUNT),
    prepareLittle: () => candidates(3)
  }
];

export default cases;

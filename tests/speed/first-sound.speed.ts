import { PLACES } from '../../src/lib/acoustics/listener.js';
import { answerOf, asItKnows } from '../../src/lib/evaluation/models.js';
import { filterFor } from '../../src/lib/evaluation/stand.js';
import { demoBench } from '../../src/lib/file/demo-bench.js';
import { installationOf } from '../../src/lib/file/installation-of.js';
import { USUAL_RATE } from '../../src/lib/sounds/blocks/sample-rate.js';
import type { MovingSound } from '../../src/lib/sounds/kinds.js';
import { Desk } from '../../src/lib/workers/sound/answer.js';
import type { SpeedCase } from './speed-case.js';

/*
 * What the sound worker does from the opening of a new page on, in this order. In a page that has just been opened each takes two to three
 * times as long, since none of it has run before: tests/speed/page-figures.mjs times that.
 */

const bench = demoBench();
const sound = bench.sound as MovingSound;
const sampleRate = USUAL_RATE;
const impulseResponses = bench.setups.map((setup) => {
  const question = { installation: installationOf(bench, setup), air: bench.air, listener: PLACES.hand };
  return filterFor(answerOf('rule', asItKnows('rule', question), null), sampleRate);
});

function first(part: string, prepare: () => () => unknown): SpeedCase {
  return { name: `first sound: ${part}`, prepare };
}

/** A desk that keeps the sound of the demo bench. */
function kept(): Desk {
  const desk = new Desk();
  const samples = desk.answer({ kind: 'sound', sound, sampleRate }) as Float32Array;
  desk.answer({ kind: 'keep', key: 'first', samples, sampleRate });
  return desk;
}

const cases: SpeedCase[] = [
  first('its loop, aligned', () => () => new Desk().answer({ kind: 'sound', sound, sampleRate })),
  first('its levels behind four mounts', () => {
    const samples = new Desk().answer({ kind: 'sound', sound, sampleRate }) as Float32Array;
    return () => {
      const desk = new Desk();
      desk.answer({ kind: 'keep', key: 'first', samples, sampleRate });
      return desk.answer({ kind: 'loudnessThrough', key: 'first', impulseResponses });
    };
  }),
  first('its figures, which come after it', () => {
    const desk = kept();
    return () => desk.answer({ kind: 'figures', key: 'first' });
  })
];

export default cases;

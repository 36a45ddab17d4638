import { checkWithin, LIMITS } from '../../acoustics/mounts/check-installation.js';
import type { Hertz } from '../../units.js';
import type { Steps } from '../../waves/curve/steps.js';
import { fieldOnGrid, type FieldImage } from '../../waves/field/field-on-grid.js';
import { polarPattern } from '../../waves/field/polar-pattern.js';
import { puffImage } from '../../waves/field/puff.js';
import { hearWaves, type HeardWaves } from '../../waves/curve/heard-waves.js';
import { mountProblem, type MountProblem } from '../../waves/solve/mount-problem.js';
import { solveWave } from '../../waves/solve/wave-problem.js';
import { solvingWaves } from '../../waves/wave-solution.js';
import type { MountAsked, WaveAnswers, WaveQuestion } from './wave-protocol.js';
import type { WaveCache, WaveMoment } from './wave-cache.js';

/** So many angles a step: at a distance and at `full` one takes up to 15 ms. */
const ANGLES = 8;

type Asked<K extends WaveQuestion['kind']> = WaveQuestion & { kind: K };

/**
 * The answer to a question, of the type that `WaveAnswers` lists for its kind, in steps of one frequency, one set of matrices,
 * one listener or some angles: gives the share that is done. What it finds is put into the cache, and what lies there is not
 * done again.
 *
 * @throws RangeError for what `waveSolution` refuses and for a frequency beyond that of the mesh; Error for an unknown kind
 */
export function* answeringWaves(
  question: WaveQuestion,
  cache: WaveCache
): Steps<WaveAnswers[WaveQuestion['kind']]> {
  switch (question.kind) {
    case 'hear':
      return yield* hearing(question, cache);
    case 'polar':
      return yield* turning(question, cache);
    case 'field':
      return yield* picturing(question, cache);
    case 'puff':
      return yield* puffing(question, cache);
    default:
      throw new Error(`nothing here answers "${(question as { kind: string }).kind}"`);
  }
}

function* hearing(question: Asked<'hear'>, cache: WaveCache): Steps<HeardWaves[]> {
  const { installation, air, accuracy, listeners } = question;
  let solved = cache.solved(question);
  if (!solved) {
    solved = yield* solvingWaves(installation, air, { accuracy });
    cache.keepSolved(question, solved);
  }
  const heard: HeardWaves[] = [];
  for (const listener of listeners) {
    // at a distance a listener takes as long as several frequencies
    yield 1;
    heard.push(hearWaves(solved, listener));
  }
  return heard;
}

function* turning(question: Asked<'polar'>, cache: WaveCache): Steps<Float64Array> {
  const { frequency, distance, anglesDeg } = question;
  if (distance !== undefined) checkWithin('distance of the listener', distance, LIMITS.distance, 'm');
  const { problem, state } = yield* momentAt(question, frequency, cache, 0);
  const levels = new Float64Array(anglesDeg.length);
  for (let i = 0; i < levels.length; i += ANGLES) {
    levels.set(polarPattern(problem, state, question, anglesDeg.subarray(i, i + ANGLES)), i);
    yield Math.min(1, (i + ANGLES) / levels.length);
  }
  return levels;
}

function* picturing(question: Asked<'field'>, cache: WaveCache): Steps<FieldImage[]> {
  const { frequencies, grid } = question;
  const images: FieldImage[] = [];
  for (const frequency of frequencies) {
    const { problem, state } = yield* momentAt(
      question,
      frequency,
      cache,
      images.length / frequencies.length
    );
    images.push(fieldOnGrid(problem, state, grid));
    yield images.length / frequencies.length;
  }
  return images;
}

function* puffing(question: Asked<'puff'>, cache: WaveCache): Steps<FieldImage[]> {
  const { frequencies, grid } = question;
  const images: FieldImage[] = [];
  for (const frequency of frequencies) {
    const { problem, c } = yield* meshedFor(frequency, question, cache, images.length / frequencies.length);
    images.push(puffImage(problem, c, frequency, grid));
    yield images.length / frequencies.length;
  }
  return images;
}

/** A mount's equations, good up to a frequency. `done` is the share of the whole that was done before. */
function* meshedFor(
  frequency: Hertz,
  mount: MountAsked,
  cache: WaveCache,
  done: number
): Steps<MountProblem> {
  let meshed = cache.meshed(mount);
  if (!meshed) {
    cache.keepMeshed(mount, (meshed = mountProblem(mount.installation, mount.air, mount)));
    yield done;
  }
  checkWithin('frequency of a wave picture of this mount', frequency, [1, meshed.highest], 'Hz');
  return meshed;
}

/** A mount solved at one frequency. `done` is the share of the whole that was done before. */
function* momentAt(mount: MountAsked, frequency: Hertz, cache: WaveCache, done: number): Steps<WaveMoment> {
  const known = cache.moment(mount, frequency);
  if (known) return known;
  const { problem, c } = yield* meshedFor(frequency, mount, cache, done);
  const moment = { problem, state: solveWave(problem, (2 * Math.PI * frequency) / c) };
  cache.keepMoment(mount, frequency, moment);
  yield done;
  return moment;
}

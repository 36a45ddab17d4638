import { describe, expect, test } from 'vitest';
import type { Listener } from '../../../src/lib/acoustics/listener.js';
import type { Question } from '../../../src/lib/evaluation/wave-jobs.js';
import type { ModelName } from '../../../src/lib/file/bench-file.js';
import {
  answerOf,
  asItKnows,
  FIELD_MODEL,
  isAwaited,
  MODEL_NAMES,
  modelAt,
  models,
  nextModel,
  whereItListens
} from '../../../src/lib/evaluation/models.js';
import { answerNow, checkSolvable } from '../../../src/lib/evaluation/solve-now.js';
import { levelDb } from '../../../src/lib/numeric/level-db.js';
import { logGrid } from '../../../src/lib/numeric/log-grid.js';
import { answeringWaves } from '../../../src/lib/workers/waves/answering-waves.js';
import { WaveCache } from '../../../src/lib/workers/waves/wave-cache.js';
import { toEnd } from '../../../src/lib/waves/curve/steps.js';
import { changesNothing } from '../../../src/lib/acoustics/rule/changes-nothing.js';
import { close } from '../../helpers/close.js';
import { AIR, DEMO, IN_FRONT, ovalIn } from '../../helpers/demo-installations.js';

const FREQUENCIES = Float64Array.of(200, 1000, 2500);
const ASIDE = { ...IN_FRONT, angleDeg: 60 };

const question = (installation = DEMO['flat plate'], listener: Listener = IN_FRONT): Question => ({
  installation,
  air: AIR,
  listener
});

/** A model's answer, as coarsely as it can be had. */
function answered(name: ModelName, asked = question()) {
  return answerNow(name, asked, models[name].accuracies[0] ?? 'full', 'full');
}

describe.each(MODEL_NAMES)('the table keeps its word of %s', (name) => {
  const model = models[name];

  test('off the axis: it hears something else there, or refuses', () => {
    const aside = question(DEMO['flat plate'], ASIDE);
    if (!model.offAxis) {
      expect(() => model.checkListener(ASIDE)).toThrow(RangeError);
      expect(() => answered(name, aside).respond(FREQUENCIES)).toThrow(RangeError);
      expect(whereItListens(name, ASIDE)).toEqual(IN_FRONT);
      return;
    }
    model.checkListener(ASIDE);
    expect(whereItListens(name, ASIDE)).toBe(ASIDE);
    const [there, front] = [answered(name, aside), answered(name)].map(({ respond }) =>
      levelDb(respond(FREQUENCIES))
    );
    there.forEach((level, i) => expect(Math.abs(level - front[i])).toBeGreaterThan(1));
  });

  test('a field: where it says so, its workers picture it', () => {
    const asked = {
      kind: 'polar',
      ...question(),
      accuracy: 'draft',
      frequency: 500,
      plane: 'width'
    } as const;
    const picture = () =>
      toEnd(answeringWaves({ ...asked, anglesDeg: Float64Array.of(0, 60) }, new WaveCache())) as Float64Array;
    expect(model.field).toBe(isAwaited(name));
    if (model.field) expect(picture()[0] - picture()[1]).toBeGreaterThan(1);
  });

  test('a load: given with the response, or not at all', () => {
    const { load } = answered(name).respond(FREQUENCIES);
    expect(load !== undefined).toBe(model.load);
    if (load) expect(load.re.length).toBe(FREQUENCIES.length);
  });

  test('ripples: a plate overshoots the endless one, or never does', () => {
    const level = levelDb(answered(name).respond(logGrid(500, 2900, 24)));
    expect(Math.max(...level) > 1).toBe(model.ripples);
  });

  test('a size that changes none of the rule’s figures changes nothing, or something', () => {
    const shell = (length: number) =>
      ovalIn({ kind: 'shell', length, width: 0.033, height: 0.04, ends: 'closed', offset: 0 });
    expect(changesNothing(shell(0.152), 'length', AIR)).toBe(true);
    const [short, long] = [0.152, 0.148].map((length) =>
      levelDb(answered(name, question(shell(length))).respond(FREQUENCIES))
    );
    expect(short.every((level, i) => level === long[i])).toBe(model.figuresTellAll);
  });

  test('it is awaited where it is solved, and another that answers at once stands in', () => {
    expect(isAwaited(name)).toBe(model.accuracies.length > 0);
    const unknown = answerOf(name, question(DEMO['flat plate'], ASIDE), null);
    if (model.standIn === null) return expect(unknown.model).toBe(name);
    expect(unknown.model).toBe(model.standIn);
    expect(isAwaited(model.standIn)).toBe(false);
    // Where the one that stands in cannot listen there, it listens where it can.
    expect(levelDb(unknown.respond(FREQUENCIES))).toEqual(
      levelDb(answered(model.standIn).respond(FREQUENCIES))
    );
  });

  test('all but the finest accuracy is provisional, and a finer one is solved higher', () => {
    const bare = question(DEMO['free air']);
    const answers = model.accuracies.map((accuracy) => answerNow(name, bare, accuracy, 'full'));
    expect(answers.map(({ accuracy }) => accuracy)).toEqual(model.accuracies);
    expect(answers.map(({ provisional }) => provisional)).toEqual(
      answers.map((_, i) => i < answers.length - 1)
    );
    const solvedTo = answers.map((answer) => answer.solvedTo);
    expect(solvedTo).toEqual([...solvedTo].sort((a, b) => a - b));
    if (answers.length === 0)
      expect(answered(name)).toMatchObject({ accuracy: null, provisional: false, solvedTo: Infinity });
  });

  test('the mount alone has no resonance of the speaker', () => {
    const low = Float64Array.of(50, 100);
    const accuracy = model.accuracies[0] ?? 'full';
    const [ideal, full] = (['ideal', 'full'] as const).map((speaker) =>
      levelDb(answerNow(name, question(), accuracy, speaker).respond(low))
    );
    close(ideal[1] - ideal[0], 20 * Math.log10(2), { abs: 0.1, because: 'a dipole rises with f' });
    expect(full[1] - full[0]).toBeGreaterThan(15);
  });

  test('what cannot be built is refused before it is solved; what cannot be solved, by what is solved', () => {
    const small = ovalIn({ kind: 'plate', shape: 'rectangle', length: 0.03, width: 0.03, offset: [0, 0] });
    expect(() => checkSolvable(name, question(small), 'draft')).toThrow(/is larger than the plate/);
    const slender = ovalIn({ kind: 'plate', shape: 'rectangle', length: 3, width: 0.03, offset: [0, 0] });
    const check = () => checkSolvable(name, question(slender), 'draft');
    if (model.accuracies.length > 0) expect(check).toThrow(/too large or too slender/);
    else check();
  });
});

test('the choice goes round, and the air is asked of a model that knows it', () => {
  let name = MODEL_NAMES[0];
  const seen = MODEL_NAMES.map(() => (name = nextModel(name, IN_FRONT)));
  expect(new Set(seen)).toEqual(new Set(MODEL_NAMES));
  expect(name).toBe(MODEL_NAMES[0]);
  expect(models[FIELD_MODEL].field).toBe(true);
});

test('of a mount with openings only those answer that know them, and the rule stands in for the bare mount', () => {
  const bare = DEMO['closed box'];
  const leaky = { ...bare, mount: { ...bare.mount, leak: { gap: 1e-4, length: 0.12, depth: 0.001 } } };
  expect(MODEL_NAMES.map((name) => modelAt(name, IN_FRONT, [bare.mount, leaky.mount]))).toEqual(
    MODEL_NAMES.map(() => 'wave')
  );
  expect(MODEL_NAMES.map((name) => modelAt(name, IN_FRONT, [bare.mount]))).toEqual(MODEL_NAMES);
  expect(nextModel('wave', IN_FRONT, [leaky.mount])).toBe('wave');
  expect(asItKnows('rule', question(leaky)).installation).toEqual(bare);
  expect(asItKnows('wave', question(leaky)).installation).toBe(leaky);
  expect(() => answerOf('rule', question(leaky), null).respond(Float64Array.of(500))).toThrow(
    'the rule of thumb knows nothing of a leak of a mount: ask for the wave solution, or leave mount.leak out'
  );
});

test('over a board only those answer that know it, and another stands in for what it knows', () => {
  const over = { ...IN_FRONT, angleDeg: 60, board: true };
  expect(MODEL_NAMES.map((name) => modelAt(name, over))).toEqual(MODEL_NAMES.map(() => 'wave'));
  expect(MODEL_NAMES.map((name) => modelAt(name, IN_FRONT))).toEqual(MODEL_NAMES);
  expect(nextModel('wave', over)).toBe('wave');
  const installation = { ...DEMO['flat plate'], board: { above: 0.03, facing: 'up' as const } };
  const asked = asItKnows('rule', { ...question(installation), listener: over });
  expect(asked.installation).toEqual(DEMO['flat plate']);
  expect(asked.listener).toEqual(IN_FRONT);
  expect(asItKnows('wave', { ...question(installation), listener: over }).installation).toBe(installation);
  const meanwhile = answerOf('wave', { ...question(installation), listener: over }, null);
  expect(meanwhile.model).toBe('rule');
  expect(meanwhile.respond(Float64Array.of(500)).re).toEqual(
    answerOf('rule', question(DEMO['flat plate']), null).respond(Float64Array.of(500)).re
  );
});

import { expect, test } from 'vitest';
import type { Listener } from '../../../../../src/lib/acoustics/listener.js';
import { answerOf, whereItListens } from '../../../../../src/lib/evaluation/models.js';
import { compute, type Computed } from '../../../../../src/lib/evaluation/stand.js';
import type { ModelName } from '../../../../../src/lib/file/bench-file.js';
import { demoBench } from '../../../../../src/lib/file/demo-bench.js';
import { readBenchFile } from '../../../../../src/lib/file/read-bench-file.js';
import { writeBenchFile } from '../../../../../src/lib/file/write-bench-file.js';
import { holdsFor } from '../../../../../src/lib/screens/parts/words/holds-for.js';
import { hearWaves } from '../../../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../../../src/lib/waves/wave-solution.js';
import { AIR, DEMO, IN_FRONT } from '../../../../helpers/demo-installations.js';
import { computedByRule } from '../../../../helpers/by-rule.js';

const ASIDE: Listener = { angleDeg: 60, plane: 'width', distance: 0.8 };
const rule = computedByRule(DEMO['flat plate']);
const wave = byWave(DEMO['flat plate'], ASIDE);

function byWave(installation: Parameters<typeof solveMount>[0], listener: Listener): Computed {
  const heard = hearWaves(solveMount(installation, AIR, { accuracy: 'draft' }), listener);
  const answer = answerOf('wave', { installation, air: AIR, listener }, { accuracy: 'draft', heard });
  return compute(installation, AIR, answer, 48000);
}

function said(
  model: ModelName,
  place: Listener,
  heard = model === 'wave' ? wave : rule,
  against = heard,
  view: Partial<ReturnType<typeof demoBench>['view']> = {}
): string {
  const file = { ...demoBench(), view: { ...demoBench().view, model, ...view } };
  return holdsFor({
    file,
    listener: whereItListens(model, place),
    heard: { computed: heard },
    measuredAgainst: { computed: against }
  });
}

test('the sound, the model, the place and the drive', () => {
  expect(said('wave', ASIDE)).toBe('this sound, wave solution, 60° to the side at 0.8 m, same drive');
  expect(said('wave', IN_FRONT)).toBe(
    'this sound, wave solution, in front of the cone, far away, same drive'
  );
  expect(said('wave', { angleDeg: -30, plane: 'length' })).toContain('30° towards the end, far away');
});

test('the rule of thumb listens in front, wherever the ear is', () => {
  expect(said('rule', ASIDE)).toBe('this sound, rule of thumb, in front of the cone at 0.8 m, same drive');
});

test('as long as the waves are awaited, it says what the figure was found by', () => {
  expect(said('wave', ASIDE, rule)).toBe(
    'this sound, rule of thumb for now, in front of the cone at 0.8 m, same drive'
  );
  expect(said('wave', ASIDE, wave, rule)).toContain('wave solution against rule of thumb');
});

test('the figure stays that at the same drive while all are played equally loud', () => {
  expect(said('rule', IN_FRONT, rule, rule, { sameLoudness: true })).toMatch(
    /same drive; played equally loud now$/
  );
});

test('a lift is told of the figure that holds for it', () => {
  const file = { ...demoBench(), lift: { gainDb: 6, below: 300 } };
  const heard = { computed: null };
  expect(holdsFor({ file, listener: IN_FRONT, heard, measuredAgainst: heard })).toMatch(
    /, same drive and lift$/
  );
});

test('a bench that was kept with the rule of thumb says so, and a new one the wave solution', () => {
  const kept = { ...demoBench(), view: { ...demoBench().view, model: 'rule' as const } };
  expect(said(readBenchFile(writeBenchFile(kept)).view.model, IN_FRONT)).toContain('rule of thumb');
  expect(said(demoBench().view.model, IN_FRONT)).toContain('wave solution');
});

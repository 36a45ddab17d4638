import { expect, test } from 'vitest';
import { demoBench } from '../../../src/lib/file/demo-bench.js';
import { installationOf } from '../../../src/lib/file/installation-of.js';
import { Stands } from '../../../src/lib/evaluation/stands.js';
import type { Known, Question } from '../../../src/lib/evaluation/wave-jobs.js';
import { hearWaves } from '../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../src/lib/waves/wave-solution.js';
import { IN_FRONT } from '../../helpers/demo-installations.js';

const PLATE = 1;
const wave = { ...demoBench(), view: { ...demoBench().view, model: 'wave' as const } };

/** The flat plate of the demo, asked again for each thing that is known of it in turn; the other mounts wait. */
function standsBy() {
  const solved = solveMount(installationOf(wave, wave.setups[PLATE]), wave.air, { accuracy: 'draft' });
  const draft: Known = { accuracy: 'draft', heard: hearWaves(solved, IN_FRONT) };
  let known: Known | null = null;
  let refused: string | null = null;
  const stands = new Stands({
    best: ({ installation }) => (installation.mount.kind === 'plate' ? known : null),
    refusal: ({ installation }) => (installation.mount.kind === 'plate' ? refused : null)
  });
  return {
    draft,
    full: { ...draft, accuracy: 'full' } satisfies Known,
    at: (now: Known | null, file = wave) => {
      known = now;
      return stands.of(file, IN_FRONT, 48000)[PLATE];
    },
    refused: (why: string) => {
      [known, refused] = [null, why];
      return stands.of(wave, IN_FRONT, 48000)[PLATE];
    }
  };
}

test('the rule of thumb stands in until something is known, then the draft, then the full solution', () => {
  const { at, draft, full } = standsBy();
  const said = [null, draft, full].map((known) => {
    const { computed, awaited } = at(known);
    return [computed!.answer.model, computed!.answer.accuracy, awaited];
  });
  expect(said).toEqual([
    ['rule', null, true],
    ['wave', 'draft', true],
    ['wave', 'full', false]
  ]);
});

test('nothing is made anew where nothing has changed', () => {
  const { at, draft } = standsBy();
  expect(at(draft)).toBe(at(draft));
});

test('a better answer is no other mount; another size or another speaker is one', () => {
  const { at, draft, full } = standsBy();
  const first = at(null).installation;
  expect(at(draft).installation).toBe(first);
  expect(at(full).installation).toBe(first);
  const setups = wave.setups.map((setup, i) =>
    i === PLATE ? { ...setup, mount: { ...setup.mount, width: 0.09 } } : setup
  ) as typeof wave.setups;
  expect(at(full, { ...wave, setups }).installation).not.toBe(first);
  const speakers = { ...wave.speakers };
  const name = wave.setups[PLATE].speaker;
  speakers[name] = { ...speakers[name] };
  expect(at(full, { ...wave, speakers }).installation).not.toBe(first);
});

test('while another size is solved, the last solution stays; where it is refused, the rule of thumb comes', () => {
  const { at, full, refused } = standsBy();
  at(full);
  const setups = wave.setups.map((setup) => ({ ...setup }));
  const waiting = at(null, { ...wave, setups });
  expect([waiting.computed!.answer.model, waiting.awaited]).toEqual(['wave', true]);
  const stand = refused('too slender');
  expect([stand.computed!.answer.model, stand.awaited, stand.refused]).toEqual([
    'rule',
    false,
    'too slender'
  ]);
});

test('opened with a listener to the side, the rule of thumb stands in straight in front until there is a draft', () => {
  const aside = { ...IN_FRONT, angleDeg: 60 };
  const stands = new Stands({ best: () => null, refusal: () => null });
  const [front, side] = [IN_FRONT, aside].map((listener) => stands.of(wave, listener, 48000)[PLATE]);
  expect([side.problem, side.awaited, side.computed!.answer.model]).toEqual([null, true, 'rule']);
  expect(side.computed!.responseDb).toEqual(front.computed!.responseDb);
});

test('a board is another place for every mount, and the model that knows it is asked', () => {
  const asked: Question[] = [];
  const stands = new Stands({ best: (question) => (asked.push(question), null), refusal: () => null });
  const file = { ...wave, view: { ...wave.view, model: 'rule' as const } };
  const [held] = stands.of(file, file.listener, 48000);
  expect([held.installation.board, asked.length]).toEqual([undefined, 0]);
  const over = { ...file, listener: { angleDeg: 60, plane: 'width' as const, board: true } };
  const placed = stands.of(over, over.listener, 48000);
  expect(placed.map(({ installation }) => installation.board?.above)).toEqual([0.035, 0.035, 0.014, 0.02]);
  expect(placed.every(({ awaited, problem }) => awaited && problem === null)).toBe(true);
  expect(asked.at(-1)!.listener).toBe(over.listener);
  const [again] = stands.of(file, file.listener, 48000);
  expect(again.installation.board).toBeUndefined();
});

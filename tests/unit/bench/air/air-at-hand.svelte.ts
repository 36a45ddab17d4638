import { flushSync } from 'svelte';
import type { Installation } from '../../../../src/lib/acoustics/installation.js';
import { AirQuestion, type HeardBench } from '../../../../src/lib/bench/air/air-question.svelte.js';
import type { SectionPicture } from '../../../../src/lib/bench/air/section-picture.js';
import type { Stand } from '../../../../src/lib/evaluation/stand.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import type { FieldImage } from '../../../../src/lib/waves/field/field-on-grid.js';
import { DEMO } from '../../../helpers/demo-installations.js';
import { poolAtHand } from '../../../helpers/pool-at-hand.js';

/** A stand of which the wave solution is known so finely and up to there, or not at all. */
export function stand(
  installation: Installation,
  {
    solvedTo,
    accuracy = 'full',
    drive = 1,
    ...rest
  }: Partial<Stand> & { solvedTo?: number; accuracy?: 'draft' | 'full'; drive?: number } = {}
): Stand {
  const answer = { model: 'wave', accuracy, provisional: accuracy !== 'full', solvedTo, drive };
  const computed = solvedTo === undefined ? null : { answer };
  return { installation, computed, problem: null, refused: null, ...rest } as unknown as Stand;
}

export const PLATE = DEMO['flat plate'];
export const SHELL = DEMO['cab body'];

/** A bench that a test turns, of which nothing but what the air asks about is there. */
export function benchAtHand() {
  const demo = demoBench();
  let heard = $state.raw(stand(PLATE));
  let measuredAgainst = $state.raw<Stand | null>(null);
  let file = $state.raw({ ...demo, view: { ...demo.view, model: 'wave' as 'wave' | 'rule' } });
  let listener = $state.raw<HeardBench['listener']>({ angleDeg: 0, plane: 'length' });
  let dragging = $state(false);
  const bench: HeardBench = {
    get model() {
      return file.view.model;
    },
    get heard() {
      return heard;
    },
    get measuredAgainst() {
      return measuredAgainst ?? heard;
    },
    get file() {
      return file;
    },
    get listener() {
      return listener;
    },
    get dragging() {
      return dragging;
    }
  };
  const turned =
    <T>(turn: (to: T) => unknown) =>
    (to: T): void => {
      turn(to);
      flushSync();
    };
  return {
    bench,
    hear: turned((to: Stand) => (heard = to)),
    measureAgainst: turned((to: Stand | null) => (measuredAgainst = to)),
    setModel: turned((model: 'wave' | 'rule') => (file = { ...file, view: { ...file.view, model } })),
    setTemperature: turned((temperatureC: number) => (file = { ...file, air: { temperatureC } })),
    listenIn: turned((plane: 'length' | 'width') => (listener = { ...listener, plane })),
    drag: turned((on: boolean) => (dragging = on))
  };
}

/** A section of 12 × 6 pixels, and a note of what was covered. */
export function sectionAtHand() {
  const covered: { images: readonly FieldImage[]; installation: Installation; columns: number }[] = [];
  const section: SectionPicture = {
    grid: (_, plane) => ({ plane, left: -0.2, right: 0.2, bottom: -0.1, top: 0.1, columns: 12, rows: 6 }),
    coverCone: (images, { columns }, installation) => void covered.push({ images, installation, columns })
  };
  return { section, covered };
}

export function image(value = 0): FieldImage {
  return { re: new Float32Array(72).fill(value), im: new Float32Array(72) };
}

/** The question, the workers and the section that a test has in its hands, and what was reported. */
export function airAtHand() {
  const hand = { ...benchAtHand(), ...poolAtHand(), ...sectionAtHand() };
  const reports: (string | null)[] = [];
  const report = (problem: unknown): void =>
    void reports.push(problem === null ? null : (problem as Error).message);
  return { ...hand, question: new AirQuestion(hand.bench), report, reports };
}

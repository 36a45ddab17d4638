import { describe, expect, test } from 'vitest';
import { soundSpeed } from '../../../../../src/lib/acoustics/air.js';
import { usualAbove } from '../../../../../src/lib/acoustics/mounts/board.js';
import type { Installation } from '../../../../../src/lib/acoustics/installation.js';
import { sectionGrid } from '../../../../../src/lib/screens/air/section-grid.js';
import { puffStage, puffStages } from '../../../../../src/lib/screens/parts/waves/puff-stages.js';
import { puffAt, puffField, puffFrequencies, puffImage } from '../../../../../src/lib/waves/field/puff.js';
import { mountProblem } from '../../../../../src/lib/waves/solve/mount-problem.js';
import { AIR, DEMO } from '../../../../helpers/demo-installations.js';

const mm = (metres: number) => `${Math.round(1000 * metres)} mm`;
/** So far in front of the cone the usual picture ends. */
const TOP = sectionGrid(DEMO['flat plate'], 'width').top;
const told = (installation: Installation) => puffStages(installation, AIR, TOP, mm);

test('the stages follow each other, and name the way round', () => {
  for (const installation of Object.values(DEMO)) {
    const { stages } = told(installation);
    for (let i = 1; i < stages.length; i++) expect(stages[i].from).toBeGreaterThan(stages[i - 1].from);
    expect(puffStage({ stages, moral: '' }, -1)).toBe(0);
    expect(puffStage({ stages, moral: '' }, 1)).toBe(stages.length - 1);
  }
  expect(told(DEMO['cab body']).stages[1].sentence).toBe('Blue comes round the edge, 113 mm to the front.');
  expect(told(DEMO['flat plate']).stages).toHaveLength(4);
});

describe('what is told is what the solved puff does', () => {
  /** Pressure of the solved puff so far in front of the cone, a hand's breadth unless told, as a function of the time. */
  function inFront(installation: Installation, away = 0.095): (time: number) => number {
    const { problem } = mountProblem(installation, AIR, { accuracy: 'draft' });
    const frequencies = puffFrequencies(20000);
    // Above the cone, wherever it looks.
    const up = installation.board?.facing === 'down' ? -1 : 1;
    const [bottom, top] = [up * away - 0.001, up * away + 0.001];
    const images = [...frequencies].map((f) =>
      puffImage(problem, soundSpeed(AIR), f, {
        plane: 'width',
        left: -0.001,
        right: 0.001,
        bottom,
        top,
        columns: 1,
        rows: 1
      })
    );
    const field = puffField(frequencies, images);
    const into = new Float32Array(1);
    return (time) => {
      puffAt(field, time, into);
      return into[0];
    };
  }
  const times = (from: number, to: number) =>
    Array.from({ length: 40 }, (_, i) => from + ((to - from) * i) / 39);
  /** From the cone to the point, in time. */
  const AWAY = 0.095 / soundSpeed(AIR);

  for (const name of ['free air', 'flat plate', 'cab body'])
    test(`${name}: orange first; blue is there when it is said to follow, and not before`, () => {
      const pressure = inFront(DEMO[name]);
      const { stages } = told(DEMO[name]);
      const most = Math.max(...times(AWAY - 3e-4, AWAY + 3e-4).map(pressure));
      expect(Math.min(...times(-3e-4, AWAY).map(pressure))).toBeGreaterThan(-0.02 * most);
      const follows = AWAY + stages[2].from;
      expect(Math.min(...times(follows, follows + 2.5e-4).map(pressure))).toBeLessThan(-0.4 * most);
    });

  test.each(['free air', 'flat plate'])(
    '%s: when orange has left the picture, blue alone is in front',
    (name) => {
      const pressures = [0.02, 0.05, 0.08, TOP - 0.004].map((away) => inFront(DEMO[name], away));
      const { from } = told(DEMO[name]).stages.at(-1)!;
      for (const time of times(from, from + 1e-4)) {
        const seen = pressures.map((pressure) => pressure(time));
        expect(Math.max(...seen)).toBeLessThan(0.25 * Math.max(...seen.map(Math.abs)));
      }
      // Before that it still is in the picture.
      expect(pressures.at(-1)!(from - 2e-4)).toBeGreaterThan(0);
    }
  );

  test('round a long way blue comes when orange has left the picture: it is not said to follow within it', () => {
    const wide = { ...DEMO['flat plate'], mount: { ...DEMO['flat plate'].mount, width: 0.25, length: 0.25 } };
    const sentences = told(wide as Installation).stages.map(({ sentence }) => sentence);
    expect(sentences).not.toContain('It follows orange, too late to cancel it.');
  });

  test('closed box: blue inside grows as long as one looks on', () => {
    const inside = inFront(DEMO['closed box'], -0.012);
    const { stages } = told(DEMO['closed box']);
    const seen = times(stages[2].from, 2.1e-3).map(inside);
    seen.forEach((pressure, i) => expect(pressure).toBeLessThan(i === 0 ? 0 : seen[i - 1]));
  });

  test('cab body: when the air in the shell swings on, orange comes again', () => {
    const pressure = inFront(DEMO['cab body']);
    const most = Math.max(...times(AWAY - 3e-4, AWAY + 3e-4).map(pressure));
    const { from } = told(DEMO['cab body']).stages[3];
    expect(Math.max(...times(AWAY + from, AWAY + from + 6e-4).map(pressure))).toBeGreaterThan(0.1 * most);
  });

  function over(name: string, facing: 'up' | 'down'): Installation {
    const one = DEMO[name];
    return { ...one, board: { facing, above: usualAbove(one.speaker, one.mount, facing) } };
  }

  for (const facing of ['up', 'down'] as const)
    for (const name of ['free air', 'flat plate', 'cab body'])
      test(`${name} over a board, cone ${facing}: the colours come in the order in which they are told, and the air swings on where it is said to`, () => {
        const sign = facing === 'up' ? 1 : -1;
        const pressure = inFront(over(name, facing));
        const { stages } = told(over(name, facing));
        const first = (time: number) => sign * pressure(time);
        const most = Math.max(...times(AWAY - 3e-4, AWAY + 3e-4).map(first));
        // Round a bare frame the second is close behind.
        expect(Math.min(...times(-3e-4, AWAY - 1e-4).map(first))).toBeGreaterThan(-0.02 * most);
        const follows = AWAY + stages[2].from;
        expect(stages[2].sentence).toContain(facing === 'up' ? 'follows orange' : 'follows blue');
        expect(Math.min(...times(follows, follows + 2.5e-4).map(first))).toBeLessThan(-0.4 * most);
        const { sentence, from } = stages[3];
        if (sentence.includes('swings on')) {
          const later = Math.max(...times(AWAY + from, AWAY + from + 6e-4).map(first));
          expect(later).toBeGreaterThan(0.4 * most);
        } else {
          const left = times(AWAY + from, 2e-3).map((time) => Math.abs(first(time)));
          expect(Math.max(...left)).toBeLessThan(0.25 * most);
          expect(Math.max(...left.slice(20))).toBeLessThan(0.06 * most);
        }
        // In the hand the air behind a plate is nearly still by then.
        if (name === 'flat plate') {
          const inHand = inFront(DEMO[name]);
          const [there, here] = [first, inHand].map((of) =>
            Math.max(...times(AWAY + from, AWAY + from + 6e-4).map(of))
          );
          expect(there).toBeGreaterThan(2.5 * here);
        }
      });

  test.each(['up', 'down'] as const)(
    'closed box over a board, cone %s: what the board throws back is orange, and nothing blue follows',
    (facing) => {
      const pressure = inFront(over('closed box', facing));
      const inHand = inFront(DEMO['closed box']);
      const most = Math.max(...times(AWAY - 3e-4, AWAY + 3e-4).map(pressure));
      expect(Math.min(...times(-3e-4, 2e-3).map(pressure))).toBeGreaterThan(-0.06 * most);
      // It adds: all that comes by takes in more than without the board.
      const sum = (of: (time: number) => number) =>
        times(0, 1.2e-3).reduce((total, time) => total + of(time), 0);
      expect(sum(pressure)).toBeGreaterThan(1.4 * sum(inHand));
    }
  );

  test('closed box: what follows orange is next to nothing', () => {
    const pressure = inFront(DEMO['closed box']);
    const most = Math.max(...times(AWAY - 3e-4, AWAY + 3e-4).map(pressure));
    const { from } = told(DEMO['closed box']).stages[2];
    const after = times(AWAY + from + 2e-4, 2e-3).map((t) => Math.abs(pressure(t)));
    expect(Math.max(...after)).toBeLessThan(0.06 * most);
  });
});

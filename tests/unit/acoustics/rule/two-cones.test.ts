import { describe, expect, it, test } from 'vitest';
import type { Installation } from '../../../../src/lib/acoustics/installation.js';
import type { Second } from '../../../../src/lib/acoustics/mounts/second.js';
import { ruleDriven, ruleOfThumb } from '../../../../src/lib/acoustics/rule/rule-of-thumb.js';
import { ruleFigures } from '../../../../src/lib/acoustics/rule/rule-figures.js';
import { accelerations } from '../../../../src/lib/acoustics/speaker/driven-cones.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { close } from '../../../helpers/close.js';

const AIR = { temperatureC: 20 };
const IN_FRONT = { angleDeg: 0, plane: 'width' } as const;
const GRID = Float64Array.of(50, 200, 500, 1000, 4000);
const PLATE: Installation = {
  speaker: SPEAKERS.oval,
  mount: { kind: 'plate', shape: 'rectangle', length: 0.16, width: 0.1, offset: [-0.04, 0] },
  turn: 0
};
const BOX: Installation = {
  speaker: SPEAKERS.oval,
  mount: { kind: 'box', length: 0.12, width: 0.03, depth: 0.02 },
  turn: 0
};

const withSecond = (one: Installation, at: Second['at'], more: Partial<Second> = {}): Installation => ({
  ...one,
  second: { at, reversed: false, wiring: 'parallel', ...more }
});
const sizes = (one: Installation, speaker: 'ideal' | 'full' = 'full'): number[] => {
  const { re, im } = ruleOfThumb(one, AIR, IN_FRONT, GRID, speaker);
  return [...re.keys()].map((i) => Math.hypot(re[i], im[i]));
};

describe('two at mirrored places of a plate, by the rule of thumb', () => {
  it.each<[Partial<Second>, 'ideal' | 'full', number]>([
    [{}, 'ideal', 2],
    [{}, 'full', 2],
    [{ wiring: 'series' }, 'ideal', 2],
    [{ wiring: 'series' }, 'full', 1],
    [{ reversed: true }, 'full', 0],
    [{ reversed: true, wiring: 'series' }, 'ideal', 0]
  ])('%j, %s: %d times one', (more, speaker, times) => {
    const one = sizes(PLATE, speaker);
    sizes(withSecond(PLATE, [0.04, 0], more), speaker).forEach((size, i) =>
      close(size, times * one[i], { abs: 1e-12 * one[i], because: 'the same sections twice' })
    );
  });
});

test('each has the arm of its own place', () => {
  const near = withSecond(PLATE, [0.04, 0.025]);
  const alone = sizes({
    ...PLATE,
    mount: { ...PLATE.mount, offset: [0.04, 0.025] } as Installation['mount']
  });
  const [both, one] = [sizes(near)[0], sizes(PLATE)[0]];
  close(both, one + alone[0], { rel: 1e-3, because: 'at 50 Hz both sections have the same phase' });
});

test('in a box two in phase resonate as two in half of it each, reversed as in free air', () => {
  const half = { ...BOX, mount: { ...BOX.mount, length: 0.06 } } as Installation;
  const figures = (one: Installation) => ruleFigures(one, AIR);
  close(figures(withSecond(BOX, [0.042, 0])).box!.fc, figures(half).box!.fc, {
    rel: 1e-12,
    because: 'the same air for each'
  });
  const reversed = figures(withSecond(BOX, [0.042, 0], { reversed: true }));
  expect(reversed.box!.fc).toBe(reversed.speaker.fs);
  expect(reversed.box!.alpha).toBe(0);
});

test.each<[string, Installation]>([
  ['one', PLATE],
  ['one in a box', BOX],
  ['two in a box', withSecond(BOX, [0.042, 0])],
  ['two in series', withSecond(BOX, [0.042, 0], { wiring: 'series' })]
])('what a voltage moves is what is heard: %s', (_, one) => {
  const [moved] = accelerations(ruleDriven(one, AIR, GRID));
  const ideal = sizes(one, 'ideal');
  sizes(one).forEach((size, i) =>
    close(size, ideal[i] * Math.hypot(moved.re[i], moved.im[i]), {
      rel: 1e-9,
      because: 'Small’s high-pass, once in closed form and once from the equation of motion'
    })
  );
});

import { expect, test } from 'vitest';
import { reachesDown } from '../../../src/lib/acoustics/figures/reaches-down.js';
import { ruleOfThumb } from '../../../src/lib/acoustics/rule/rule-of-thumb.js';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { FALL } from '../../../src/lib/evaluation/fit/ranking.js';
import { PICTURE_GRID } from '../../../src/lib/evaluation/stand.js';
import { ladder, SIDES, STEP, type Sides } from '../../../src/lib/fitting/ladder.js';
import { leastBox } from '../../../src/lib/fitting/ways.js';
import { ACCURACY } from '../../../src/lib/waves/mesh/accuracy.js';
import { random } from '../../../src/lib/sounds/blocks/random.js';

const { uniform } = random(41);
const CASES = Object.values(SPEAKERS).flatMap((speaker) =>
  [1.02, 1.3, 2, 4].map((grown) => {
    const least = leastBox(speaker, 0);
    const most = Object.fromEntries(
      SIDES.map((side) => [side, least[side] * (1 + (grown - 1) * uniform())])
    ) as Sides;
    return { speaker, least, most, sizes: ladder(least, most, speaker.bodyVolume) };
  })
);
const inside = ({ length, width, depth }: Sides) => length * width * depth;

test('it goes from the least to the largest box in whole tenths of a millimetre, each side growing', () => {
  for (const { least, most, sizes } of CASES) {
    expect(sizes[0]).toEqual(least);
    for (const side of SIDES) {
      const all = sizes.map((one) => one[side]);
      expect(all).toEqual([...all].sort((a, b) => a - b));
      expect(most[side] - all.at(-1)!).toBeGreaterThan(-1e-9);
      expect(most[side] - all.at(-1)!).toBeLessThan(1e-4);
      for (const length of all.slice(1))
        if (length !== least[side])
          expect(Math.abs(length * 1e4 - Math.round(length * 1e4))).toBeLessThan(1e-6);
    }
  }
});

test('no step has more air than told, but for the tenths to which sides are rounded', () => {
  for (const { speaker, sizes } of CASES)
    for (let i = 1; i < sizes.length; i++) {
      const [a, b] = [sizes[i - 1], sizes[i]];
      const rounded = SIDES.reduce((product, side) => product * (a[side] + 1e-4), 1);
      expect(inside(b) - speaker.bodyVolume).toBeLessThanOrEqual(
        STEP * (rounded - speaker.bodyVolume) + 1e-12
      );
    }
});

test('by the rule of thumb, what lies between two sizes reaches as far down as one of them, within the error of two drafts', () => {
  const tie = (2 * ACCURACY.draft.errorDb) / FALL;
  const air = { temperatureC: 20 };
  let [count, worst] = [0, 0];
  for (const { speaker, sizes } of CASES) {
    const octaves = (sides: Sides) => {
      const installation = { speaker, mount: { kind: 'box' as const, ...sides }, turn: 0 as const };
      const response = ruleOfThumb(installation, air, { angleDeg: 0, plane: 'width' }, PICTURE_GRID, 'full');
      return Math.log2(reachesDown(response)!);
    };
    for (let i = 1; i < sizes.length; i++) {
      const [a, b] = [sizes[i - 1], sizes[i]];
      const [least, most] = [octaves(a), octaves(b)];
      const share = uniform();
      // all sides half-way, and each for itself
      for (const between of [() => share, uniform]) {
        const sides = Object.fromEntries(
          SIDES.map((side) => [side, a[side] + between() * (b[side] - a[side])])
        );
        const away = octaves(sides as Sides);
        worst = Math.max(worst, Math.min(Math.abs(away - least), Math.abs(away - most)));
        count++;
      }
    }
  }
  expect(worst).toBeLessThan(tie);
  // a step twice as large would not hold it
  expect(worst).toBeGreaterThan(tie / 2);
  expect(count).toBeGreaterThan(100);
});

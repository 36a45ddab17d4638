import { expect, test } from 'vitest';
import type { Installation } from '../../../../src/lib/acoustics/installation.js';
import type { Speaker } from '../../../../src/lib/acoustics/speaker/speaker.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { hearWaves, heardResponse } from '../../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../../src/lib/waves/wave-solution.js';
import { AIR, DEMO, IN_FRONT } from '../../../helpers/demo-installations.js';

const GRID = Float64Array.of(0, 100, 300, 1000, 3000, 9000);

const weaker = (speaker: Speaker): Speaker => ({
  ...speaker,
  motor: { ...speaker.motor, bl: speaker.motor.bl / 2 }
});

const ROUND = SPEAKERS['round-23'];
const PAIR: Installation = {
  speaker: ROUND,
  mount: { kind: 'box', length: 0.08, width: 0.03, depth: 0.02 },
  turn: 0,
  second: { at: [0.025, 0], reversed: true, wiring: 'series' }
};

// What is read off on a grid is kept for the next speaker there: whoever writes into it spoils the next answer.
test.each([
  ['a plate', DEMO['flat plate']],
  ['a box', DEMO['closed box']],
  ['two cones', PAIR]
] as const)('a changed motor is answered as if nothing had been asked before: %s', (_, installation) => {
  const heard = hearWaves(solveMount(installation, AIR, { accuracy: 'draft' }), IN_FRONT);
  const other = { ...installation, speaker: weaker(installation.speaker) };
  for (const asked of [installation, other, installation])
    for (const speaker of ['ideal', 'full', 'ideal'] as const)
      expect(heardResponse(heard, asked, AIR, GRID, speaker)).toEqual(
        heardResponse(structuredClone(heard), asked, AIR, GRID.slice(), speaker)
      );
});

test('what was read off for one grid or one air is not given for another', () => {
  const installation = DEMO['flat plate'];
  const heard = hearWaves(solveMount(installation, AIR, { accuracy: 'draft' }), {
    angleDeg: 60,
    plane: 'width',
    distance: 0.9
  });
  const first = heardResponse(heard, installation, AIR, GRID);
  expect(heardResponse(heard, installation, AIR, GRID.slice(1)).re).toEqual(first.re.slice(1));
  const cold = { temperatureC: -10 };
  const inTheCold = heardResponse(heard, installation, cold, GRID);
  expect(inTheCold.re).toEqual(heardResponse(structuredClone(heard), installation, cold, GRID).re);
  expect(inTheCold.re).not.toEqual(first.re);
});

import { expect, test } from 'vitest';
import { boardKnob } from '../../../../src/lib/acoustics/mounts/board-knob.js';
import { usualAbove } from '../../../../src/lib/acoustics/mounts/board.js';
import type { Installation } from '../../../../src/lib/acoustics/installation.js';
import { DEMO } from '../../../helpers/demo-installations.js';
import { everyInstallation, fits } from '../../../helpers/random-installations.js';

function over(installation: Installation, facing: 'up' | 'down', above?: number): Installation {
  const { speaker, mount } = installation;
  return { ...installation, board: { facing, above: above ?? usualAbove(speaker, mount, facing) } };
}

test('there is none in the hand', () => {
  for (const installation of everyInstallation()) expect(boardKnob(installation)).toBeNull();
});

test('wherever it is turned to, the mount can stand there', () => {
  for (const installation of [...everyInstallation(), DEMO['free air']])
    for (const facing of ['up', 'down'] as const) {
      const { min, max } = boardKnob(over(installation, facing))!;
      for (const above of [min, (min + max) / 2, max])
        expect(fits(over(installation, facing, above)), `${installation.speaker.name}, ${above}`).toBe(true);
    }
});

test('a magnet keeps a millimetre clear of the board, a mount that looks down comes as near', () => {
  const plate = DEMO['flat plate'];
  const { depth } = plate.speaker;
  const up = boardKnob(over(plate, 'up'))!.min;
  expect(up - depth).toBeGreaterThanOrEqual(0.001 - 1e-9);
  expect(up - depth).toBeLessThan(0.002);
  expect(boardKnob(over(plate, 'down'))!.min).toBe(0.001);
});

test('a file’s height beyond its ends stays', () => {
  expect(boardKnob(over(DEMO['closed box'], 'up', 0.7))).toMatchObject({ value: 0.7, max: 0.7, min: 0.001 });
  expect(boardKnob(over(DEMO['closed box'], 'up', 0.02))).toMatchObject({ value: 0.02, max: 0.1 });
});

import { expect, test } from 'vitest';
import { distanceFrom, distanceWords } from '../../../../../src/lib/format/distance-words.js';
import { placeWords } from '../../../../../src/lib/screens/parts/words/place-words.js';
import { close } from '../../../../helpers/close.js';

test('where one listens, in words', () => {
  expect(placeWords({ angleDeg: 0, plane: 'width' }, false)).toBe('in front of the cone, far away');
  expect(placeWords({ angleDeg: -75, plane: 'length', distance: 0.6 }, false)).toBe(
    '75° towards the end at 0.6 m'
  );
  expect(placeWords({ angleDeg: 180, plane: 'width', distance: 0.6096 }, true)).toBe(
    'behind the cone at 2 ft'
  );
  expect(placeWords({ angleDeg: 60, plane: 'width', distance: 0.9, board: true }, false)).toBe(
    'over the board, 60° to the side at 0.9 m'
  );
  expect(placeWords({ angleDeg: 0, plane: 'width', board: true }, false)).toBe(
    'over the board, straight above, far away'
  );
});

test('a distance as it is typed, and back', () => {
  const exact = { abs: 1e-12, because: 'defined' };
  close(distanceFrom('0,6', false), 0.6, exact);
  close(distanceFrom('2', true), 0.6096, exact);
  close(distanceFrom("2'", false), 0.6096, exact);
  close(distanceFrom('45 cm', true), 0.45, exact);
  close(distanceFrom('18 in', false), 0.4572, exact);
  expect(distanceFrom('far', false)).toBeNaN();
  for (const inches of [false, true])
    close(distanceFrom(distanceWords(1.25, inches), inches), 1.25, { abs: 0.005, because: 'three figures' });
});

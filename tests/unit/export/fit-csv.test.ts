import { expect, test } from 'vitest';
import type { FitPrediction } from '../../../src/lib/evaluation/fit/fit-now.js';
import { fitCsv } from '../../../src/lib/export/fit-csv.js';

const LINE: FitPrediction['ranking'][number] = {
  place: 1,
  tied: false,
  name: 'In the roof, 60 mm from the left, turned across',
  speaker: 'oval',
  way: 'roof',
  levelDb: 61.5,
  reachesDown: 243,
  unevennessDb: 4.25,
  space: 1.344e-5,
  price: 9,
  loudest: { levelDb: 75.5, volts: 5, limit: 'heat' },
  setup: {
    name: 'any',
    speaker: 'oval',
    mount: { kind: 'free' },
    turn: 0,
    notes: ''
  }
};

test('every line of the ranking is a row; what cannot be told is an empty cell', () => {
  const ranking = [LINE, { ...LINE, place: 2, tied: true, reachesDown: null, price: null, loudest: null }];
  const fitted: FitPrediction = {
    ...{ model: 'any', by: 'level', accuracy: 'draft', drive: 1, sounds: [] },
    ...{ ranking, untried: 0, refused: [], misfits: [] }
  };
  expect(fitCsv(fitted).split('\n')).toEqual([
    'place,tied,name,speaker,way,level_db,reaches_down_hz,unevenness_db,space_m3,price,loudest_db,loudest_v,limit',
    '1,no,"In the roof, 60 mm from the left, turned across",oval,roof,61.5,243,4.25,0.00001344,9,75.5,5,heat',
    '2,yes,"In the roof, 60 mm from the left, turned across",oval,roof,61.5,,4.25,0.00001344,,,,',
    ''
  ]);
});

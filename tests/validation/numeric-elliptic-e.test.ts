import { it } from 'vitest';
import { ellipticE } from '../../src/lib/numeric/elliptic-e.js';
import { close } from '../helpers/close.js';
import reference from '../reference/closed-forms.json';

it('has the values of Abramowitz and Stegun, table 17.1, E(m)', () => {
  // digits from memory
  const table = [
    [0, 1.570796327],
    [0.1, 1.530757637],
    [0.2, 1.489035058],
    [0.3, 1.445363064],
    [0.4, 1.399392139],
    [0.5, 1.350643881],
    [0.6, 1.298428035],
    [0.7, 1.241670568],
    [0.8, 1.178489924],
    [0.9, 1.104774733],
    [1, 1]
  ];
  for (const [m, e] of table) close(ellipticE(m), e, { abs: 6e-10, because: `m = ${m}, nine digits` });
});

it('agrees with SciPy (tests/reference/closed-forms.py)', () => {
  for (const { m, e } of reference.ellipticE)
    close(ellipticE(m), e, { rel: 1e-14, because: `m = ${m}: both in double precision` });
});

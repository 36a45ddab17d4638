import { expect, test } from 'vitest';
import { medianMs } from '../../../src/cli/median-ms.mjs';

test('once is once; else the operation is warmed up and repeated', () => {
  let calls = 0;
  medianMs(() => calls++, { once: true });
  expect(calls).toBe(1);
  medianMs(() => calls++, { budgetMs: 5 });
  expect(calls).toBeGreaterThan(6);
});

test('a slower operation takes longer', () => {
  const work = (n: number) => () => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += Math.sqrt(i);
    return sum;
  };
  const short = medianMs(work(2e4), { budgetMs: 20 });
  expect(medianMs(work(2e6), { budgetMs: 20 })).toBeGreaterThan(5 * short);
});

import { expect, test } from '@playwright/test';
import { keptHarness } from '../helpers/harness.js';

type Driven = typeof import('./harness/driven.js');

test('a blind switch is the same silence whether the mount changes or not, and does not click', async ({
  browser,
  baseURL
}) => {
  const harness = await keptHarness<Driven>(browser, baseURL, 'driven');
  // To itself, to others, and back.
  const switches = await harness.blindSwitches([0, 1, 1, 4, 0, 0, 2]);
  test.info().annotations.push({ type: 'measured', description: JSON.stringify(switches) });
  for (const { fell, rose } of switches) {
    // Down within 25 ms of the fade and the block under way, back 120 ms after the key: within 2 ms, by which a wave crosses zero.
    expect(Math.abs(fell / 48 - switches[0].fell / 48)).toBeLessThan(2);
    expect(Math.abs(rose / 48 - switches[0].rose / 48)).toBeLessThan(2);
    expect(fell / 48).toBeLessThan(40);
    expect(rose / 48).toBeGreaterThan(115);
  }
  expect((await harness.turning(['hearAcrossPause', 'setBranch', 'hear'], 3)).clickDb).toBeLessThan(-100);
});

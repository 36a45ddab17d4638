import { expect, test } from '@playwright/test';
import { keptHarness } from '../helpers/harness.js';

type Driven = typeof import('./harness/driven.js');
type Rides = typeof import('./harness/rides.js');
type Same = typeof import('./harness/same.js');

// On a driven clock (harness/driven-context.ts): the same samples whatever else the machine does.
test.describe.configure({ mode: 'parallel' });

/** The programme ends at 1 kHz: whatever the output holds above 8 kHz is a click. */
const INAUDIBLE_DB = -100;

/** Puts the figures into the report: they are worth knowing even when they pass. */
function note(figures: object): void {
  test.info().annotations.push({ type: 'measured', description: JSON.stringify(figures) });
  console.log(JSON.stringify(figures));
}

test('a steady sound has nothing in the band where clicks are looked for', async ({ browser, baseURL }) => {
  const figures = await (await keptHarness<Driven>(browser, baseURL, 'driven')).steady();
  note(figures);
  expect(figures.peak).toBeGreaterThan(0.05);
  expect(figures.clickDb).toBeLessThan(INAUDIBLE_DB - 10);
});

for (const [name, least, most] of [
  ['switching between mounts at 15 to 200 ms', 0.015, 0.2],
  ['mashing the keys at 2 to 30 ms', 0.002, 0.03]
] as const)
  test(`${name} does not click`, async ({ browser, baseURL }) => {
    const figures = await (await keptHarness<Driven>(browser, baseURL, 'driven')).mashed(5, least, most);
    note(figures);
    expect(figures.peak).toBeGreaterThan(0.1);
    expect(figures.clickDb).toBeLessThan(INAUDIBLE_DB);
  });

test('dragging a size, 60 filters a second, does not click', async ({ browser, baseURL }) => {
  const figures = await (await keptHarness<Driven>(browser, baseURL, 'driven')).dragged(5);
  note(figures);
  expect(figures.peak).toBeGreaterThan(0.1);
  expect(figures.clickDb).toBeLessThan(INAUDIBLE_DB);
});

const knobs = ['setBenchGain', 'setVolume', 'blow', 'setSound', 'silence', 'playOrStop'] as const;
for (const knob of knobs)
  test(`${knob} does not click`, async ({ browser, baseURL }) => {
    const figures = await (await keptHarness<Driven>(browser, baseURL, 'driven')).turning([knob], 3);
    note(figures);
    expect(figures.clickDb).toBeLessThan(INAUDIBLE_DB);
  });

test('all knobs at once do not click', async ({ browser, baseURL }) => {
  const figures = await (
    await keptHarness<Driven>(browser, baseURL, 'driven')
  ).turning(['hear', 'setBranch', ...knobs], 5);
  note(figures);
  expect(figures.clickDb).toBeLessThan(INAUDIBLE_DB);
});

for (const sampleRate of [48000, 96000])
  test(`the lever thrown up and down within a second does not click and does not stop, ${sampleRate} Hz`, async ({
    browser,
    baseURL
  }) => {
    const figures = await (await keptHarness<Rides>(browser, baseURL, 'rides')).thrown(sampleRate);
    note(figures);
    expect(figures.clickDb).toBeLessThan(INAUDIBLE_DB);
    expect(figures.quietest).toBeGreaterThan(0.01);
    // At full speed there are 41.6 humps a second; 2 ms for where a strong and a weak one cross the threshold.
    expect(figures.shortestGap).toBeGreaterThan(1 / 41.6 - 0.002);
  });

test('switching between mounts that are alike changes nothing', async ({ browser, baseURL }) => {
  const differenceDb = await (await keptHarness<Same>(browser, baseURL, 'same')).changeForTheSame('hear', 3);
  note({ differenceDb });
  expect(differenceDb).toBeLessThan(INAUDIBLE_DB);
});

test('exchanging a filter for itself changes next to nothing', async ({ browser, baseURL }) => {
  // The new filter is faded in when its steep part is filled; the rest of its bass follows within a few ms.
  const differenceDb = await (
    await keptHarness<Same>(browser, baseURL, 'same')
  ).changeForTheSame('setBranch', 3);
  note({ differenceDb });
  expect(differenceDb).toBeLessThan(-60);
});

for (const what of ['hear', 'setBranch'] as const)
  test(`${what} is heard at once`, async ({ browser, baseURL }) => {
    const frames = await (await keptHarness<Same>(browser, baseURL, 'same')).latencies(what, 5);
    note({ what, frames });
    frames.sort((a, b) => a - b);
    expect(frames[2]).toBeLessThan(0.03 * 48000);
  });

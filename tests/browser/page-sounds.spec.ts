import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import type { GeneratedSound } from '../../src/lib/sounds/kinds.js';
import { LINESIDE, MACHINES, TEST_SIGNALS, usualSound } from '../../src/lib/sounds/roster.js';
import type { BenchPage } from '../helpers/page-bench.js';
import { clickUntil } from '../helpers/page-click.js';
import { cases, expect, test } from '../helpers/page-fixture.js';
import { demoMount, levelInNode, soundLoop } from '../helpers/page-level.js';
import { DEMO_BENCH } from '../helpers/page-own-bench.js';

const [DIESEL] = MACHINES;
const STEAM = MACHINES.find(({ kind }) => kind === 'steam')!;

// The machines begin with the engine of the demo bench.
test.use({ left: DEMO_BENCH });

/** Waits until the plate's level is that of this sound, worked out here, within what a whole decibel leaves open. */
async function measured(bench: BenchPage, sound: GeneratedSound): Promise<void> {
  const exact = levelInNode(demoMount(2), soundLoop(sound));
  await expect
    .poll(async () => Math.abs(((await bench.level(2)) ?? NaN) - exact), {
      message: `${exact} dB: ${sound.name}`
    })
    .toBeLessThan(0.8);
}

const ALL = [...MACHINES, ...LINESIDE, ...TEST_SIGNALS];

// The sounds of one kind differ by their knobs alone; each of them is rendered and measured in tests/unit/sounds/roster.test.ts.
test('every sound is in the drawer, and the first of each kind plays and is measured', async ({
  page,
  bench
}) => {
  test.setTimeout(240_000);
  await bench.open();
  await bench.play();
  await page.getByRole('button', { name: 'another sound' }).click();
  const drawer = page.getByRole('dialog', { name: 'The sounds there are' });
  for (const { name } of ALL)
    await expect(
      drawer.locator('li button').filter({ has: page.getByText(name, { exact: true }) })
    ).toHaveCount(1);
  await bench.escape();
  const kinds = new Map(ALL.toReversed().map((sound) => [sound.kind, sound]));
  expect(kinds.size).toBeGreaterThan(14);
  for (const sound of [...kinds.values()].reverse())
    await test.step(sound.name, async () => {
      if (sound !== DIESEL) await bench.choose(sound.name);
      await expect(page.getByRole('heading', { name: `The sound itself: ${sound.name}` })).toBeVisible();
      await measured(bench, sound);
    });
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
  await expect(page.getByRole('alert')).toHaveCount(0);
});

/** Unfolds the knobs, once what is measured of the sound stands above them. */
async function unfoldKnobs(page: Page): Promise<void> {
  const knobs = page.locator('details', { hasText: 'its knobs: make it another one' });
  await expect(page.getByRole('heading', { name: /^Its frequencies, before/ })).toBeVisible();
  await clickUntil(knobs.locator('summary'), knobs.locator('.knob').first());
}

/** What is typed into a knob, and the sentence beside it. */
const refused = [
  ['number of cylinders', '0', 'number of cylinders must be a whole number within 1 … 20, got 0'],
  ['number of cylinders', '2.5', 'number of cylinders must be a whole number within 1 … 20, got 2.5'],
  ['idle speed', 'fast', 'idle speed must be within 200 … 1200 rpm, got no number'],
  ['load', '140', 'load must be within 0 … 100 %, got 140'],
  ['full speed', '1e9', 'full speed must be within 400 … 2500 rpm, got 1000000000'],
  ['idle speed', '1100', 'full speed must be at least the idle speed of 1100 rpm, got 980']
];

const { it, onOnePage } = cases();

it('another machine takes over where the lever stands; a still sound has no lever', async ({
  page,
  bench
}) => {
  const throttle = page.getByRole('slider', { name: 'Throttle' });
  await page.getByRole('button', { name: 'Throttle up' }).click();
  await bench.choose(STEAM.name);
  await expect(throttle).toHaveAttribute('aria-valuenow', '5');
  await expect(page.locator('.throttle .words')).toContainText('km/h');
  await expect(page.locator('.throttle .words')).toContainText(/beats \d/);
  await throttle.focus();
  await page.keyboard.press('Home');
  await expect(page.locator('.throttle .words')).toContainText('at rest');
  await bench.choose('Pink noise');
  await expect(throttle).toHaveCount(0);
  await page.keyboard.press('Control+KeyZ');
  await expect(bench.soundName).toHaveText(STEAM.name);
});

it('it runs past by itself, and whoever takes the lever drives again', async ({ page, bench }) => {
  await bench.play();
  const picture = page.getByRole('slider', { name: 'read the level at a time' });
  const seconds = async () => Number(await picture.getAttribute('aria-valuemax'));
  await expect.poll(seconds).toBeLessThan(6);
  await page.getByRole('button', { name: 'let it run past' }).click();
  await expect(page.locator('.throttle .words')).toContainText('runs past by itself');
  // A run past lasts half a minute, a notch five seconds; the picture follows when the hand has come to rest.
  await expect.poll(seconds).toBeGreaterThan(28);
  await page.getByRole('button', { name: 'Throttle up' }).click();
  await expect(page.locator('.throttle .words')).toContainText('notch 5');
  await expect.poll(seconds).toBeLessThan(6);
  await page.getByRole('button', { name: 'let it run past' }).click();
  await page.getByRole('button', { name: 'take the lever' }).click();
  await expect(page.locator('.throttle .words')).toContainText('notch 5');
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
});

it('a typed value is taken, heard of, undone and restored', async ({ page }) => {
  await unfoldKnobs(page);
  const cylinders = page.getByRole('textbox', { name: 'number of cylinders' });
  const words = page.locator('.throttle .words');
  await cylinders.fill('6');
  await cylinders.press('Enter');
  await expect(words).toContainText('fires 35 times a second');
  await page.keyboard.press('Escape');
  await page.locator('h1').click();
  await page.keyboard.press('Control+KeyZ');
  await expect(cylinders).toHaveValue('12');
  await page.getByRole('slider', { name: 'number of cylinders, slider' }).fill('16');
  await expect(words).toContainText('fires 93 times a second');
  await page.getByRole('button', { name: 'back to how it came' }).click();
  await expect(cylinders).toHaveValue('12');
  await expect(page.getByRole('button', { name: 'back to how it came' })).toHaveCount(0);
});

it('what is no value of a knob is refused in a sentence beside it, and the sound stays', async ({
  page,
  bench
}) => {
  await unfoldKnobs(page);
  const words = page.locator('.throttle .words');
  const before = await words.innerText();
  const shelf = await bench.atRest();
  for (const [field, value, sentence] of refused)
    await test.step(`"${value}" as ${field}`, async () => {
      const box = page.getByRole('textbox', { name: field, exact: true });
      await box.fill(value);
      await box.press('Enter');
      await expect(page.locator('.knob', { has: box }).getByRole('alert')).toHaveText(sentence);
      await bench.drawn();
      expect(await words.innerText()).toBe(before);
      expect(await bench.atRest()).toBe(shelf);
    });
});

it('a chord is chosen note by note', async ({ page, bench }) => {
  await unfoldKnobs(page);
  await bench.choose('No. 7, three-note horn');
  const chord = page.getByRole('group', { name: 'notes' });
  await expect(chord.getByRole('combobox')).toHaveCount(3);
  await measured(bench, usualSound('horn', 'No. 7, three-note horn'));
  await chord.getByRole('combobox').first().selectOption('G4');
  await chord.getByRole('button', { name: 'One note more' }).click();
  await expect(chord.getByRole('combobox')).toHaveCount(4);
  await bench.measured();
  for (let i = 0; i < 3; i++) await chord.getByRole('button', { name: 'One note less' }).click();
  await expect(chord.getByRole('button', { name: 'One note less' })).toBeDisabled();
  await expect(chord.getByRole('combobox').first()).toHaveValue('-2');
});

it('inches turn speeds into miles an hour and drivers into inches', async ({ page, bench }) => {
  await unfoldKnobs(page);
  await bench.choose(STEAM.name);
  await page.getByRole('button', { name: 'inches instead of millimetres' }).click();
  await expect(page.getByRole('textbox', { name: 'driver diameter' })).toHaveValue(/^69/);
  await expect(page.locator('.throttle .words')).toContainText('mph');
});

it('the sentence under the sound says what of it is out of reach, and the table how much', async ({
  page,
  bench
}) => {
  await bench.hear(2);
  const sound = page.getByRole('region', { name: 'The sound itself' });
  // The pictures follow when the hand has come to rest.
  await expect(sound).toContainText('before Flat plate and through it');
  await expect(sound.locator('.sentence')).toContainText(
    /Too low for this speaker here: the firing rate, 70 Hz; \d\d dB of it are lost\. You hear its multiples/
  );
  await sound.getByText('what each mount lets through of the firing rate').click();
  const rows = sound.locator('.harmonic-table tbody tr');
  await expect(rows.first()).toContainText('70 Hz');
  const lost = Number(/(\d+) dB of it are lost/.exec(await sound.locator('.sentence').innerText())![1]);
  await expect(rows.first().locator('td.heard')).toHaveText(`−${lost}`);
  await bench.hear(1);
  await expect(sound).toContainText('before Free air and through it');
  await expect(sound.locator('.sentence')).not.toContainText(`${lost} dB`);
});

it('the sound is saved as a WAV file of 24 bits', async ({ page }) => {
  const asked = page.waitForEvent('download');
  await page.getByRole('button', { name: 'save it as a WAV file' }).click();
  const download = await asked;
  expect(download.suggestedFilename()).toBe('no-41-cab-diesel.wav');
  const bytes = readFileSync(await download.path());
  expect(bytes.toString('latin1', 0, 4)).toBe('RIFF');
  expect([bytes.readUInt16LE(22), bytes.readUInt32LE(24), bytes.readUInt16LE(34)]).toEqual([1, 48000, 24]);
  expect(bytes.length).toBeGreaterThan(4 * 48000 * 3);
});

it('what was set of a sound is still there after a reload', async ({ page, bench }) => {
  await bench.choose(STEAM.name);
  await unfoldKnobs(page);
  const cutoff = page.getByRole('textbox', { name: 'cutoff' });
  await cutoff.fill('60');
  await cutoff.press('Enter');
  await expect(page.getByText('kept in this browser')).toBeVisible();
  await page.reload();
  await expect(bench.soundName).toHaveText(STEAM.name);
  await unfoldKnobs(page);
  await expect(cutoff).toHaveValue('60');
});

test('sounds and their knobs', onOnePage);

test('a hundred quick changes of the sound: it goes on, and nothing grows', async ({ page, bench }) => {
  test.setTimeout(120_000);
  await bench.open();
  await bench.play();
  // What is in a drawer is made when it is opened first.
  await page.getByRole('button', { name: 'another sound' }).click();
  await page.keyboard.press('Escape');
  const client = await page.context().newCDPSession(page);
  const heap = async (): Promise<number> => {
    await client.send('HeapProfiler.collectGarbage');
    return (await client.send('Runtime.getHeapUsage')).usedSize;
  };
  const sounds = [...MACHINES, ...TEST_SIGNALS];
  const names = sounds.map(({ name }) => name);
  const change = (times: number) =>
    page.evaluate(
      async ({ names, times }) => {
        const drawer = document.querySelector('[aria-label="The sounds there are"]')!;
        const buttons = [...drawer.querySelectorAll('li button')] as HTMLButtonElement[];
        for (let i = 0; i < times; i++) {
          const name = names[(i * 7) % names.length];
          buttons.find((one) => one.querySelector('b')?.textContent === name)!.click();
          await new Promise((resolve) => setTimeout(resolve, 10 + (i % 5) * 20));
        }
      },
      { names, times }
    );
  const last = (times: number): GeneratedSound => sounds[((times - 1) * 7) % sounds.length];
  await change(20);
  await measured(bench, last(20));
  const before = await heap();
  await change(100);
  await measured(bench, last(100));
  const after = await heap();
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
  await expect(page.getByRole('alert')).toHaveCount(0);
  // Eight loops are kept, a megabyte each as a rule; the picture of another sound has other points.
  expect(after - before).toBeLessThan(12e6);
});

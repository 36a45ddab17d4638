import { readFileSync } from 'node:fs';
import { LINESIDE, MACHINES, TEST_SIGNALS } from '../../src/lib/sounds/roster.js';
import type { BenchPage } from '../helpers/page-bench.js';
import { expect, test } from '../helpers/page-fixture.js';

const [DIESEL] = MACHINES;
const STEAM = MACHINES.find(({ kind }) => kind === 'steam')!;

test.beforeEach(async ({ bench }) => {
  await bench.open();
});

/** Waits until the sound that is chosen has been measured behind every mount. */
async function measured(bench: BenchPage): Promise<void> {
  await expect(bench.page.getByText('listening …')).toHaveCount(0);
  await expect(bench.stand(2)).toContainText(/dB (louder|quieter)|just as loud/);
}

test('every sound of the drawer plays and is measured', async ({ page, bench }) => {
  test.setTimeout(240_000);
  await bench.play();
  for (const { name } of [...MACHINES, ...LINESIDE, ...TEST_SIGNALS]) {
    if (name !== DIESEL.name) await bench.choose(name);
    await measured(bench);
    await expect(page.getByRole('heading', { name: `The sound itself: ${name}` })).toBeVisible();
  }
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
  await expect(page.getByRole('alert')).toHaveCount(0);
});

test('another machine takes over where the lever stands; a still sound has no lever', async ({
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

test('it runs past by itself, and whoever takes the lever drives again', async ({ page, bench }) => {
  await bench.play();
  await page.getByRole('button', { name: 'let it run past' }).click();
  await expect(page.locator('.throttle .words')).toContainText('runs past by itself');
  await expect(page.locator('.level-picture')).toContainText('20');
  await page.getByRole('button', { name: 'Throttle up' }).click();
  await expect(page.locator('.throttle .words')).toContainText('notch 5');
  await page.getByRole('button', { name: 'let it run past' }).click();
  await page.getByRole('button', { name: 'take the lever' }).click();
  await expect(page.locator('.throttle .words')).toContainText('notch 5');
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
});

test.describe('the knobs of a sound', () => {
  test.beforeEach(async ({ page }) => {
    await page.getByText('its knobs: make it another one').click();
  });

  test('a typed value is taken, heard of, undone and restored', async ({ page }) => {
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

  for (const [field, value, sentence] of [
    ['number of cylinders', '0', 'number of cylinders must be a whole number within 1 … 20, got 0'],
    ['number of cylinders', '2.5', 'number of cylinders must be a whole number within 1 … 20, got 2.5'],
    ['idle speed', 'fast', 'idle speed must be within 200 … 1200 rpm, got no number'],
    ['load', '140', 'load must be within 0 … 100 %, got 140'],
    ['full speed', '1e9', 'full speed must be within 400 … 2500 rpm, got 1000000000'],
    ['idle speed', '1100', 'full speed must be at least the idle speed of 1100 rpm, got 1000']
  ])
    test(`"${value}" as ${field} is refused in a sentence beside it`, async ({ page, bench }) => {
      const box = page.getByRole('textbox', { name: field });
      const before = await page.locator('.throttle .words').innerText();
      await box.fill(value);
      await box.press('Enter');
      await expect(page.locator('.knob', { has: box }).getByRole('alert')).toHaveText(sentence);
      expect(await page.locator('.throttle .words').innerText()).toBe(before);
      await measured(bench);
    });

  test('a chord is chosen note by note', async ({ page, bench }) => {
    await bench.choose('No. 7, three-note horn');
    const chord = page.getByRole('group', { name: 'notes' });
    await expect(chord.getByRole('combobox')).toHaveCount(3);
    await chord.getByRole('combobox').first().selectOption('G4');
    await chord.getByRole('button', { name: 'One note more' }).click();
    await expect(chord.getByRole('combobox')).toHaveCount(4);
    await measured(bench);
    for (let i = 0; i < 3; i++) await chord.getByRole('button', { name: 'One note less' }).click();
    await expect(chord.getByRole('button', { name: 'One note less' })).toBeDisabled();
    await expect(chord.getByRole('combobox').first()).toHaveValue('-2');
  });

  test('inches turn speeds into miles an hour and drivers into inches', async ({ page, bench }) => {
    await bench.choose(STEAM.name);
    await page.getByRole('button', { name: 'inches instead of millimetres' }).click();
    await expect(page.getByRole('textbox', { name: 'driver diameter' })).toHaveValue(/^69/);
    await expect(page.locator('.throttle .words')).toContainText('mph');
  });
});

test('the sentence under the sound says what of it is out of reach, and the table how much', async ({
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

test('the sound is saved as a WAV file of 24 bits', async ({ page }) => {
  const asked = page.waitForEvent('download');
  await page.getByRole('button', { name: 'save it as a WAV file' }).click();
  const download = await asked;
  expect(download.suggestedFilename()).toBe('no-41-cab-diesel.wav');
  const bytes = readFileSync(await download.path());
  expect(bytes.toString('latin1', 0, 4)).toBe('RIFF');
  expect([bytes.readUInt16LE(22), bytes.readUInt32LE(24), bytes.readUInt16LE(34)]).toEqual([1, 48000, 24]);
  expect(bytes.length).toBeGreaterThan(4 * 48000 * 3);
});

test('what was set of a sound is still there after a reload', async ({ page, bench }) => {
  await bench.choose(STEAM.name);
  await page.getByText('its knobs: make it another one').click();
  const cutoff = page.getByRole('textbox', { name: 'cutoff' });
  await cutoff.fill('60');
  await cutoff.press('Enter');
  await expect(page.getByText('kept in this browser')).toBeVisible();
  await page.reload();
  await expect(bench.soundName).toHaveText(STEAM.name);
  await page.getByText('its knobs: make it another one').click();
  await expect(cutoff).toHaveValue('60');
});

test('a hundred quick changes of the sound: it goes on, and nothing grows', async ({ page, bench }) => {
  test.setTimeout(120_000);
  await bench.play();
  const client = await page.context().newCDPSession(page);
  const heap = async (): Promise<number> => {
    await client.send('HeapProfiler.collectGarbage');
    return (await client.send('Runtime.getHeapUsage')).usedSize;
  };
  const names = [...MACHINES, ...TEST_SIGNALS].map(({ name }) => name);
  const change = (times: number) =>
    page.evaluate(
      async ({ names, times }) => {
        const drawer = document.querySelector('[aria-label="The sounds there are"]')!;
        const buttons = [...drawer.querySelectorAll('li button')] as HTMLButtonElement[];
        for (let i = 0; i < times; i++) {
          const name = names[(i * 7) % names.length];
          buttons.find((one) => one.querySelector('b')!.textContent === name)!.click();
          await new Promise((resolve) => setTimeout(resolve, 20 + (i % 5) * 40));
        }
      },
      { names, times }
    );
  await change(20);
  await measured(bench);
  const before = await heap();
  await change(100);
  await measured(bench);
  const after = await heap();
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
  await expect(page.getByRole('alert')).toHaveCount(0);
  // Eight loops are kept, a megabyte each as a rule; the picture of another sound has other points.
  expect(after - before).toBeLessThan(12e6);
});

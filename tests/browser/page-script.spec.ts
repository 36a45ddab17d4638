import type { Page } from '@playwright/test';
import { demoBench } from '../../src/lib/file/demo-bench.js';
import { demoScript } from '../../src/lib/file/demo-script.js';
import { readBenchFile } from '../../src/lib/file/read-bench-file.js';
import type { Scene } from '../../src/lib/file/scene.js';
import { writeBenchFile } from '../../src/lib/file/write-bench-file.js';
import type { Puff } from '../../src/lib/sounds/test-signals/puff.js';
import { axeFinds } from '../helpers/page-axe.js';
import { clickLevel } from '../helpers/click-level.js';
import { tapTheDevice } from '../helpers/page-device.js';
import { expect, test } from '../helpers/page-fixture.js';
import { wrongInProjector } from '../helpers/page-projector.js';

const HALLS = [
  { width: 1920, height: 1080 },
  { width: 1024, height: 768 },
  { width: 1280, height: 800 }
];

/** Puffs without anything above 3 kHz: whatever is heard higher up is a click. One after the other, so that it is never still. */
const soft = (upper: number): Puff => ({ kind: 'puff', name: `Puffs to ${upper} Hz`, upper, pause: 0.25 });

/** The demo's script on sounds in which a click is heard, by the wave solution only where waves are seen for the first time. */
const SCRIPT: Scene[] = demoScript().map((scene, i) => {
  if (!scene.heard) return scene;
  const pulling = JSON.stringify(scene.heard.sound) !== JSON.stringify(demoScript()[1].heard!.sound);
  const model = scene.shows === 'curves' || i > 4 ? 'rule' : 'wave';
  return { ...scene, heard: { ...scene.heard, sound: soft(pulling ? 500 : 800), model } };
});

const demo = demoBench();
test.use({
  left: writeBenchFile({
    ...demo,
    sound: soft(800),
    view: { ...demo.view, model: 'rule', heard: 2 },
    script: SCRIPT
  })
});

const view = (page: Page) => page.getByRole('main', { name: 'Projector view' });
const screen = (page: Page) => page.getByRole('dialog', { name: 'The hall’s script' });

/** Keeps what goes to the device from now on, in pieces that overlap. Runs in the page. */
function keepWhatIsHeard(): void {
  const lab = window as unknown as { taps: AnalyserNode[]; heard: { at: number; samples: Float32Array }[] };
  lab.heard = [];
  setInterval(() => {
    const sum = new Float32Array(lab.taps[0].fftSize);
    const part = new Float32Array(lab.taps[0].fftSize);
    for (const tap of lab.taps) {
      tap.getFloatTimeDomainData(part);
      part.forEach((x, k) => (sum[k] += x));
    }
    lab.heard.push({ at: lab.taps[0].context.currentTime, samples: sum });
  }, 400);
}

/** What was kept from a piece on, each with the time of its end. */
async function heard(page: Page, from = 0): Promise<{ at: number; samples: Float32Array }[]> {
  const pieces = await page.evaluate((from) => {
    const { heard } = window as unknown as { heard: { at: number; samples: Float32Array }[] };
    return heard.slice(from).map(({ at, samples }) => {
      let bytes = '';
      for (const byte of new Uint8Array(samples.buffer)) bytes += String.fromCharCode(byte);
      return { at, bytes: btoa(bytes) };
    });
  }, from);
  return pieces.map(({ at, bytes }) => {
    const { buffer, byteOffset, length } = Buffer.from(bytes, 'base64');
    return { at, samples: new Float32Array(buffer.slice(byteOffset, byteOffset + length)) };
  });
}

/** Nothing is wrong with what the hall sees, in any hall. */
async function fitsEverywhere(page: Page, what: string): Promise<void> {
  for (const size of HALLS) {
    await page.setViewportSize(size);
    await expect.poll(() => wrongInProjector(page), `${what}, ${size.width} × ${size.height}`).toEqual([]);
  }
  expect(await axeFinds(page, {}, '.projector'), what).toEqual([]);
}

test('a script is made by keys, and the demo’s runs under the clicker without a click', async ({
  page,
  bench,
  context
}) => {
  test.setTimeout(180_000);
  await tapTheDevice(page);
  // A window that fills the screen cannot be given another size.
  await page.addInitScript(() => {
    Element.prototype.requestFullscreen = () => Promise.reject(new TypeError('fullscreen refused'));
  });
  await page.setViewportSize(HALLS[2]);
  await bench.open();
  await bench.play();
  await page.evaluate(keepWhatIsHeard);

  await test.step('scenes are kept, named, timed, moved and deleted by keyboard', async () => {
    await page.evaluate(() => (document.activeElement as HTMLElement).blur());
    await page.keyboard.press('Digit4');
    await page.keyboard.press('k');
    await expect(page.getByText('Kept as scene 23 of the hall’s script: Closed box.')).toBeVisible();
    await page.keyboard.press('h');
    const scenes = screen(page).getByRole('list', { name: 'The scenes in their order' }).getByRole('button');
    await expect(scenes).toHaveCount(23);
    await scenes.last().press('Enter');
    await expect(scenes.last()).toHaveAttribute('aria-pressed', 'true');
    await page.keyboard.press('Tab');
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('One more');
    await page.keyboard.press('Tab');
    await page.keyboard.type('99');
    await page.keyboard.press('Tab');
    await expect(screen(page).getByRole('alert')).toHaveText(
      'the time of a scene must be within 0.1 … 60 minutes, got 99'
    );
    await screen(page).getByRole('textbox', { name: 'minutes' }).fill('2');
    await page.keyboard.press('Enter');
    await expect(screen(page).getByText('23 scenes, 12:00 minutes')).toBeVisible();
    await screen(page).getByRole('button', { name: 'earlier' }).press('Enter');
    await expect(scenes.nth(21)).toContainText('22 One more');
    await screen(page).getByRole('button', { name: 'delete this scene' }).press('Enter');
    await expect(screen(page).getByText('22 scenes, 10:00 minutes')).toBeVisible();
    await screen(page).getByRole('button', { name: 'undo' }).press('Enter');
    await expect(scenes).toHaveCount(23);
    expect(await axeFinds(page)).toEqual([]);
    await scenes.first().press('Enter');
    await expect(screen(page).getByLabel('what the hall reads')).toHaveValue(SCRIPT[0].text!);
    await scenes.nth(21).press('Enter');
    await screen(page).getByRole('button', { name: 'delete this scene' }).press('Enter');
    await expect(scenes).toHaveCount(22);
  });

  const opening = context.waitForEvent('page');
  await screen(page).getByRole('button', { name: 'open the presenter’s window' }).press('Enter');
  const beside = await opening;
  const complaints: string[] = [];
  beside.on('console', (message) => complaints.push(message.text()));
  beside.on('pageerror', ({ message }) => complaints.push(message));
  await expect(beside.getByText('The script does not run yet.')).toBeVisible();
  await expect(beside).toHaveTitle('Backwave: the presenter’s window');
  await expect(beside.locator('main')).toHaveCSS('display', 'grid');
  await expect
    .poll(() =>
      beside.evaluate(() =>
        [...document.fonts].some(({ family, status }) => status === 'loaded' && family.includes('Source'))
      )
    )
    .toBe(true);
  await page.bringToFront();
  await screen(page).getByRole('button', { name: 'run from the first scene' }).press('Enter');
  await expect(screen(page)).toHaveCount(0);

  await test.step('every kind of scene fits every hall', async () => {
    const seen = new Set<string>();
    for (const [i, { name, shows, notes }] of SCRIPT.entries()) {
      if (i > 0) await page.keyboard.press('PageDown');
      await expect(beside.getByRole('heading', { level: 1 })).toHaveText(name);
      await expect(view(page)).not.toContainText(notes.slice(0, 25));
      if (seen.has(shows)) continue;
      seen.add(shows);
      // The heard mount alone is drawn: it is the one that the others are held against.
      if (shows === 'tone') await expect(view(page).locator('canvas')).toHaveCount(1, { timeout: 60_000 });
      if (shows === 'puff')
        await expect(view(page).getByRole('listitem')).toHaveCount(4, { timeout: 60_000 });
      await fitsEverywhere(page, name);
      // Who wants no motion is told a push in stills.
      if (shows === 'puff') await expect(view(page)).toContainText(/slower: (?!0\.00 ms)\d/);
    }
    expect(seen.size).toBe(4);
    // Of all words the longest, too.
    await page.keyboard.press('PageDown');
    await expect(beside.getByText('This is the last scene.')).toBeVisible();
    await fitsEverywhere(page, 'the last words');
    expect(await axeFinds(beside)).toEqual([]);
  });

  await test.step('back by the presenter’s window, black, and back from a slip by one key', async () => {
    await beside.keyboard.press('PageUp');
    await beside.getByRole('button', { name: 'previous' }).click();
    await expect(beside.getByRole('heading', { level: 1 })).toHaveText('As it runs');
    // A button that has the focus is pressed by Space, and nothing else hears of it.
    await beside.getByRole('button', { name: 'next' }).press('Space');
    await expect(beside.getByRole('heading', { level: 1 })).toHaveText('The box over the board');
    await beside.keyboard.press('b');
    const black = page.getByRole('button', { name: /^Black/ });
    await expect(black).toHaveCSS('background-color', 'rgb(0, 0, 0)');
    await expect(beside.getByText('The screen is black.')).toBeVisible();
    await page.bringToFront();
    await page.keyboard.press('b');
    await expect(black).toHaveCount(0);
    const heading = view(page).getByRole('heading', { level: 1 });
    for (const key of ['Digit1', 'l', 'a', 'Period']) await page.keyboard.press(key);
    await expect(heading).toContainText('Free air');
    await expect(view(page)).toContainText('silenced');
    await page.keyboard.press('Home');
    await expect(heading).toContainText('Closed box');
    await expect(view(page)).not.toContainText('silenced');
    await expect(view(page).locator('path[data-curve]').first()).toBeVisible();
  });

  await test.step('after it the bench stands as it was left, and nothing of the run was kept', async () => {
    await page.keyboard.press('Escape');
    await expect(view(page)).toHaveCount(0);
    await expect.poll(() => beside.isClosed()).toBe(true);
    await expect(bench.stage.locator('header .disc')).toHaveText('4');
    await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
    await expect(page.getByRole('banner')).toContainText('Puffs to 800 Hz');
    await expect(bench.line).toHaveAttribute('data-kept', 'kept');
    const kept = readBenchFile(
      await page.evaluate(async () => {
        const opening = indexedDB.open('backwave');
        await new Promise((done) => (opening.onsuccess = done));
        const asked = opening.result.transaction('kept').objectStore('kept').get('bench own');
        await new Promise((done) => (asked.onsuccess = done));
        opening.result.close();
        return (asked.result as { text: string }).text;
      })
    );
    expect([kept.script, kept.listener, kept.setups]).toEqual([SCRIPT, demo.listener, demo.setups]);
    expect(complaints).toEqual([]);
  });

  await test.step('the sound never stopped and never clicked', async () => {
    const pieces = await heard(page);
    const [first, last] = [pieces[0].at, pieces.at(-1)!.at];
    // A piece is 0.68 s long; what silenced the sound was the full stop, once, for as long as it took to press Home.
    const levels = pieces.map(({ samples }) => clickLevel(samples, 48_000));
    const silent = levels.filter(({ peak }) => peak < 1e-4).length;
    const loudest = Math.max(...levels.filter(({ peak }) => peak >= 1e-4).map(({ clickDb }) => clickDb));
    test.info().annotations.push({
      type: 'measured',
      description: `${pieces.length} pieces over ${(last - first).toFixed(1)} s, ${silent} silent, loudest click ${loudest.toFixed(0)} dB`
    });
    console.log(test.info().annotations.at(-1)!.description);
    expect(pieces.length).toBeGreaterThan(20);
    expect(silent).toBeLessThanOrEqual(3);
    expect(loudest).toBeLessThan(-90);
    // Steps of a thousandth of full scale would have been found.
    await page.evaluate(() => {
      const { context } = (window as unknown as { taps: AnalyserNode[] }).taps[0];
      const steps = new OscillatorNode(context, { type: 'square', frequency: 7 });
      steps.connect(new GainNode(context, { gain: 0.001 })).connect(context.destination);
      steps.start();
    });
    const clicks = async (): Promise<number> =>
      Math.max(...(await heard(page, -2)).map(({ samples }) => clickLevel(samples, 48_000).clickDb));
    await expect.poll(clicks).toBeGreaterThan(-80);
  });
});

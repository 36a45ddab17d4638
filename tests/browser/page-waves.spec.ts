import type { Locator } from '@playwright/test';
import { installationOf } from '../../src/lib/file/installation-of.js';
import { demoBench } from '../../src/lib/file/demo-bench.js';
import type { Listener } from '../../src/lib/acoustics/listener.js';
import type { Mount } from '../../src/lib/acoustics/mounts/mount.js';
import { waveSolution } from '../../src/lib/waves/wave-solution.js';
import type { BenchPage } from '../helpers/page-bench.js';
import { cases, expect, test } from '../helpers/page-fixture.js';
import { dropFile } from '../helpers/page-give-file.js';
import { SMALL_BENCH, smallMount } from '../helpers/page-own-bench.js';

// Mounts that are solved soon.
test.use({ contextOptions: { reducedMotion: 'no-preference' }, left: SMALL_BENCH });

/** What the model's status says of the heard mount. */
const SOLVED = /^solved in full: within 0\.3 dB up to 10 kHz/;

function status(bench: BenchPage) {
  return bench.page.locator('.model .status > span');
}

/** Waits until the heard mount is solved; how long that takes is no matter here. */
async function solved(bench: BenchPage): Promise<void> {
  await expect(status(bench)).toHaveText(SOLVED, { timeout: 60_000 });
}

/** Levels of the wave solution, worked out here. */
function solvedHere(mount: Mount, listener: Listener, frequency: number[]): number[] {
  const file = demoBench();
  const installation = installationOf(file, { ...file.setups[0], mount });
  const { re, im } = waveSolution(installation, file.air, listener, Float64Array.from(frequency));
  return Array.from(re, (x, i) => 20 * Math.log10(Math.hypot(x, im[i])));
}

/** The table behind the picture: the heard mount's level in the row of a frequency. */
async function levelInTable(bench: BenchPage, row: string): Promise<number> {
  const picture = bench.page.getByRole('region', { name: /^What is left of the/ });
  const table = picture.getByRole('table');
  if (!(await table.isVisible())) await picture.getByText('the figures as a table').click();
  const heads = await table.getByRole('columnheader').allInnerTexts();
  const column = heads.findIndex((head) => head.endsWith('heard'));
  const cells = table
    .getByRole('row')
    .filter({ has: bench.page.getByRole('rowheader', { name: row, exact: true }) });
  const text = await cells
    .first()
    .getByRole('cell')
    .nth(column - 1)
    .innerText();
  return Number(text.replace('−', '-').replace(/[^-\d.]/g, ''));
}

/** Waits until the table shows this level; it shows whole decibels, hence ±0.51 dB. */
async function shown(bench: BenchPage, row: string, there: number): Promise<void> {
  await expect.poll(async () => Math.abs((await levelInTable(bench, row)) - there)).toBeLessThan(0.51);
}

/** What a canvas shows. */
function drawn(canvas: Locator): Promise<string> {
  return canvas.evaluate((element: HTMLCanvasElement) => element.toDataURL());
}

/** Waits until a canvas shows the same in one picture of the page after another. */
async function stood(canvas: Locator): Promise<void> {
  await canvas.evaluate(
    (element: HTMLCanvasElement) =>
      new Promise<void>((done) => {
        let [before, same] = ['', 0];
        const look = (): void => {
          const now = element.toDataURL();
          same = now === before ? same + 1 : 0;
          before = now;
          if (same < 12) requestAnimationFrame(look);
          else done();
        };
        requestAnimationFrame(look);
      })
  );
}

const curves = cases();
const air = cases();

curves.it('stopped, the draft stays and says so; it is solved on demand', async ({ page, bench }) => {
  await bench.hear(3);
  await page.keyboard.press('w');
  await page.getByRole('button', { name: 'stop', exact: true }).click();
  await expect(status(bench)).toContainText('stopped there');
  await page.getByRole('button', { name: 'solve it' }).click();
  await solved(bench);
});

curves.it(
  'the wave solution comes on key W: drawn beside the rule of thumb, and played',
  async ({ page, bench }) => {
    await bench.hear(2);
    const heard = page.locator('.response-picture path[data-curve="1"]').last();
    const byRule = await heard.getAttribute('d');
    await page.keyboard.press('w');
    await solved(bench);
    await expect(heard).not.toHaveAttribute('d', byRule!);
    const picture = page.locator('.response-picture');
    await expect(
      page.getByRole('region', { name: /^What is left of/ }).getByText(/rule of thumb, good to 2\.1.kHz/)
    ).toBeVisible();
    await expect(picture.getByText('half a wave late: the back adds')).toBeVisible();
    const [there] = solvedHere(smallMount(2), { angleDeg: 0, plane: 'width' }, [2500]);
    await shown(bench, '2.5 kHz', there);
    await page.keyboard.press('w');
    await expect(status(bench)).toContainText('straight in front only');
    await expect(heard).toHaveAttribute('d', byRule!);
  }
);

curves.it(
  'the listener goes to the side, and the curve with him; the rule of thumb stays in front',
  async ({ page, bench }) => {
    await bench.hear(3);
    await page.keyboard.press('w');
    await solved(bench);
    const angle = bench.shelf.getByRole('textbox', { name: 'your ear, off the cone’s front' });
    await angle.fill('75');
    await angle.press('Enter');
    const aside = bench.stage.getByText('this sound, wave solution, 75° to the side, far away');
    await expect(aside).toBeVisible();
    await solved(bench);
    const [there] = solvedHere(smallMount(3), { angleDeg: 75, plane: 'width' }, [2500]);
    await shown(bench, '2.5 kHz', there);
    const front = bench.stage.getByText('this sound, rule of thumb, in front of the cone, far away');
    await page.keyboard.press('w');
    await expect(front).toBeVisible();
    // One step back is the model, two the listener's place.
    await page.keyboard.press('Control+z');
    await expect(aside).toBeVisible();
    await page.keyboard.press('Control+z');
    await expect(bench.stage.getByText('this sound, wave solution, in front of the cone')).toBeVisible();
    await expect(aside).toHaveCount(0);
  }
);

curves.it('two hundred quick moves leave one answer, that of the last size', async ({ page, bench }) => {
  await bench.hear(2);
  await page.keyboard.press('w');
  await solved(bench);
  await bench.field('width').focus();
  await bench.stage.locator('#stage-title').click();
  // Quicker than any hand and than the browser draws: each is a task of its own.
  await page.evaluate(async () => {
    for (let i = 0; i < 200; i++) {
      const key = i % 2 ? 'ArrowUp' : 'ArrowDown';
      for (const kind of ['keydown', 'keyup']) {
        const pressed = { key, code: key, shiftKey: i % 2 === 0, bubbles: true, cancelable: true };
        (document.activeElement ?? document.body).dispatchEvent(new KeyboardEvent(kind, pressed));
      }
      await new Promise((next) => setTimeout(next));
    }
  });
  await expect(bench.field('width')).toHaveValue('29');
  await page.keyboard.press('Escape');
  await bench.type('width', '48');
  await solved(bench);
  const plate = { ...smallMount(2), width: 0.048 } as Mount;
  const [there] = solvedHere(plate, { angleDeg: 0, plane: 'width' }, [2500]);
  await shown(bench, '2.5 kHz', there);
});

curves.it(
  'a mount beyond what can be meshed is refused before it starts, and the rule of thumb stands in',
  async ({ page, bench }) => {
    await bench.hear(2);
    await page.keyboard.press('w');
    await solved(bench);
    const file = demoBench();
    file.view.model = 'wave';
    file.setups[0].mount = { kind: 'plate', shape: 'rectangle', length: 3, width: 0.03, offset: [0, 0] };
    await dropFile(page, { name: 'long.backwave.json', head: btoa(JSON.stringify(file)) });
    await expect(status(bench)).toContainText(
      'The rule of thumb stands in: this mount is too large or too slender'
    );
    await expect(bench.stage.locator('.main svg')).toBeVisible();
  }
);

air.it(
  'the air around a mount: a tone, one puff, stopped and made, and level all round',
  async ({ page, bench }) => {
    await bench.hear(2);
    await page.keyboard.press('a');
    await solved(bench);
    const around = page.getByRole('region', { name: 'The air around it' });
    const waves = around.getByRole('img', { name: /sound pressure in the air/ });
    await expect(waves).toHaveAccessibleName(/^a steady tone of 1 kHz, Flat plate, section across/);
    await expect(around).toBeInViewport();
    await waves.scrollIntoViewIfNeeded();
    // It moves: two looks differ. Held still, they do not.
    const look = () => drawn(waves.locator('canvas').first());
    const before = await look();
    await expect.poll(look).not.toBe(before);
    await around.getByRole('button', { name: 'hold still' }).click();
    await stood(waves.locator('canvas').first());
    const still = await look();
    // In its corner stands the mount that it is held against, and goes along.
    await expect(waves.getByText('free air')).toBeVisible();
    await expect(around.getByText('In the corner at the same moment: Free air.')).toBeVisible();
    const corner = () => drawn(waves.locator('canvas').last());
    const earlier = await corner();
    await around.getByRole('slider', { name: 'moment of its swing' }).fill('0.5');
    await expect.poll(corner).not.toBe(earlier);
    // Pointed at another frequency, it is another tone.
    await around.getByRole('slider', { name: /^tone/ }).fill('200');
    await expect(waves).toHaveAccessibleName(/^a steady tone of 4.64 kHz/);
    await expect.poll(look).not.toBe(still);
    await expect(around.getByRole('img', { name: /at 4.64 kHz/ })).toBeVisible();
    // A puff takes its time, and can be given up.
    await around.getByRole('radio', { name: 'one puff' }).check();
    await around.getByRole('button', { name: 'stop' }).click();
    await expect(waves).toHaveAccessibleName(/^a steady tone/);
    await around.getByRole('radio', { name: 'one puff' }).check();
    await expect(waves).toHaveAccessibleName(/^one puff of the cone/, { timeout: 60_000 });
    // Another mount has another puff.
    await bench.hear(4);
    await expect(around.getByText('The puff was of another mount.')).toBeVisible();
    // One that is asked for while its mount is still being solved goes on when the better answer comes.
    await bench.hear(2);
    await bench.type('width', '52');
    await around.getByRole('button', { name: 'make one of this' }).click();
    await expect(waves).toHaveAccessibleName(/^one puff of the cone/, { timeout: 60_000 });
    await solved(bench);
    await expect(waves).toHaveAccessibleName(/^one puff of the cone/);
  }
);

air.it(
  'in the projector view A shows the waves, then a puff, then the curves again',
  async ({ page, bench }) => {
    await bench.hear(2);
    await page.keyboard.press('p');
    await page.keyboard.press('a');
    const view = page.getByRole('main', { name: 'Projector view' });
    await expect(view.getByText('The rule of thumb knows nothing of the air')).toBeVisible();
    await page.keyboard.press('w');
    const waves = view.getByRole('img', { name: /sound pressure in the air/ });
    await expect(waves).toHaveAccessibleName(/^a steady tone/, { timeout: 60_000 });
    await page.keyboard.press('a');
    await expect(waves).toHaveAccessibleName(/^one puff/, { timeout: 60_000 });
    await page.keyboard.press('a');
    await expect(waves).toHaveCount(0);
    await expect(view.locator('.response-picture')).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(view).toHaveCount(0);
  }
);

air.it('reduced motion gets stills, which the slider moves', async ({ page, bench }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await bench.hear(4);
  await page.keyboard.press('a');
  const around = page.getByRole('region', { name: 'The air around it' });
  const waves = around.getByRole('img', { name: /sound pressure in the air/ });
  await expect(waves).toBeVisible({ timeout: 60_000 });
  await solved(bench);
  const canvas = waves.locator('canvas').first();
  const look = () => drawn(canvas);
  // It is drawn where it can be seen, and has another size then.
  await waves.scrollIntoViewIfNeeded();
  await expect(canvas).not.toHaveJSProperty('width', 300);
  await stood(canvas);
  const still = await look();
  await expect(around.getByRole('button', { name: 'hold still' })).toHaveCount(0);
  await around.getByRole('slider', { name: 'moment of its swing' }).fill('0.25');
  await expect.poll(look).not.toBe(still);
});

test('A brings the waves into view, also where it is pressed before they are there', async ({
  page,
  bench
}) => {
  const first = await (await page.request.get('./')).text();
  let letGo = (): void => undefined;
  const held = new Promise<void>((resolve) => (letGo = resolve));
  await page.route('**/*.js', async (route) => {
    const name = new URL(route.request().url()).pathname.split('/').at(-1)!;
    if (!first.includes(name) && !name.includes('worker')) await held;
    await route.continue();
  });
  await bench.open();
  await bench.hear(2);
  await page.keyboard.press('a');
  await expect(page.getByRole('radio', { name: 'wave solution' })).toBeChecked();
  letGo();
  await expect(page.getByRole('region', { name: 'The air around it' })).toBeInViewport({ ratio: 0.7 });
});

test('the curves of the wave solution', curves.onOnePage);

test('the waves in the air', air.onOnePage);

test('a worker that dies is replaced: one is told, and the answer comes all the same', async ({
  page,
  bench
}) => {
  await page.addInitScript(() => {
    const Real = window.Worker;
    let killed = false;
    window.Worker = class extends Real {
      constructor(address: string | URL, options?: WorkerOptions) {
        super(address, options);
        if (!String(address).includes('waves')) return;
        this.addEventListener('message', ({ data }: MessageEvent<{ said: string; share: number }>) => {
          if (killed || data.said !== 'progress' || data.share === 0) return;
          killed = true;
          this.terminate();
          this.dispatchEvent(new ErrorEvent('error', { message: 'out of memory', cancelable: true }));
        });
      }
    };
  });
  await bench.open();
  await bench.hear(3);
  await page.keyboard.press('w');
  await expect(page.locator('.model').getByRole('alert')).toContainText('started anew');
  await solved(bench);
});

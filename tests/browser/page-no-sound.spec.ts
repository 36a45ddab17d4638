import { expect, test } from '../helpers/page-fixture.js';
import type { BenchPage } from '../helpers/page-bench.js';

/** Tries to play through the ear check. */
async function tryToPlay(bench: BenchPage): Promise<void> {
  await bench.playButton.click();
  await bench.page.getByRole('button', { name: 'I am ready: play' }).click();
}

/** The rest of the page needs no sound card: it computes, draws and measures. */
async function worksWithoutSound(bench: BenchPage): Promise<void> {
  await bench.hear(2);
  await expect(bench.stage.locator('.level')).toContainText('dB louder');
  await bench.type('width', '60');
  await expect(bench.stage.locator('.way')).toHaveText('nearest way round: 60 mm');
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Play');
  await expect(bench.playButton).toBeEnabled();
}

test('a browser without computed sound says so beside the play button', async ({ page, bench }) => {
  await page.addInitScript(() => {
    delete (window as { AudioContext?: unknown }).AudioContext;
    delete (window as { webkitAudioContext?: unknown }).webkitAudioContext;
  });
  await bench.open();
  await tryToPlay(bench);
  await expect(bench.strip.getByRole('alert')).toContainText('This browser cannot play computed sound');
  await worksWithoutSound(bench);
  await bench.strip.getByRole('alert').getByRole('button', { name: 'close' }).click();
  await expect(page.getByRole('alert')).toHaveCount(0);
});

test('no sound device: one sentence, and the ear check says it as well', async ({ page, bench }) => {
  await page.addInitScript(() => {
    window.AudioContext = class {
      constructor() {
        throw new DOMException('no device', 'NotSupportedError');
      }
    } as unknown as typeof AudioContext;
  });
  await bench.open();
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Play a low and a high tone' }).click();
  await expect(page.getByRole('dialog').getByRole('alert')).toContainText('No sound device answers');
  await page.getByRole('button', { name: 'I am ready: play' }).click();
  await expect(bench.strip.getByRole('alert')).toContainText('No sound device answers');
  await worksWithoutSound(bench);
});

test('a context that stays suspended: one sentence within four seconds, and play works once it is let go', async ({
  page,
  bench
}) => {
  await page.addInitScript(() => {
    const proto = BaseAudioContext.prototype;
    const state = Object.getOwnPropertyDescriptor(proto, 'state')!;
    const resume = AudioContext.prototype.resume;
    const held = () => !(window as { letGo?: boolean }).letGo;
    Object.defineProperty(proto, 'state', {
      ...state,
      get() {
        return held() && this instanceof AudioContext ? 'suspended' : state.get!.call(this);
      }
    });
    const waited = { from: NaN, until: NaN };
    Object.assign(window, { waited });
    AudioContext.prototype.resume = function () {
      if (!held()) return resume.call(this);
      waited.from = performance.now();
      return new Promise(() => undefined);
    };
    new MutationObserver(() => {
      if (Number.isNaN(waited.until) && document.querySelector('.strip [role="alert"]'))
        waited.until = performance.now();
    }).observe(document, { subtree: true, childList: true });
  });
  await bench.open();
  await tryToPlay(bench);
  await expect(bench.strip.getByRole('alert')).toContainText('The browser holds the sound back');
  // By the page's own clock, from the question to the sentence; one second for a slow machine.
  const waited = await page.evaluate(() => {
    const { from, until } = (window as unknown as { waited: { from: number; until: number } }).waited;
    return until - from;
  });
  expect(waited).toBeGreaterThan(0);
  expect(waited).toBeLessThan(5000);
  await worksWithoutSound(bench);
  await page.evaluate(() => ((window as { letGo?: boolean }).letGo = true));
  await bench.playButton.click();
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
  await expect(page.getByRole('alert')).toHaveCount(0);
});

test('a worker that cannot start: one sentence, the drawings and the curve are there', async ({
  page,
  bench
}) => {
  await page.addInitScript(() => {
    window.Worker = class {
      constructor() {
        throw new DOMException('workers are switched off', 'SecurityError');
      }
    } as unknown as typeof Worker;
  });
  await page.goto('./');
  await expect(bench.strip.getByRole('alert')).toContainText(
    'The part of the program that computes sounds cannot start (workers are switched off).'
  );
  await bench.hear(2);
  await bench.type('width', '60');
  await expect(bench.stage.locator('.way')).toHaveText('nearest way round: 60 mm');
  await tryToPlay(bench);
  await expect(bench.strip.getByRole('alert')).toContainText('cannot start');
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Play');
});

test('a browser that takes the sound away is said so, and play brings it back', async ({ page, bench }) => {
  await page.addInitScript(() => {
    const Real = window.AudioContext;
    window.AudioContext = class extends Real {
      constructor(...args: ConstructorParameters<typeof Real>) {
        super(...args);
        (window as { context?: AudioContext }).context = this;
      }
    };
  });
  await bench.open();
  await bench.play();
  await page.evaluate(() => (window as { context?: AudioContext }).context!.suspend());
  await expect(bench.strip.getByRole('alert')).toContainText('The browser has stopped the sound');
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Play');
  await bench.playButton.click();
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
  await expect(page.getByRole('alert')).toHaveCount(0);
});

test.describe('with a lever', () => {
  test.use({ returning: false });

  test('a worker that dies once: one sentence, the next question starts another one', async ({
    page,
    bench
  }) => {
    await page.addInitScript(() => {
      const Real = window.Worker;
      let first = true;
      window.Worker = class extends Real {
        #dies = first;
        constructor(...args: ConstructorParameters<typeof Real>) {
          super(...args);
          first = false;
        }
        override postMessage(message: unknown, transfer?: unknown): void {
          // The first question goes out before the page is there (static/begin.js).
          if (this.#dies && (message as { id: number }).id !== 0)
            this.dispatchEvent(new ErrorEvent('error', { message: 'out of memory', cancelable: true }));
          else super.postMessage(message, transfer as Transferable[]);
        }
      };
    });
    await page.goto('./');
    await expect(bench.strip.getByRole('alert')).toContainText(
      'The part of the program that computes sounds has failed (out of memory).'
    );
    await page.getByRole('button', { name: 'Throttle up' }).click();
    await expect(page.getByText('listening …')).toHaveCount(0);
    await bench.play();
    await bench.hear(2);
    await expect(bench.stage.locator('.level')).toContainText('dB louder');
    await expect(page.getByRole('alert')).toHaveCount(0);
  });
});

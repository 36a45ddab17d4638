// The figures of the built page in Chromium: node tests/speed/page-figures.mjs [address]
// Without an address the folder build/ is served. Times are those of this machine, without the sound device's own.
import { chromium } from '@playwright/test';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { findChromium } from '../../src/cli/find-chromium.mjs';
import { listen } from '../../src/cli/listen.mjs';
import { staticServer } from '../../src/cli/static-server.mjs';

const root = path.join(import.meta.dirname, '../..');
const MOVES = 120;

/** @param {number[]} values */
function spread(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (/** @type {number} */ share) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  return `median ${at(0.5).toFixed(1)} ms, 95 % below ${at(0.95).toFixed(1)} ms (${sorted.length} times)`;
}

/** Notes when the graph is asked for a fade and when a filter is handed to it. Runs in the page. */
function listenToTheGraph() {
  const notes = /** @type {any} */ (window);
  notes.fades = [];
  notes.filters = [];
  const set = AudioParam.prototype.setValueAtTime;
  AudioParam.prototype.setValueAtTime = function (...args) {
    notes.fades.push(performance.now());
    return set.apply(this, args);
  };
  const buffer = /** @type {any} */ (Object.getOwnPropertyDescriptor(ConvolverNode.prototype, 'buffer'));
  Object.defineProperty(ConvolverNode.prototype, 'buffer', {
    ...buffer,
    set(value) {
      notes.filters.push(performance.now());
      buffer.set.call(this, value);
    }
  });
  notes.starts = [];
  const start = AudioBufferSourceNode.prototype.start;
  AudioBufferSourceNode.prototype.start = function (...args) {
    // When it sounds, by the clock of the page.
    const ahead = Math.max(0, (args[0] ?? 0) - this.context.currentTime);
    notes.starts.push(performance.now() + 1000 * ahead);
    return start.apply(this, args);
  };
  // What waited for the first sound comes from then on (screens/parts/seen-before.ts).
  const add = DOMTokenList.prototype.add;
  DOMTokenList.prototype.add = function (...names) {
    if (names.includes('seen')) notes.begun ??= Date.now();
    add.apply(this, names);
  };
  // What the sound worker has answered first, by kind: once a loop is kept, pressing play waits for nothing of it.
  notes.answered = {};
  const ask = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (message, ...more) {
    const { id, question } = message;
    if (question)
      this.addEventListener('message', ({ data }) => {
        if (data.id === id) notes.answered[question.kind] ??= performance.now();
      });
    return ask.call(this, message, .../** @type {[any]} */ (more));
  };
  notes.longTasks = [];
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) notes.longTasks.push(entry.duration);
  }).observe({ type: 'longtask' });
}

const server = process.argv[2] ? null : staticServer(path.join(root, 'build'));
const address = process.argv[2] ?? `http://127.0.0.1:${await listen(/** @type {any} */ (server), 0)}/`;
const browser = await chromium.launch({
  executablePath: findChromium() ?? undefined,
  args: process.getuid?.() === 0 ? ['--no-sandbox'] : []
});
try {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.addInitScript(listenToTheGraph);
  /** @type {Promise<[string, number, number]>[]} */
  const weights = [];
  page.on('response', (response) => {
    // Before the body is asked for: by then something else may have begun.
    const { startTime } = response.request().timing();
    weights.push(
      response.body().then(
        (body) => [
          new URL(response.url()).pathname,
          /\.woff2$/.test(response.url()) ? body.length : gzipSync(body).length,
          startTime
        ],
        () => [response.url(), 0, startTime]
      )
    );
  });
  await page.goto(address);
  await page.waitForFunction(
    () =>
      document.querySelectorAll('.shelf .level').length > 3 &&
      document.querySelector('.shelf ol')?.getAttribute('aria-busy') === 'false'
  );
  const answered = await page.evaluate(() => /** @type {any} */ (window).answered);
  console.log(
    `load to the first sound that can be played: ${Math.round(answered.keep)} ms, its levels told: ${Math.round(answered.loudnessThrough)} ms`
  );
  const begun = await page.evaluate(() => /** @type {any} */ (window).begun);
  const parts = await Promise.all(weights);
  const sum = (/** @type {(name: string, asked: number) => boolean} */ which) =>
    (
      parts.reduce((total, [name, bytes, asked]) => total + (which(name, asked) ? bytes : 0), 0) / 1000
    ).toFixed(0);
  console.log(
    `page weight gz, asked for until the first sound is there: ${sum((_, asked) => asked <= begun)} kB; with what comes after it: ${sum(() => true)} kB (of it typefaces ${sum((name) => name.endsWith('.woff2'))} kB)`
  );

  await page.locator('button.play').click();
  await page.getByRole('button', { name: 'I am ready: play' }).click({ trial: true });
  const waited = await page.evaluate(
    () =>
      new Promise((resolve) => {
        const began = performance.now();
        /** @type {HTMLElement} */ (document.querySelector('dialog[open] .strong')).click();
        const look = () =>
          document.querySelector('button.play')?.getAttribute('data-playing') === 'true'
            ? resolve(performance.now() - began)
            : setTimeout(look, 2);
        look();
      })
  );
  console.log(`play to sound: ${Math.round(Number(waited))} ms`);

  await page.waitForTimeout(1000);
  /** @type {number[]} */
  const keys = [];
  for (let i = 0; i < 24; i++) {
    keys.push(
      await page.evaluate(
        (code) =>
          new Promise((resolve) => {
            const notes = /** @type {any} */ (window);
            notes.fades.length = 0;
            const began = performance.now();
            document.body.dispatchEvent(
              new KeyboardEvent('keydown', { code, bubbles: true, cancelable: true })
            );
            const look = () => (notes.fades.length ? resolve(notes.fades[0] - began) : setTimeout(look, 1));
            look();
          }),
        `Digit${1 + ((i + 1) % 4)}`
      )
    );
    await page.waitForTimeout(120);
  }
  console.log(`key to the start of its fade: ${spread(keys)}`);

  await page.keyboard.press('Digit2');
  await page.waitForTimeout(1200);
  const handle = page.getByRole('slider', { name: 'Flat plate, width' });
  const box = /** @type {{ x: number, y: number, width: number, height: number }} */ (
    await handle.boundingBox()
  );
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.evaluate(() => {
    const notes = /** @type {any} */ (window);
    notes.longTasks.length = 0;
    notes.toFilter = [];
    notes.toFrame = [];
    addEventListener(
      'pointermove',
      () => {
        const began = performance.now();
        const before = notes.filters.length;
        const look = () => {
          if (notes.filters.length > before) notes.toFilter.push(notes.filters[before] - began);
        };
        queueMicrotask(() => setTimeout(look, 40));
        requestAnimationFrame(() => {
          const channel = new MessageChannel();
          channel.port1.onmessage = () => notes.toFrame.push(performance.now() - began);
          channel.port2.postMessage(0);
        });
      },
      { capture: true }
    );
  });
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Performance.enable');
  const metric = async () =>
    Object.fromEntries(
      (await cdp.send('Performance.getMetrics')).metrics.map(({ name, value }) => [name, value])
    );
  const before = await metric();
  for (let i = 0; i < MOVES; i++) {
    await page.mouse.move(x - 40 * Math.sin((i / MOVES) * 2 * Math.PI), y);
    await page.waitForTimeout(50);
  }
  const after = await metric();
  await page.mouse.up();
  await page.waitForTimeout(200);
  const { toFilter, toFrame, longTasks } = await page.evaluate(() => {
    const { toFilter, toFrame, longTasks } = /** @type {any} */ (window);
    return { toFilter, toFrame, longTasks };
  });
  const share = (/** @type {string} */ name) => (((after[name] - before[name]) / MOVES) * 1000).toFixed(1);
  console.log(`drag to the new filter in the graph: ${spread(toFilter)}`);
  console.log(`drag to the next frame painted: ${spread(toFrame)}`);
  console.log(
    `main thread for one step of a drag: ${share('TaskDuration')} ms (script ${share('ScriptDuration')}, style ${share('RecalcStyleDuration')}, layout ${share('LayoutDuration')}); ${longTasks.length} long tasks in ${MOVES} steps`
  );

  /**
   * Clicks what `find` gives and waits for the sound that begins by it.
   * @param {string} find
   */
  const toSound = (find) =>
    page.evaluate(
      (selector) =>
        new Promise((resolve) => {
          const notes = /** @type {any} */ (window);
          notes.starts.length = 0;
          const began = performance.now();
          /** @type {HTMLElement} */ (document.querySelector(selector)).click();
          const look = () => (notes.starts.length ? resolve(notes.starts[0] - began) : setTimeout(look, 1));
          look();
        }),
      find
    );
  // The drawer is made when it is opened first, and stays.
  await page.getByRole('button', { name: 'another sound' }).click();
  await page.getByRole('dialog', { name: 'The sounds there are' }).waitFor();
  await page.keyboard.press('Escape');
  const drawer = '[aria-label="The sounds there are"] li';
  const sounds = await page.locator(drawer).count();
  await page.evaluate((selector) => {
    for (const [i, one] of document.querySelectorAll(selector).entries()) one.id = `sound-${i}`;
  }, drawer);
  /** @param {boolean} resting whether the hand rests on it for a fifth of a second first */
  const choosing = async (resting) => {
    /** @type {{ name: string | null, ms: number }[]} */
    const chosen = [];
    for (let n = 0; n < sounds; n++) {
      const i = (n * 7 + 1) % sounds;
      if (i === 0) continue;
      const name = await page.locator(`#sound-${i} b`).textContent();
      if (resting) {
        await page.evaluate(
          (selector) => document.querySelector(selector)?.dispatchEvent(new PointerEvent('pointerenter')),
          `#sound-${i} button`
        );
        await page.waitForTimeout(200);
      }
      chosen.push({ name, ms: Number(await toSound(`#sound-${i} button`)) });
      await page.waitForTimeout(900);
    }
    chosen.sort((a, b) => b.ms - a.ms);
    const slowest = chosen.slice(0, 3).map(({ name, ms }) => `${name} ${Math.round(ms)} ms`);
    return `${spread(chosen.map(({ ms }) => ms))}; slowest: ${slowest.join(', ')}`;
  };
  console.log(`a sound chosen to its beginning: ${await choosing(false)}`);
  console.log(`the same, the mouse resting on it for 0.2 s before: ${await choosing(true)}`);
  await toSound('#sound-0 button');
  await page.waitForTimeout(1500);
  /** @type {number[]} */
  const levers = [];
  for (let i = 0; i < 12; i++) {
    levers.push(Number(await toSound(`[aria-label="Throttle ${i % 8 < 4 ? 'up' : 'down'}"]`)));
    await page.waitForTimeout(700);
  }
  console.log(`lever to the beginning of its ride: ${spread(levers)}`);

  await page.keyboard.press('Digit2');
  await page.waitForTimeout(1000);
  const forget = () => page.evaluate(() => void (/** @type {any} */ (window.longTasks.length = 0)));
  const longest = async () => {
    const all = await page.evaluate(() => /** @type {any} */ (window).longTasks);
    return all.length ? `${Math.max(...all).toFixed(0)} ms` : 'below 50 ms';
  };
  /** Waits until the status of the model begins so. */
  const until = async (/** @type {string} */ beginning) => {
    const began = performance.now();
    await page.waitForFunction(
      (words) => document.querySelector('.model .status > span')?.textContent?.startsWith(words),
      beginning
    );
    return performance.now() - began;
  };
  await forget();
  // The page opens with the wave solution: another size is solved from cold.
  const width = page.getByRole('textbox', { name: 'width', exact: true });
  await width.fill('97');
  await width.press('Enter');
  const drafted = await until('a draft');
  const inFull = drafted + (await until('solved in full'));
  console.log(
    `wave solution from cold: draft after ${drafted.toFixed(0)} ms, full after ${inFull.toFixed(0)} ms; longest task of the main thread ${await longest()}`
  );
  await page.waitForTimeout(6000);
  await forget();
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.evaluate(() => void (/** @type {any} */ (window.filters.length = 0)));
  for (let i = 0; i < MOVES; i++) {
    await page.mouse.move(x - 40 * Math.sin((i / MOVES) * 2 * Math.PI), y);
    await page.waitForTimeout(50);
  }
  await page.mouse.up();
  const followed = await page.evaluate(() => /** @type {any} */ (window).filters.length);
  const settled = await until('solved in full');
  console.log(
    `wave solution under a drag: ${followed} filters in ${MOVES} steps of 50 ms, full ${settled.toFixed(0)} ms after; longest task ${await longest()}`
  );
  await page.keyboard.press('a');
  await page.waitForSelector('.wave-picture canvas');
  await page.waitForTimeout(1500);
  await forget();
  const frames = await page.evaluate(
    () =>
      new Promise((resolve) => {
        let count = 0;
        const began = performance.now();
        const next = () => {
          count++;
          if (performance.now() - began < 2000) requestAnimationFrame(next);
          else resolve((1000 * count) / (performance.now() - began));
        };
        requestAnimationFrame(next);
      })
  );
  console.log(
    `wave picture of a tone: ${Number(frames).toFixed(0)} frames a second; longest task ${await longest()}`
  );
} finally {
  await browser.close();
  server?.close();
}

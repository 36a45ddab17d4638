import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { test as plain, type Page } from '@playwright/test';
import { BenchPage } from '../helpers/page-bench.js';
import { clickUntil } from '../helpers/page-click.js';
import { expect, test } from '../helpers/page-fixture.js';
import { tone, wav } from '../helpers/page-wav.js';

/** Collects what the content security policy stops, from the first line of the page on. */
async function listen(page: Page): Promise<() => Promise<string[]>> {
  await page.addInitScript(() => {
    const stopped: string[] = [];
    Object.assign(window, { stopped });
    addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI, sample }) =>
      stopped.push([effectiveDirective, blockedURI, sample].filter(Boolean).join(' '))
    );
  });
  return () => page.evaluate(() => (window as unknown as { stopped: string[] }).stopped);
}

/** The hosts and schemes that the whole browser window asks, its workers included. */
function hosts(page: Page): Set<string> {
  const asked = new Set<string>();
  page.context().on('request', (request) => {
    const { protocol, origin } = new URL(request.url());
    asked.add(origin === 'null' ? protocol : origin);
  });
  return asked;
}

const recording = (name: string) => ({
  name,
  mimeType: 'audio/wav',
  buffer: wav([tone(300, 1, 48000)], { sampleRate: 48000 })
});

// It is kept for use without a network, too.
test.use({ serviceWorker: true });

test('a whole evening’s use asks for nothing that the policy forbids', async ({ page, bench, baseURL }) => {
  const stopped = await listen(page);
  const asked = hosts(page);
  await bench.open();

  // The ear check with its pair of tones, then play, switch and blow the horn.
  await bench.playButton.click();
  await page.getByRole('button', { name: 'Play a low and a high tone' }).click();
  await expect(page.getByRole('button', { name: 'Play a low and a high tone' })).toBeEnabled({
    timeout: 10_000
  });
  await page.getByRole('button', { name: 'I am ready: play' }).click();
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
  for (const numeral of [2, 3, 4, 1, 2]) await bench.hear(numeral);
  await page.getByRole('button', { name: 'Horn: hold to blow' }).click({ delay: 300 });
  await page.keyboard.press('KeyL');
  await page.keyboard.press('KeyG');
  await expect(bench.field('width')).toHaveValue(/^[4-9]\d/);

  // The mount by hand and by field, undone and done again.
  await bench.hear(3);
  await bench.hear(2);
  await bench.settled();
  await bench.drag(bench.handle('width').first(), 30, 0);
  await bench.type('width', '75');
  await page.keyboard.press('Control+KeyZ');

  // A recording, which a player reads first, and a file that is none.
  await bench.picker.setInputFiles(recording('mine.wav'));
  await expect(bench.soundName).toHaveText('mine.wav');
  await bench.picker.setInputFiles({ ...recording('none.mp3'), buffer: Buffer.from('no sound at all') });
  await expect(bench.recordingProblem).toBeVisible({ timeout: 12_000 });
  await bench.choose('Pink noise');

  // The speaker, the notes, every popover and every dialog.
  await bench.openSpeaker();
  await bench.escape();
  await bench.giveSpeaker('round-28');
  for (const figure of await page.locator('button.figure:visible').all()) {
    await figure.click();
    await page.keyboard.press('Escape');
  }
  await page.getByRole('button', { name: '+ another mount' }).click();
  await page.getByRole('dialog', { name: 'The drawer of mounts' }).getByRole('button').first().click();
  await expect(bench.stands).toHaveCount(5);
  await page.keyboard.press('Escape');
  for (const [opener, name] of [
    ['? all keys', null],
    ['how it works', 'What goes on here']
  ] as const) {
    const dialog = name ? page.getByRole('dialog', { name }) : page.locator('dialog[open]');
    await clickUntil(page.getByRole('button', { name: opener, exact: true }), dialog);
    await page.keyboard.press('Escape');
    await expect(dialog).toBeHidden();
  }

  // The bench's own menu: a file saved is a blob.
  await page.locator('[data-kept]').getByRole('button').click();
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'save to a file' }).click();
  await saved;
  await page.keyboard.press('Escape');

  // The projector view, then the phone.
  await clickUntil(
    page.getByRole('button', { name: 'projector view' }),
    page.getByRole('main', { name: 'Projector view' })
  );
  await page.keyboard.press('KeyI');
  await page.keyboard.press('KeyP');
  // The window comes back from the whole screen when it can.
  await expect(() => page.setViewportSize({ width: 390, height: 844 })).toPass();
  await bench.hear(1);
  await expect(page.getByText('works without a network')).toBeVisible();
  expect(await stopped()).toEqual([]);
  await page.reload();
  await expect(page.getByText('works without a network')).toBeVisible();
  await bench.hear(2);

  expect(await stopped()).toEqual([]);
  const own = new URL(baseURL!).origin;
  expect([...asked].filter((host) => host !== own && host !== 'blob:')).toEqual([]);
});

test('what stands in the page without its script keeps to the policy too', async ({ request }) => {
  const html = await (await request.get('./')).text();
  const policy = /<meta http-equiv="content-security-policy" content="([^"]+)">/.exec(html)![1];
  expect(policy).toContain("default-src 'self'");
  // Nothing but hashes beside 'self': no way in for a script or a style that was not built.
  expect(policy).not.toMatch(/'unsafe-(inline|eval)'|https?:|\*|data:/);
  expect(policy.match(/blob:/g)).toEqual(['blob:']);
  expect(policy).toContain("media-src 'self' blob:");
  expect(html.indexOf(policy)).toBeLessThan(html.indexOf('<script'));
  expect(html).not.toMatch(/\sstyle="/);
  expect(html).not.toMatch(/\son\w+="/);
});

/** What an intruder would try, with another host at hand; each says the directive that must stop it. */
const intrusions: Record<string, { stops: string; by: (elsewhere: string) => unknown }> = {
  'a script written into the page': {
    stops: 'script-src-elem inline',
    by: () => {
      const script = document.createElement('script');
      script.textContent = 'window.intruded = true';
      document.head.append(script);
    }
  },
  'a handler written into the markup': {
    stops: 'script-src-attr inline',
    by: () => (document.querySelector('footer')!.innerHTML = '<img src="x" onerror="window.intruded = true">')
  },
  'a script made from a blob': {
    stops: 'script-src-elem blob',
    by: () => {
      const script = document.createElement('script');
      script.src = URL.createObjectURL(new Blob(['window.intruded = true'], { type: 'text/javascript' }));
      document.head.append(script);
    }
  },
  'a script from elsewhere': {
    stops: 'script-src-elem ELSEWHERE',
    by: (elsewhere) => {
      const script = document.createElement('script');
      script.src = `${elsewhere}a.js`;
      document.head.append(script);
    }
  },
  'text run as a program': {
    stops: 'script-src eval',
    // Later, because what a test calls directly may do what the page may not.
    by: () => void setTimeout(() => Function('window.intruded = true')())
  },
  'a question sent elsewhere': {
    stops: 'connect-src ELSEWHERE',
    by: (elsewhere) =>
      fetch(`${elsewhere}?bench=all`).then(
        () => (Object.assign(window, { intruded: true }), undefined),
        () => undefined
      )
  },
  'a picture fetched from elsewhere': {
    stops: 'img-src ELSEWHERE',
    by: (elsewhere) => (new Image().src = `${elsewhere}?bench=all`)
  },
  'a worker from a blob': {
    stops: 'worker-src blob',
    by: () => {
      try {
        new Worker(URL.createObjectURL(new Blob([''])));
      } catch {
        // Some browsers refuse at once, others by an event.
      }
    }
  },
  'a style written into the page': {
    stops: 'style-src-elem inline',
    by: () => {
      const style = document.createElement('style');
      style.textContent = 'body { display: none }';
      document.head.append(style);
    }
  },
  'a style attribute': {
    stops: 'style-src-attr inline',
    by: () => (document.querySelector('footer')!.innerHTML = '<p style="display: none">gone</p>')
  },
  'another base for every address': {
    stops: 'base-uri ELSEWHERE',
    by: (elsewhere) => {
      const base = document.createElement('base');
      base.href = elsewhere;
      document.head.append(base);
    }
  },
  'a form sent elsewhere': {
    stops: 'form-action ELSEWHERE',
    by: (elsewhere) => {
      const form = document.createElement('form');
      form.action = elsewhere;
      document.body.append(form);
      form.submit();
    }
  }
};

// Without the fixture: the browser complains here, as it must. One page for all that an intruder tries.
plain('the policy stops whatever an intruder tries', async ({ page }) => {
  plain.setTimeout(120_000);
  let asked = 0;
  const foreign = createServer((_request, response) => {
    asked++;
    response.writeHead(200, { 'access-control-allow-origin': '*' }).end();
  });
  await new Promise<void>((resolve) => foreign.listen(0, '127.0.0.1', resolve));
  const elsewhere = `http://127.0.0.1:${(foreign.address() as AddressInfo).port}/`;
  try {
    // The host is there and would answer.
    expect((await fetch(elsewhere)).ok).toBe(true);
    const stopped = await listen(page);
    await new BenchPage(page, false).open();
    const address = page.url();
    let tried = 0;
    for (const [what, { stops, by }] of Object.entries(intrusions))
      await plain.step(what, async () => {
        const before = (await stopped()).length;
        expect(before, 'nothing but what was tried is stopped').toBe(tried);
        await page.evaluate(by, elsewhere);
        await expect
          .poll(async () => (await stopped()).slice(before).join('; '))
          .toContain(stops.replace('ELSEWHERE', elsewhere));
        tried = (await stopped()).length;
        expect(await page.evaluate(() => 'intruded' in window)).toBe(false);
        expect(await page.evaluate(() => document.querySelector('footer')!.checkVisibility())).toBe(true);
        expect(page.url()).toBe(address);
        expect(asked).toBe(1);
      });
  } finally {
    foreign.closeAllConnections();
    foreign.close();
  }
});

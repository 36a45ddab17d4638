import { readFileSync } from 'node:fs';
import path from 'node:path';
import { dropFile } from '../helpers/page-give-file.js';
import { demoMount, levelInNode, recordingLoop } from '../helpers/page-level.js';
import { cases, expect, test } from '../helpers/page-fixture.js';
import { tone, wav, wavHeader } from '../helpers/page-wav.js';

const recordings = path.join(import.meta.dirname, '../reference/recordings');
const chuffs = path.join(recordings, 'chuffs.wav');

const { it, onOnePage } = cases();

it('a recording is opened by the picker, named, played and measured', async ({ page, bench }) => {
  const asked = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'your own recording' }).click();
  await (await asked).setFiles(chuffs);
  await expect(bench.soundName).toHaveText('chuffs.wav');
  await expect(page.locator('.stretch')).toContainText('of 0:01');
  await expect(page.locator('.stretch')).toContainText('would be filtered twice');
  await bench.play();
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
  await bench.hear(2);
  await expect(bench.stage.locator('.level')).toContainText(/dB (louder|quieter)/);
  // Another sound and back: the recording is still there.
  await bench.choose('Pink noise');
  await page.getByRole('button', { name: 'your recording' }).click();
  await expect(bench.soundName).toHaveText('chuffs.wav');
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
});

it('its levels are those of the pure functions on its samples', async ({ bench }) => {
  const samples = tone(290, 1, 48000);
  await bench.picker.setInputFiles(file('tone.wav', wav([samples], { sampleRate: 48000 })));
  await expect(bench.soundName).toHaveText('tone.wav');
  const loop = recordingLoop(samples);
  for (const numeral of [2, 3, 4]) {
    const exact = levelInNode(demoMount(numeral), loop);
    await expect
      .poll(async () => Math.abs((await bench.level(numeral))! - exact), { message: `${exact} dB` })
      .toBeLessThan(0.8);
  }
});

for (const ending of ['mp3', 'flac', 'ogg', 'm4a'])
  it(`the same recording as .${ending}`, async ({ page, bench }) => {
    const type = {
      mp3: 'audio/mpeg',
      flac: 'audio/flac',
      ogg: 'audio/ogg; codecs=vorbis',
      m4a: 'audio/mp4; codecs=mp4a.40.2'
    }[ending]!;
    const decodes = await page.evaluate((asked) => new Audio().canPlayType(asked) !== '', type);
    await bench.picker.setInputFiles(path.join(recordings, `chuffs.${ending}`));
    if (decodes) {
      await expect(bench.soundName).toHaveText(`chuffs.${ending}`);
      await expect(page.locator('.stretch')).toContainText('of 0:01');
    } else {
      await expect(bench.recordingProblem).toContainText('is not a sound file that this browser can read');
      await bench.recordingProblem.getByRole('button', { name: 'close' }).click();
    }
  });

it('a file let go over the page is opened', async ({ page, bench }) => {
  const given = { name: 'dropped.wav', head: readFileSync(chuffs).toString('base64') };
  await dropFile(page, given, false);
  await expect(page.getByText('Let go to hear this recording through every mount')).toBeVisible();
  await dropFile(page, given);
  await expect(page.getByText('Let go to hear this recording')).toHaveCount(0);
  await expect(bench.soundName).toHaveText('dropped.wav');
});

it('a stretch is chosen by typing', async ({ page, bench }) => {
  await bench.picker.setInputFiles(chuffs);
  const fields = page.locator('.stretch');
  const [from, to] = ['from', 'to'].map((label) => fields.getByRole('textbox', { name: label }));
  await from.fill('0,4');
  await from.press('Enter');
  await expect(from).toHaveValue('0.4');
  await to.fill('0.9');
  await to.press('Enter');
  await expect(to).toHaveValue('0.9');
  for (const wrong of ['abc', '']) {
    await from.fill(wrong);
    await from.press('Enter');
    await expect(from).toHaveValue('0.4');
    await to.fill(wrong);
    await to.press('Enter');
    await expect(to).toHaveValue('0.9');
  }
  // Beyond the recording: as far as it goes.
  await to.fill('9999');
  await to.press('Enter');
  await expect(to).toHaveValue('1.2');
  await from.fill('-3');
  await from.press('Enter');
  await expect(from).toHaveValue('0.0');
  await expect(page.getByRole('alert')).toHaveCount(0);
});

it('a stretch is chosen by drag, and another stretch is another sound', async ({ page, bench }) => {
  // Bass first, treble after it: the plate helps the bass more.
  const samples = [...tone(120, 1.5, 48000), ...tone(1900, 1.5, 48000)];
  await bench.picker.setInputFiles(file('both.wav', wav([samples], { sampleRate: 48000 })));
  await expect(bench.soundName).toHaveText('both.wav');
  const picture = page.locator('.stretch svg');
  const box = (await picture.boundingBox())!;
  const drag = async (share: number, to: number) => {
    await page.mouse.move(box.x + share * box.width, box.y + 20);
    await page.mouse.down();
    await page.mouse.move(box.x + to * box.width, box.y + 20, { steps: 8 });
    await page.mouse.up();
  };
  await drag(0.99, 0.45);
  const to = page.locator('.stretch input').last();
  await expect.poll(async () => Number(await to.inputValue())).toBeGreaterThan(1.2);
  expect(Number(await to.inputValue())).toBeLessThan(1.45);
  await expect(page.getByText('listening …')).toHaveCount(0);
  const bass = levelInNode(demoMount(2), recordingLoop(samples.slice(0, 48000)));
  await expect.poll(async () => Math.abs((await bench.level(2))! - bass)).toBeLessThan(1);
  await drag(0.01, 0.4);
  await drag(0.45, 0.98);
  await drag(0.4, 0.6);
  await expect(page.locator('.stretch input').first()).toHaveValue('1.8');
  const treble = levelInNode(demoMount(2), recordingLoop(samples.slice(90000, 140000)));
  await expect.poll(async () => Math.abs((await bench.level(2))! - treble)).toBeLessThan(1);
  expect(bass - treble).toBeGreaterThan(2);
});

for (const [what, bytes] of [
  ['8 bits at 11 kHz in one channel', () => wav([tone(400, 0.8, 11025)], { sampleRate: 11025, bits: 8 })],
  ['96 kHz', () => wav([tone(400, 0.5, 96000)], { sampleRate: 96000 })],
  [
    'six channels',
    () =>
      wav(
        Array.from({ length: 6 }, () => tone(400, 0.5, 48000)),
        { sampleRate: 48000 }
      )
  ],
  [
    'one channel of two',
    () => wav([tone(400, 0.5, 48000), tone(400, 0.5, 48000).fill(0)], { sampleRate: 48000 })
  ]
] as const)
  it(`plays: ${what}`, async ({ page, bench }) => {
    await bench.picker.setInputFiles(file('plain.wav', bytes()));
    await expect(bench.soundName).toHaveText('plain.wav');
    await expect(page.locator('.stretch .warning')).toHaveCount(0);
    await bench.play();
    await expect(page.getByText('listening …')).toHaveCount(0);
    await expect(page.getByRole('alert')).toHaveCount(0);
  });

it('channels that cancel each other are played with a warning', async ({ page, bench }) => {
  const left = tone(300, 0.6, 48000);
  const right = left.map((value) => -0.9 * value);
  await bench.picker.setInputFiles(file('anti.wav', wav([left, right], { sampleRate: 48000 })));
  await expect(bench.soundName).toHaveText('anti.wav');
  // Sum of 1 and −0.9 against the mean power of both, 10·log10(0.905/0.0025) = 25.6 dB.
  await expect(page.locator('.stretch .warning')).toHaveText(
    /Its channels cancel each other: folded to one, 26 dB are lost/
  );
  await bench.play();
  await expect(page.getByText('listening …')).toHaveCount(0);
});

const HOUR = 3600;
const bad: { what: string; name: string; head: Buffer; megabytes?: number; says: RegExp }[] = [
  {
    what: 'a text file named .wav',
    name: 'words.wav',
    head: Buffer.from('This is not a sound, but it says it is.\n'.repeat(50)),
    says: /"words\.wav" is not a sound file that this browser can read/
  },
  { what: '0 bytes', name: 'empty.wav', head: Buffer.alloc(0), says: /"empty\.wav" is empty/ },
  {
    what: 'an hour of stereo',
    name: 'hour.wav',
    head: wavHeader({ channels: 2, sampleRate: 48000, bits: 16, dataBytes: HOUR * 48000 * 4 }),
    megabytes: 660,
    says: /"hour\.wav" has 692 MB; at most 200 MB can be opened/
  },
  {
    what: 'an hour of stereo in a small file',
    name: 'small-hour.wav',
    head: wavHeader({ channels: 2, sampleRate: 8000, bits: 8, dataBytes: HOUR * 16000 }),
    megabytes: 55,
    says: /"small-hour\.wav" lasts 60 min; at most 10 min can be opened/
  },
  {
    what: 'silence',
    name: 'silence.wav',
    head: wav([new Array<number>(24000).fill(0)], { sampleRate: 48000 }),
    says: /This recording is silent\./
  },
  {
    what: 'a header and no samples',
    name: 'header.wav',
    head: wavHeader({ channels: 1, sampleRate: 48000, bits: 16, dataBytes: 0 }),
    says: /"header\.wav" contains no sound\. Choose another file\./
  },
  {
    what: 'a WAV cut off in its header',
    name: 'torn.wav',
    head: wavHeader({ channels: 1, sampleRate: 48000, bits: 16, dataBytes: 96000 }).subarray(0, 30),
    says: /"torn\.wav" is not a sound file/
  },
  {
    what: 'a WAV of a rate of 0',
    name: 'zero.wav',
    head: wavHeader({ channels: 1, sampleRate: 0, bits: 16, dataBytes: 96000 }),
    says: /"zero\.wav" is not a sound file/
  },
  {
    what: 'three samples',
    name: 'click.wav',
    head: wav([[0.5, -0.5, 0.5]], { sampleRate: 48000 }),
    says: /"click\.wav" lasts only 0\.00 s; a loop needs at least/
  }
];

it('a bad file is refused in one sentence, and what plays goes on', async ({ page, bench }) => {
  await bench.picker.setInputFiles(file('mine.wav', wav([tone(400, 0.5, 48000)], { sampleRate: 48000 })));
  await expect(bench.soundName).toHaveText('mine.wav');
  await bench.play();
  await bench.measured();
  const levels = await bench.shelf.locator('ol').innerText();
  for (const { what, name, head, megabytes, says } of bad)
    await test.step(what, async () => {
      await dropFile(page, { name, head: head.toString('base64'), megabytes });
      await expect(bench.recordingProblem).toHaveText(says, { timeout: 12_000 });
      await expect(page.getByRole('alert')).toHaveCount(1);
      await bench.drawn();
      await expect(bench.soundName).toHaveText('mine.wav');
      await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
      expect(await bench.shelf.locator('ol').innerText()).toBe(levels);
      await bench.recordingProblem.getByRole('button', { name: 'close' }).click();
      await expect(page.getByRole('alert')).toHaveCount(0);
    });
  await bench.hear(2);
  // The next file opens as if nothing had been.
  await bench.picker.setInputFiles(chuffs);
  await expect(bench.soundName).toHaveText('chuffs.wav');
});

it('a recording is there again after a reload, out of the browser’s own store', async ({ page, bench }) => {
  await bench.picker.setInputFiles(chuffs);
  await expect(bench.soundName).toHaveText('chuffs.wav');
  await expect.poll(() => page.evaluate(keptRecordings)).toContain('chuffs.wav');
  await expect(bench.line).toHaveAttribute('data-kept', 'kept');
  await bench.hear(2);
  await bench.measured();
  const level = await bench.level(2);
  await page.reload();
  await expect(bench.soundName).toHaveText('chuffs.wav');
  await expect(page.locator('.stretch')).toContainText('of 0:01');
  await expect.poll(() => bench.level(2)).toBe(level);
  await expect(page.getByRole('alert')).toHaveCount(0);
});

test('a recording of one’s own', onOnePage);

/** The names of the recordings that lie in the browser's store. */
function keptRecordings(): Promise<string[]> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open('backwave-recordings');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const all = opening.result.transaction('kept').objectStore('kept').getAll();
      all.onsuccess = () => {
        opening.result.close();
        resolve((all.result as { name: string }[]).map(({ name }) => name));
      };
      all.onerror = () => reject(all.error);
    };
  });
}

function file(name: string, buffer: Buffer): { name: string; mimeType: string; buffer: Buffer } {
  return { name, mimeType: 'audio/wav', buffer };
}

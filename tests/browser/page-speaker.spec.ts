import { checkInstallation } from '../../src/lib/acoustics/mounts/check-installation.js';
import type { Speaker } from '../../src/lib/acoustics/speaker/speaker.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { demoMount } from '../helpers/page-level.js';
import { cases, expect, test } from '../helpers/page-fixture.js';

/** Why this speaker does not fit a mount of the demo; null where it does. */
function misfit(speaker: Speaker, numeral: number): string | null {
  try {
    checkInstallation({ speaker, mount: demoMount(numeral), turn: 0 });
    return null;
  } catch (error) {
    return (error as Error).message;
  }
}

const absurd = [
  ['moving mass', '0', /moving mass must be within .* g, got 0/],
  ['moving mass', '-1', /moving mass must be within .* g, got -1/],
  ['compliance', '1e12', /compliance must be within .* mm\/N, got/],
  ['force factor', 'much', /force factor must be a number/],
  ['mechanical Q', '', /mechanical Q must be a number/],
  ['cone length', '41', /the cone .* is larger than its frame/],
  ['frame width', '9999', /frame width must be within .* mm, got 9999/],
  ['depth', 'NaN', /depth must be a number/],
  ['volume of its body', '-1', /body volume must be within .* cm³, got -1/]
] as const;

test('some of the nine do not fit somewhere, or the tests above would show little', () => {
  const misfits = Object.values(SPEAKERS).flatMap((speaker) =>
    [2, 3, 4].filter((numeral) => misfit(speaker, numeral))
  );
  expect(misfits.length).toBeGreaterThan(2);
});

const { it, onOnePage } = cases();

it('each of the nine goes into every mount it fits, and the others say why not', async ({ page, bench }) => {
  await bench.speaker.locator('summary').click();
  for (const [key, speaker] of Object.entries(SPEAKERS))
    await test.step(speaker.name, async () => {
      await bench.giveSpeaker(key, { everywhere: true });
      await expect(bench.speakerChoice).toHaveValue(key);
      await expect(page.getByText('listening …')).toHaveCount(0);
      for (const numeral of [1, 2, 3, 4]) {
        const why = misfit(speaker, numeral);
        await bench.hear(numeral);
        if (why === null) {
          await expect(bench.stand(numeral).locator('.problem')).toHaveCount(0);
          await expect(bench.stage.locator('.main .misfit')).toHaveCount(0);
          await expect(bench.stand(numeral).locator('.level')).toHaveText(/to compare with|dB|just as loud/);
        } else {
          await expect(bench.stand(numeral)).toContainText(why);
          await expect(bench.stage.getByRole('alert')).toContainText(`cannot be built so: ${why}.`);
          await expect(bench.stand(numeral).locator('.level')).toHaveCount(0);
        }
        // It keeps its drawing, whether it fits or not.
        await expect(bench.stage.locator('.main svg')).toBeVisible();
      }
      await bench.hear(1);
      await expect(bench.stage.getByRole('heading')).toHaveText('Free air');
    });
});

it('a mount that the speaker no longer fits is silent, the others play on, and it comes back', async ({
  bench
}) => {
  await bench.speaker.locator('summary').click();
  await bench.play();
  await bench.hear(4);
  await bench.giveSpeaker('round-50', { everywhere: true });
  await expect(bench.stage.getByRole('alert')).toContainText('cannot be built so');
  await expect(bench.playButton).toHaveAttribute('aria-label', 'Stop');
  await bench.hear(2);
  await expect(bench.stage.locator('.level')).toContainText('dB louder');
  await bench.giveSpeaker('oval', { everywhere: true });
  await bench.hear(4);
  await expect(bench.stage.getByRole('alert')).toHaveCount(0);
  await expect(bench.field('depth inside')).toHaveValue('17');
  await expect(bench.stage.locator('.level')).toContainText('dB');
});

it('another speaker goes into the heard mount alone; where it does not fit, those that do are offered', async ({
  bench
}) => {
  await bench.hear(4);
  await bench.giveSpeaker('round-50');
  await expect(bench.stage.locator('.main .misfit')).not.toHaveCount(0);
  await expect(bench.shelf.locator('ol .problem')).toHaveCount(1);
  const fitting = Object.keys(SPEAKERS).filter((key) => misfit(SPEAKERS[key], 4) === null);
  const offered = bench.stage.locator('.main').getByRole('button');
  await expect(offered).toHaveText(fitting.map((key) => SPEAKERS[key].name));
  await offered.last().click();
  await expect(bench.stage.getByRole('alert')).toHaveCount(0);
  await expect(bench.speakerChoice).toHaveValue(fitting.at(-1)!);
  await bench.hear(2);
  await expect(bench.speakerChoice).toHaveValue('oval');
});

it('levels against a mount that cannot be built any more go against one that can', async ({
  page,
  bench
}) => {
  await bench.speaker.locator('summary').click();
  await page.getByRole('combobox', { name: /levels against/ }).selectOption('closed box');
  await expect(bench.stand(4)).toContainText('to compare with');
  await bench.giveSpeaker('round-50', { everywhere: true });
  await expect(bench.stand(1)).toContainText('to compare with');
  await expect(page.getByText('listening …')).toHaveCount(0);
  await bench.giveSpeaker('oval', { everywhere: true });
  await expect(bench.stand(4)).toContainText('to compare with');
});

it('a motor value is edited: resonance, box and curve follow', async ({ page, bench }) => {
  await bench.speaker.locator('summary').click();
  await bench.hear(4);
  const mass = page.getByRole('textbox', { name: 'moving mass' });
  await expect(mass).toHaveValue('0.55');
  const [before, curve] = [await bench.speaker.locator('> p').last().innerText(), await bench.curve()];
  await mass.fill('2,2');
  await mass.press('Enter');
  await expect(mass).toHaveValue('2.2');
  // Four times the mass on the same spring: half the resonance.
  await expect(bench.speaker.locator('summary')).toContainText('resonance 174 Hz');
  expect(await bench.speaker.locator('> p').last().innerText()).not.toBe(before);
  await expect.poll(() => bench.curve()).not.toEqual(curve);
});

it('a frame is edited: free air’s string follows', async ({ page, bench }) => {
  await bench.speaker.locator('summary').click();
  const width = page.getByRole('textbox', { name: 'frame width' });
  await width.fill('30');
  await width.press('Enter');
  await expect(bench.stand(1)).toContainText('30 mm string');
  await expect(bench.stage.locator('.way')).toHaveText('nearest way round: 30 mm');
});

it('absurd values are refused in one sentence, the field shows what counts', async ({ page, bench }) => {
  await bench.speaker.locator('summary').click();
  const stands = bench.shelf.locator('ol');
  const [shelf, curve] = [await bench.atRest(), await bench.curve()];
  for (const [label, typed, sentence] of absurd)
    await test.step(`${label} "${typed}"`, async () => {
      const field = page.getByRole('textbox', { name: new RegExp(`^${label}`) });
      const before = await field.inputValue();
      await field.fill(typed);
      await field.press('Enter');
      await expect(bench.speaker.getByRole('alert')).toHaveText(sentence);
      await expect(field).toHaveValue(before);
      await bench.drawn();
      expect(await stands.innerText()).toBe(shelf);
      expect(await bench.curve()).toEqual(curve);
    });
  // Another speaker takes the sentence away; back again, everything is as it was.
  const level = await bench.level(2);
  await bench.giveSpeaker('round-28', { everywhere: true });
  await expect(bench.speaker.getByRole('alert')).toHaveCount(0);
  await expect.poll(() => bench.level(2)).not.toBe(level);
  await bench.giveSpeaker('oval', { everywhere: true });
  await expect.poll(() => stands.innerText()).toBe(shelf);
  await expect.poll(() => bench.curve()).toEqual(curve);
});

test('the speaker’s panel', onOnePage);

import { checkInstallation } from '../../src/lib/acoustics/mounts/check-installation.js';
import type { Speaker } from '../../src/lib/acoustics/speaker/speaker.js';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { demoBench } from '../../src/lib/file/demo-bench.js';
import { writeBenchFile } from '../../src/lib/file/write-bench-file.js';
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
  await page.getByRole('combobox', { name: /levels against/ }).selectOption('closed box');
  await expect(bench.stand(4)).toContainText('to compare with');
  await bench.giveSpeaker('round-50', { everywhere: true });
  await expect(bench.stand(1)).toContainText('to compare with');
  await expect(page.getByText('listening …')).toHaveCount(0);
  await bench.giveSpeaker('oval', { everywhere: true });
  await expect(bench.stand(4)).toContainText('to compare with');
});

it('a motor value is edited on the drawing: resonance and curve follow at once; undo takes it back', async ({
  page,
  bench
}) => {
  await bench.hear(4);
  const curve = await bench.curve();
  await bench.openSpeaker();
  const mass = page.getByRole('textbox', { name: 'moving mass' });
  await expect(mass).toHaveValue('0.55');
  await bench.typeFigure('moving mass', '2,2');
  await expect(mass).toHaveValue('2.2');
  // Four times the mass on the same spring: half the resonance.
  await expect(bench.speaker.locator('dd').first()).toHaveText('174 Hz');
  await bench.escape();
  await expect(bench.speakerOpener).toContainText('resonance 174 Hz');
  await expect(bench.speakerOpener).toBeFocused();
  await expect.poll(() => bench.curve()).not.toEqual(curve);
  await bench.openSpeaker();
  await bench.speaker.getByRole('button', { name: 'undo' }).click();
  await expect(mass).toHaveValue('0.55');
  await bench.escape();
});

it('every figure has a leader that ends at its part, on the drawing', async ({ bench }) => {
  await bench.openSpeaker();
  const drawings = bench.speaker.locator('.leadered');
  await expect(drawings).toHaveCount(2);
  for (const drawing of await drawings.all()) {
    const fields = await drawing.locator('.field').count();
    await expect(drawing.locator('path.leader')).toHaveCount(fields);
    const svg = (await drawing.locator('svg').boundingBox())!;
    for (const end of await drawing.locator('circle.end').all()) {
      const { x, y } = (await end.boundingBox())!;
      expect(x).toBeGreaterThan(svg.x + 10);
      expect(x).toBeLessThan(svg.x + svg.width - 10);
      expect(y).toBeGreaterThan(svg.y);
      expect(y).toBeLessThan(svg.y + svg.height);
    }
  }
  await expect(bench.speaker.getByRole('textbox', { name: 'largest excursion' })).toHaveValue('0.8');
  await bench.escape();
});

it('a frame is edited: free air’s string follows', async ({ bench }) => {
  await bench.openSpeaker();
  await bench.typeFigure('frame width', '30');
  await bench.escape();
  await expect(bench.stand(1)).toContainText('30 mm string');
  await expect(bench.stage.locator('.way')).toHaveText('nearest way round: 30 mm');
});

it('absurd values are refused in one sentence beside their field, where it stays until it is mended', async ({
  page,
  bench
}) => {
  const stands = bench.shelf.locator('ol');
  const [shelf, curve] = [await bench.atRest(), await bench.curve()];
  await bench.openSpeaker();
  for (const [label, typed, sentence] of absurd)
    await test.step(`${label} "${typed}"`, async () => {
      const field = page.getByRole('textbox', { name: new RegExp(`^${label}`) });
      const before = await field.inputValue();
      await bench.typeFigure(new RegExp(`^${label}`), typed);
      await expect(bench.speaker.locator('.field', { has: field }).getByRole('alert')).toHaveText(sentence);
      await expect(field).toHaveValue(typed);
      await expect(field).toHaveAttribute('aria-invalid', 'true');
      // Its leader still begins beside it, wherever its sentence has moved it.
      await expect
        .poll(async () => {
          const { y, height } = (await field.boundingBox())!;
          const begins = await bench.speaker.locator('path.leader').evaluateAll((all) =>
            all.map((one) => {
              const path = one as SVGPathElement;
              return path.getPointAtLength(0).y + path.ownerSVGElement!.getBoundingClientRect().top;
            })
          );
          return Math.min(...begins.map((begin) => Math.abs(begin - y - height / 2)));
        })
        .toBeLessThan(3);
      await bench.typeFigure(new RegExp(`^${label}`), before);
      await expect(bench.speaker.getByRole('alert')).toHaveCount(0);
    });
  await bench.escape();
  expect(await stands.innerText()).toBe(shelf);
  expect(await bench.curve()).toEqual(curve);
});

it('a sheet of four figures: what follows, what is missing, what contradicts; then its values are the speaker’s', async ({
  bench
}) => {
  await bench.openSpeaker('maker’s sheet');
  const found = bench.speaker.getByRole('region', { name: 'What the sheet says' });
  await expect(found).toContainText('Nothing is typed yet.');
  await bench.typeFigure(/^resonance/, '420');
  await bench.typeFigure(/^total Q/, '1.2');
  await bench.typeFigure(/^equivalent volume/, '15');
  await expect(found).toContainText('Two more figures are needed, of these: coil resistance, mechanical Q');
  await bench.typeFigure(/^coil resistance/, '7.4');
  await expect(found).toContainText('One more figure is needed');
  await expect(bench.speaker.locator('.field', { hasText: 'moving mass' })).toContainText('0.49 g');
  await bench.typeFigure(/^moving mass/, '0.6');
  await expect(found).toContainText('Equivalent volume: the sheet says 15 cm³.');
  await expect(found).toContainText('% apart; up to 5 % would pass as rounding.');
  await bench.typeFigure(/^moving mass/, '');
  await found.getByRole('button', { name: /take what is missing/ }).click();
  await expect(found).toContainText('Not on the sheet: mechanical Q.');
  await found.getByRole('button', { name: 'use these values' }).click();
  await expect(found.getByRole('status')).toHaveText(
    '“28 × 40 mm” has these values now. Undo takes them back.'
  );
  await bench.escape();
  await expect(bench.speakerOpener).toContainText('resonance 420 Hz');
});

it('measured at home: the volts to look for, figures with their errors, and the speaker with them', async ({
  bench
}) => {
  await bench.openSpeaker('measured at home');
  for (const [name, figure] of [
    ['coil by the ohmmeter', '8'],
    ['resistor', '100'],
    ['resonance', '400'],
    ['volts across the speaker', '0.2'],
    ['volts across the resistor', '0.5']
  ])
    await bench.speaker.locator('.steps').getByRole('textbox', { name, exact: true }).fill(figure);
  await bench.typeFigure('tone below it', '320');
  // 0.7 V over |100 + Z| with Z of 17.9 Ω, by hand: √(100² + 4·100·8·5/6 + 8²·5) = 114.0 Ω
  await expect(bench.speaker.locator('.steps b')).toHaveText('0.110 V');
  const found = bench.speaker.getByRole('region', { name: 'What was measured' });
  await expect(found).toContainText('Still to read: tone above it, added mass, resonance with the mass.');
  await bench.typeFigure('tone above it', '500');
  await bench.typeFigure('added mass', '0.5');
  await bench.typeFigure('resonance with the mass', '300');
  // 0.5 g/(16/9 − 1)
  await expect(found).toContainText(/moving mass\s*0\.64 ± 0\.0\d g/);
  await bench.typeFigure('resonance with the mass', '410');
  await expect(found).toContainText('The added mass must lower the resonance: read both again.');
  await bench.typeFigure('resonance with the mass', '300');
  await found.getByRole('button', { name: 'use these values' }).click();
  await bench.escape();
  await expect(bench.speakerOpener).toContainText('resonance 400 Hz');
});

it('the drive: how loud here beside how much louder, what a lift costs, room and money, and levels where one listens', async ({
  page,
  bench
}) => {
  await bench.hear(2);
  const drive = page.getByRole('region', { name: 'How loud, and what it costs: Flat plate' });
  await drive.scrollIntoViewIfNeeded();
  const type = async (name: string, figure: string): Promise<void> => {
    const field = drive.getByRole('textbox', { name });
    await field.fill(figure);
    await field.press('Enter');
  };
  const line = (numeral: number) =>
    drive.getByRole('listitem').filter({ hasText: new RegExp(`^${numeral}`) });
  await expect(line(1)).toContainText('to compare with');
  await expect(line(2)).toContainText(/\d+ dB\s*\d+ dB louder to the ear\s*152 × 102 × 13 mm\s*takes 22 cm³/);

  const travel = drive.getByRole('meter', { name: 'travel of the cone' });
  await expect(travel).toBeVisible();
  await type('lift in decibels', '6');
  await expect(drive).toContainText(
    /Low end lifted by 6 dB below 300 Hz: \S+ times the travel and \S+ times the heat/
  );
  await expect(page.locator('.engine-left')).toContainText('With the low end lifted by 6 dB below 300 Hz.');
  await type('lift in decibels', '19');
  await expect(drive.getByRole('alert')).toHaveText('the lift must be within 0 … 18 dB, got 19');
  await drive.getByRole('slider', { name: 'lift, slider' }).fill('0');
  await expect(drive.getByRole('alert')).toHaveCount(0);
  await expect(drive).not.toContainText('times the travel');

  await type('price of the speaker', '9,5');
  await expect(line(4)).toContainText('costs 9.5 + 9.5 = 19');
  await type('plate thickness', '2');
  await expect(line(2)).toContainText('152 × 102 × 14 mm');
  await type('the amplifier’s least load', '16');
  await expect(drive.getByRole('alert')).toHaveText(/^Too low a load: .* this amplifier needs 16 Ω/);

  const axis = page.locator('.engine-left svg text').filter({ hasText: /dB$/ }).first();
  await expect(axis).toHaveText('+10 dB');
  await page.getByRole('button', { name: 'levels where I listen' }).click();
  // 67.3 dB at 1 V, and 0.69 V of the usual drive: 12 dB above that there is one line of whole tens
  await expect(axis).toHaveText('70 dB');
  await expect(page.locator('.engine-left')).toContainText('dB re 20 µPa at 1 m: curves of a steady tone');
  await page.getByRole('button', { name: 'levels against 0 dB' }).click();
  await expect(axis).toHaveText('+10 dB');
});

it('speakers are copied, named, deleted if no mount has them, and taken from another bench', async ({
  page,
  bench
}) => {
  await bench.openSpeaker('all speakers');
  const panel = bench.speaker.getByRole('tabpanel');
  await expect(panel.getByRole('button', { name: 'delete 28 × 40 mm', exact: true })).toBeDisabled();
  await panel.getByRole('button', { name: 'copy 28 × 40 mm', exact: true }).click();
  const name = bench.speaker.getByRole('textbox', { name: 'its name' });
  await expect(name).toHaveValue('28 × 40 mm again');
  await name.fill('from the drawer');
  await name.press('Tab');
  await bench.speaker.getByRole('button', { name: 'put it into 1, free air' }).click();
  await expect(bench.speaker).toContainText('in 1, free air, which you hear');
  await expect(panel.getByRole('button', { name: 'delete from the drawer' })).toBeDisabled();
  await bench.speaker.getByRole('button', { name: 'undo' }).click();
  await panel.getByRole('button', { name: 'delete from the drawer' }).click();
  await expect(panel.getByText('from the drawer')).toHaveCount(0);

  const opener = panel.getByLabel('open a bench file');
  const give = (name: string, text: string) =>
    opener.setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
  await give('none.json', '{"format": "other"}');
  await expect(panel.getByRole('alert')).toHaveText(
    /^none\.json could not be opened: .*\. No speaker was taken\.$/
  );
  const other = demoBench();
  const speakers = { oval: SPEAKERS.oval, mine: { ...SPEAKERS['round-36'], name: 'Mine' } };
  await give('club.json', writeBenchFile({ ...other, speakers }));
  await expect(panel.getByRole('alert')).toHaveCount(0);
  await expect(panel.getByRole('checkbox', { name: /28 × 40 mm, 348 Hz, here already/ })).not.toBeChecked();
  await expect(panel.getByRole('checkbox', { name: /^Mine, 398 Hz/ })).toBeChecked();
  await panel.getByRole('button', { name: 'take this one' }).click();
  await expect(panel.getByRole('status')).toHaveText('Taken: “Mine”.');
  await panel.getByRole('button', { name: 'look at Mine' }).click();
  await expect(bench.speaker.getByRole('textbox', { name: 'frame diameter' })).toHaveValue('36');
  await bench.escape();
  await expect(bench.speakerChoice.locator('option', { hasText: 'Mine' })).toHaveCount(1);
  await page.keyboard.press('Control+z');
  await expect(bench.speakerChoice.locator('option', { hasText: 'Mine' })).toHaveCount(0);
});

test('the speaker’s screen', onOnePage);

import { expect, test } from '../helpers/page-fixture.js';
import { underFolder } from '../helpers/page-under-folder.js';

test('under a folder of any host the page computes, switches and plays', async ({ page, bench, baseURL }) => {
  const host = await underFolder(baseURL!, '/some/folder/');
  try {
    await bench.open(host.address);
    await bench.play();
    await bench.hear(2);
    await expect(bench.spoken).toHaveText(/Flat plate, heard, \d+ dB louder/);
    await bench.type('width', '60');
    await expect(bench.stage.locator('.way')).toHaveText('nearest way round: 60 mm');
    await expect(page.getByRole('alert')).toHaveCount(0);
    // Without a service worker nothing is kept, and nothing said.
    await expect(page.getByText('works without a network')).toHaveCount(0);
    // The bundled typefaces came along.
    expect(
      await page.evaluate(() =>
        [...document.fonts].some(({ family, status }) => status === 'loaded' && family.includes('Source'))
      )
    ).toBe(true);
  } finally {
    await host.close();
  }
});

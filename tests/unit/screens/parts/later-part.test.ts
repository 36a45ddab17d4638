import { expect, test } from 'vitest';
import { LaterPart } from '../../../../src/lib/screens/parts/later-part.svelte.js';

test('a part is fetched once, however often it is asked for', async () => {
  let fetched = 0;
  const later = new LaterPart(async () => ({ default: `part ${++fetched}` }));
  expect(later.part).toBeNull();
  await Promise.all([later.bring(), later.bring()]);
  await later.bring();
  expect(later.part).toBe('part 1');
  expect(fetched).toBe(1);
});

test('one that does not come is told of, and comes when it is asked for again', async () => {
  let network = false;
  const later = new LaterPart(async () => {
    if (!network) throw new TypeError('Failed to fetch');
    return { default: 'the part' };
  });
  await later.bring();
  expect([later.part, later.lost]).toEqual([null, true]);
  network = true;
  const again = later.bring();
  expect(later.lost, 'while it is fetched').toBe(false);
  await again;
  expect([later.part, later.lost]).toEqual(['the part', false]);
});

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { render } from 'svelte/server';
import { expect, it } from 'vitest';
import GroundedText from '../../../../src/lib/plot/labels/GroundedText.svelte';
import { textWidth } from '../../../../src/lib/plot/scales/text-width.js';

it.each(['start', 'middle'] as const)(
  'the ground reaches all round a text that has its %s there',
  (anchor) => {
    const [text, textSize, x, y] = ['in front of the cone', 27, 300, 40];
    const { body } = render(GroundedText, { props: { text, textSize, x, y, anchor } });
    const [left, top, width, height] = ['x', 'y', 'width', 'height'].map((name) =>
      Number(new RegExp(`<rect[^>]* ${name}="([-\\d.]+)"`).exec(body)![1])
    );
    const begins = x - (anchor === 'middle' ? textWidth(text, textSize) / 2 : 0);
    expect(left).toBeLessThan(begins);
    expect(left + width).toBeGreaterThan(begins + textWidth(text, textSize));
    // Letters reach 0.75 of the height above their line and 0.25 below it.
    expect(top).toBeLessThan(y - 0.75 * textSize);
    expect(top + height).toBeGreaterThan(y + 0.25 * textSize);
    // What is painted later lies above.
    expect(body.indexOf('<rect')).toBeLessThan(body.indexOf('<text'));
  }
);

it('over waves all words have a ground', () => {
  const waves = path.join(import.meta.dirname, '../../../../src/lib/screens/parts/waves');
  const drawn = readdirSync(waves).filter((name) => name.endsWith('.svelte'));
  expect(drawn).toContain('WaveScene.svelte');
  for (const name of drawn) expect(readFileSync(path.join(waves, name), 'utf8'), name).not.toContain('<text');
});

import { expect, test } from 'vitest';
import { sectionOf, wordsAbove } from '../../../src/lib/drawing/section.js';
import { DEMO } from '../../helpers/demo-installations.js';

/** The highest point of a path, in millimetres above the front of the speaker. */
const highest = (path: string) => -Math.min(...[...path.matchAll(/,(-?[\d.]+)/g)].map(([, y]) => Number(y)));

test.each(['free air', 'flat plate', 'cab body'] as const)(
  'words above %s stand clear of its string at every scale that drawings have',
  (name) => {
    const { string } = sectionOf(DEMO[name]);
    for (const scale of [0.5, 1, 2.2, 3, 5, 8]) {
      // The tails of letters of 15 px reach 4 px below their line, and the string is up to 4 px thick.
      const foot = wordsAbove(scale) - 4;
      expect(foot).toBeGreaterThan(highest(string!) * scale + 2);
    }
  }
);

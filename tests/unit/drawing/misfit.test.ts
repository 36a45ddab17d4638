import { expect, test } from 'vitest';
import { checkInstallation } from '../../../src/lib/acoustics/mounts/check-installation.js';
import type { Mount } from '../../../src/lib/acoustics/mounts/mount.js';
import { refusal } from '../../../src/lib/acoustics/refusal.js';
import { SPEAKERS } from '../../../src/lib/acoustics/speaker/speakers.js';
import { misfitSection } from '../../../src/lib/drawing/misfit.js';
import { MOUNT_DRAWER } from '../../../src/lib/screens/shelf/mount-drawer.js';
import { close } from '../../helpers/close.js';

const exact = { abs: 1e-9, because: 'sums of sizes' };
const hood: Mount = { kind: 'shell', length: 0.105, width: 0.018, height: 0.032, ends: 'closed', offset: 0 };

test('the 28 × 40 mm oval is 5 mm too wide on either side of a hood of 18 mm', () => {
  const { section, misfits } = misfitSection({ speaker: SPEAKERS.oval, mount: hood, turn: 0 })!;
  expect(section.cut.plane).toBe('across');
  expect(misfits.map(({ x }) => x)).toEqual([-14, 9]);
  for (const { width, height } of misfits) {
    close(width, 5, exact);
    close(height, SPEAKERS.oval.depth * 1000, exact);
  }
});

test('a shell that is wide enough and too short is cut along', () => {
  const short: Mount = { ...hood, width: 0.04, length: 0.03 };
  const { section, misfits } = misfitSection({ speaker: SPEAKERS.oval, mount: short, turn: 0 })!;
  expect(section.cut.plane).toBe('along');
  expect(misfits.length).toBe(2);
  close(misfits[0].width, 5, exact);
});

test('a box that is too shallow shows what stands out below its floor', () => {
  const depth = SPEAKERS.oval.depth - 0.004;
  const box: Mount = { kind: 'box', length: 0.06, width: 0.05, depth };
  const { misfits } = misfitSection({ speaker: SPEAKERS.oval, mount: box, turn: 0 })!;
  expect(misfits.length).toBe(1);
  close(misfits[0].y, depth * 1000, exact);
  close(misfits[0].height, 4, exact);
});

test('of every speaker and every mount of the drawer, what does not fit is shown, and nothing of what fits', () => {
  let misfit = 0;
  for (const speaker of Object.values(SPEAKERS))
    for (const { mount } of MOUNT_DRAWER) {
      const installation = { speaker, mount, turn: 0 as const };
      const problem = refusal(() => checkInstallation(installation));
      const seen = misfitSection(installation)!.misfits.length > 0;
      if (problem?.includes('body fills the box')) continue;
      expect(seen, `${speaker.name}: ${problem}`).toBe(problem !== null);
      if (seen) misfit++;
    }
  expect(misfit).toBeGreaterThan(10);
});

test.each<Mount>([
  { kind: 'plate', shape: 'round', diameter: 0.05, offset: [0.1, 0] },
  { kind: 'plate', shape: 'round', diameter: 0.05, offset: [0.1, 0.1] },
  { kind: 'plate', shape: 'rectangle', length: 0, width: 0, offset: [0, 0] },
  { kind: 'shell', length: 0, width: 0, height: 0, ends: 'open', offset: 9 },
  { kind: 'box', length: 0, width: 1e9, depth: -1 }
])('sizes that are no sizes are drawn or are not, and nothing breaks: %j', (mount) => {
  const drawn = misfitSection({ speaker: SPEAKERS.oval, mount, turn: 0 });
  for (const { x, y, width, height } of drawn?.misfits ?? [])
    for (const value of [x, y, width, height]) expect(Number.isFinite(value)).toBe(true);
});

import { expect, test } from 'vitest';
import type { Mount } from '../../../../src/lib/acoustics/mounts/mount.js';
import { outlineWidth } from '../../../../src/lib/acoustics/outline.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { demoBench, DEMO_MOUNTS } from '../../../../src/lib/file/demo-bench.js';
import { speakersToChoose } from '../../../../src/lib/bench/speakers.js';
import { fittingSpeakers } from '../../../../src/lib/screens/stage/fitting-speakers.js';

const hood: Mount = { kind: 'shell', length: 0.105, width: 0.018, height: 0.032, ends: 'closed', offset: 0 };

test('a hood of 18 mm takes those that are no wider', () => {
  const fitting = fittingSpeakers(SPEAKERS, { mount: hood, turn: 0 });
  expect(fitting.length).toBeGreaterThan(0);
  expect(fitting).toEqual(
    Object.keys(SPEAKERS).filter((key) => outlineWidth(SPEAKERS[key].frame) <= 0.018 + 1e-9)
  );
  expect(fitting).not.toContain('oval');
});

test('every one of them is at home in free air; one without motor values cannot be heard', () => {
  const choices = { ...SPEAKERS, mute: { ...SPEAKERS.oval, motor: undefined } };
  expect(fittingSpeakers(choices, { mount: DEMO_MOUNTS.free, turn: 0 })).toEqual(Object.keys(SPEAKERS));
});

test('what the bench has made of a speaker counts', () => {
  const demo = demoBench();
  const narrow = { ...SPEAKERS.oval, frame: { shape: 'rectangle' as const, length: 0.04, width: 0.016 } };
  const cone = { shape: 'ellipse' as const, length: 0.03, width: 0.012 };
  const choices = speakersToChoose({ ...demo, speakers: { oval: { ...narrow, cone }, own: SPEAKERS.oval } });
  expect(Object.keys(choices)).toEqual([...Object.keys(SPEAKERS), 'own']);
  expect(fittingSpeakers(choices, { mount: hood, turn: 0 })).toContain('oval');
});

import { describe, expect, test } from 'vitest';
import { loopLoudness } from '../../../src/lib/listening/loudness.js';
import { checkSound } from '../../../src/lib/sounds/check-sound.js';
import { isMoving, knobsOfKind, SOUND_KIND_NAMES } from '../../../src/lib/sounds/kinds.js';
import { marksOf } from '../../../src/lib/sounds/marks-of.js';
import { LINESIDE, MACHINES, TEST_SIGNALS, usualSound } from '../../../src/lib/sounds/roster.js';
import { ALIGNED, SoundBank } from '../../../src/lib/workers/sound/sound-bank.js';
import { close } from '../../helpers/close.js';

const ALL = [...MACHINES, ...LINESIDE, ...TEST_SIGNALS];
const RATE = 16000;

test('every kind is there, every name is there once, and all can be made', () => {
  expect(new Set(ALL.map(({ kind }) => kind))).toEqual(new Set(SOUND_KIND_NAMES));
  expect(new Set(ALL.map(({ name }) => name)).size).toBe(ALL.length);
  for (const sound of ALL) expect(() => checkSound(sound)).not.toThrow();
});

test('a sound holds its kind, its name and its knobs, and nothing else', () => {
  for (const sound of ALL)
    expect(Object.keys(sound).sort()).toEqual(
      ['kind', 'name', ...Object.keys(knobsOfKind(sound.kind))].sort()
    );
});

test('every knob has a name, a range that its usual value is in, and a step that fits it', () => {
  for (const kind of SOUND_KIND_NAMES)
    for (const knob of Object.values(knobsOfKind(kind))) {
      expect(knob.name).toMatch(/^\p{Ll}[\p{L}\p{N} ’,-]+$/u);
      if (knob.type !== 'number') continue;
      expect(knob.min).toBeLessThan(knob.max);
      expect(knob.usual).toBeGreaterThanOrEqual(knob.min);
      expect(knob.usual).toBeLessThanOrEqual(knob.max);
      expect(knob.step).toBeLessThanOrEqual(knob.max - knob.min);
    }
});

test('machines stand at the middle of their lever and do not run past by themselves', () => {
  for (const machine of MACHINES) {
    expect(isMoving(machine)).toBe(true);
    expect(machine.notch).toBe(4);
    expect(machine.runPast).toBe(false);
    expect(marksOf({ ...machine, runPast: true })).toEqual([]);
    expect(marksOf(machine).length).toBeGreaterThan(0);
  }
});

test('a kind as it comes is the first of it, or the one of that name', () => {
  expect(usualSound('diesel')).toBe(MACHINES[0]);
  expect(usualSound('diesel', MACHINES[1].name)).toBe(MACHINES[1]);
  expect(usualSound('horn', 'nobody')).toBe(LINESIDE[0]);
});

// ITU-R BS.1770-5, integrated: switching between sounds must not jump.
describe('all sounds are aligned in loudness', () => {
  const bank = new SoundBank();
  test.each(ALL.map((sound) => [sound.name, sound] as const))('%s', (_, sound) => {
    close(loopLoudness(bank.loop(sound, RATE), RATE), ALIGNED, {
      abs: 0.2,
      because: 'blocks near the absolute gate of −70 LUFS are in or out with the gain'
    });
  });
});

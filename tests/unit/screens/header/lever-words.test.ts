import { expect, test } from 'vitest';
import { leverWords } from '../../../../src/lib/screens/header/lever-words.js';
import { soundSummary } from '../../../../src/lib/screens/parts/words/sound-words.js';
import { LINESIDE, MACHINES, TEST_SIGNALS } from '../../../../src/lib/sounds/roster.js';

const diesel = MACHINES[0];
const steam = MACHINES.find(({ kind }) => kind === 'steam')!;

test('a diesel tells its turns and firings', () => {
  expect(leverWords(diesel, false)).toEqual({ speed: '700 rpm', pulses: 'fires 70 times a second' });
  expect(leverWords({ ...diesel, notch: 0 }, true).speed).toBe('420 rpm');
});

test('a steam engine tells its speed and beats, and that it stands', () => {
  expect(leverWords(steam, false).speed).toBe('48 km/h');
  expect(leverWords(steam, true).speed).toBe('30 mph');
  // 30 mph on 69 inch drivers: 9.7 beats a second (rounded; kinematics).
  expect(leverWords(steam, true).pulses).toBe('beats 9.7 times a second');
  expect(leverWords({ ...steam, notch: 0 }, false)).toEqual({ speed: '0 km/h', pulses: 'it stands' });
});

test('an electric one tells how often its gears mesh', () => {
  const electric = MACHINES.find(({ kind }) => kind === 'electric')!;
  expect(leverWords(electric, false).pulses).toMatch(/^gears mesh \d+ times a second$/);
  expect(leverWords({ ...electric, notch: 0 }, false).pulses).toBe('it stands');
});

test('every sound there is has its half line', () => {
  for (const sound of [...MACHINES, ...LINESIDE, ...TEST_SIGNALS])
    expect(soundSummary(sound, false)).toMatch(/^.{2,60}$/);
  expect(soundSummary(steam, true)).toContain('69 in');
});

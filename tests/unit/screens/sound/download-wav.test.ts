import { expect, test } from 'vitest';
import { wavName } from '../../../../src/lib/screens/sound/download-wav.js';

test.each([
  ['No. 41, cab diesel', 'no-41-cab-diesel'],
  ['my loco.wav', 'my-loco'],
  ['../../etc/passwd', 'etc-passwd'],
  ['Ä/ö: größe?', 'a-o-große'],
  ['…', 'sound'],
  ['x'.repeat(200), 'x'.repeat(60)]
])('%j is saved as %s.wav', (name, expected) => {
  expect(wavName(name)).toBe(expected);
});

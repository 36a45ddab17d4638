import { expect, it } from 'vitest';
import { checkInstallation } from '../../../src/lib/acoustics/mounts/check-installation.js';
import { refusal } from '../../../src/lib/acoustics/refusal.js';
import { inShownUnits } from '../../../src/lib/format/in-shown-units.js';
import { DEMO } from '../../helpers/demo-installations.js';

it('leaves a sentence in millimetres as it is', () => {
  expect(inShownUnits('the cone (25.4 × 12.7 mm) is larger', false)).toBe(
    'the cone (25.4 × 12.7 mm) is larger'
  );
});

it.each([
  // 25.4 mm an inch, exactly (1959).
  [
    'the cone (25.4 × 12.7 mm) is larger than the plate (ø 19.05 mm)',
    'the cone (1 × 0.5 in) is larger than the plate (ø 0.75 in)'
  ],
  ['shell width must be within 25.4 … 254 mm, got 0', 'shell width must be within 1 … 10 in, got 0'],
  [
    'the cone (ø 20.6375 mm), -25.4 and 0 mm from the middle, reaches over',
    'the cone (ø 13/16 in), −1 and 0 in from the middle, reaches over'
  ],
  ['moving mass must be within 1 … 2 g, got 3', 'moving mass must be within 1 … 2 g, got 3'],
  ['compliance must be within 1 … 2 mm/N, got 3', 'compliance must be within 1 … 2 mm/N, got 3']
])('%s', (sentence, inInches) => {
  expect(inShownUnits(sentence, true)).toBe(inInches);
});

it('knows every sentence with which sizes of a mount are refused', () => {
  const refused = new Set<string>();
  for (const installation of Object.values(DEMO))
    for (const side of ['length', 'width', 'height', 'depth', 'offset'] as const)
      for (const size of [-1, 0, 0.002, 0.01, 5]) {
        const { mount } = installation;
        if (!(side in mount)) continue;
        const value = side === 'offset' && mount.kind === 'plate' ? [size, 0] : size;
        const told = refusal(() =>
          checkInstallation({ ...installation, mount: { ...mount, [side]: value } as never })
        );
        if (!told) continue;
        refused.add(told);
        expect(inShownUnits(told, true), told).not.toMatch(/\d mm\b/);
      }
});

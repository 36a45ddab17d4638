import { expect, test } from 'vitest';
import type { Installation } from '../../../../../src/lib/acoustics/installation.js';
import { frontGround } from '../../../../../src/lib/screens/parts/curves/stand-curves.js';
import { close } from '../../../../helpers/close.js';
import { computedByRule } from '../../../../helpers/by-rule.js';
import { AIR, DEMO } from '../../../../helpers/demo-installations.js';

const file = { air: AIR };

test('the ground is what the front alone gives: all that a mount departs from it is the mount’s', () => {
  const installation = DEMO['flat plate'];
  const computed = computedByRule(installation);
  const { frequency, levelDb } = frontGround({ heard: { index: 1, installation, computed }, file })!;
  const { corner } = computed.figures;
  for (const f of [100, 400, 1600]) {
    const i = frequency.findIndex((one) => one >= f);
    // A first-order high-pass is what is left of it: 10·lg(x²/(1 + x²)), x = f/fc.
    const x = frequency[i] / corner!;
    close(computed.responseDb[i] - levelDb[i], 10 * Math.log10(x ** 2 / (1 + x ** 2)), {
      abs: 1e-6,
      because: 'docs/models/flat-plate.md'
    });
  }
});

test('a mount that cannot be built has none, whatever its speaker', () => {
  const { speaker } = DEMO['flat plate'];
  const motor = { ...speaker.motor, mms: 0 };
  const installation: Installation = { ...DEMO['flat plate'], speaker: { ...speaker, motor } };
  expect(frontGround({ heard: { index: 1, installation, computed: null }, file })).toBeUndefined();
});

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import {
  holeImpedance,
  slitImpedance,
  VISCOSITY,
  type Hole,
  type Slit
} from '../../../../src/lib/acoustics/openings/narrow-opening.js';
import { close } from '../../../helpers/close.js';

type Known<T> = T & { z: [number, number][] };
const { density, frequency, slits, holes } = JSON.parse(
  readFileSync(new URL('../../../reference/narrow-openings.json', import.meta.url), 'utf8')
) as { density: number; frequency: number[]; slits: Known<Slit>[]; holes: Known<Hole>[] };

test('slits and holes have the impedances that SciPy finds', () => {
  expect(slits.length + holes.length).toBe(10);
  frequency.forEach((f, i) => {
    for (const { z, ...slit } of slits) same(slitImpedance(slit, f, density), z[i]);
    for (const { z, ...hole } of holes) same(holeImpedance(hole, f, density), z[i]);
  });
});

test('slow flow meets friction and a little more than its own mass', () => {
  const [f, t, g, l, d] = [1, 0.001, 5e-5, 0.1, 1e-4];
  const omega = 2 * Math.PI * f;
  const because = 'low limit: 12ηt/(g³ℓ) + j(6/5)ωρt/(gℓ), 128ηt/(πd⁴) + j(4/3)ωρt/(πd²/4)';
  const slit = slitImpedance({ gap: g, length: l, depth: t }, f, 1.204);
  close(slit.re, (12 * VISCOSITY * t) / (g ** 3 * l), { rel: 1e-6, because });
  close(slit.im, (1.2 * omega * 1.204 * t) / (g * l), { rel: 1e-6, because });
  const hole = holeImpedance({ diameter: d, depth: t }, f, 1.204);
  close(hole.re, (128 * VISCOSITY * t) / (Math.PI * d ** 4), { rel: 1e-6, because });
  close(hole.im, ((4 / 3) * omega * 1.204 * t) / ((Math.PI * d * d) / 4), { rel: 1e-6, because });
});

function same(got: { re: number; im: number }, [re, im]: [number, number]): void {
  close(Math.hypot(got.re - re, got.im - im) / Math.hypot(re, im), 0, {
    abs: 1e-7,
    because: 'the same formula in SciPy'
  });
}

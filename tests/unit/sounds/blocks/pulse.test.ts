import { expect, test } from 'vitest';
import { addPulse } from '../../../../src/lib/sounds/blocks/pulse.js';
import { close } from '../../../helpers/close.js';

const TAU = 6.3;

/** Where a pulse that starts at 20.4 has come to at sample `i`: (t/τ)²·e^(2−t/τ)/4. */
function pulse(i: number): number {
  const t = (i - 20.4) / TAU;
  return t < 0 || i >= 21 + Math.ceil(16 * TAU) ? 0 : (3 * t * t * Math.exp(2 - t)) / 4;
}

test('it is the gamma pulse of its height, added to what is there', () => {
  const signal = new Float32Array(200).fill(1);
  addPulse(signal, { cyclic: false }, 20.4, TAU, 3);
  signal.forEach((x, i) => close(x, 1 + pulse(i), { abs: 1e-6, because: 'single precision' }));
});

test('what comes out at the end of a loop comes in at its beginning; a stretch is cut at both ends', () => {
  const whole = new Float32Array(300);
  addPulse(whole, { cyclic: false }, 20.4, TAU, 3);
  const late = new Float32Array(300);
  addPulse(late, { cyclic: true }, 20.4 + 250, TAU, 3);
  const early = new Float32Array(300);
  addPulse(early, { cyclic: false }, 20.4 - 40, TAU, 3);
  for (let i = 0; i < 300; i++) {
    close(late[(i + 250) % 300], whole[i], { abs: 1e-6, because: 'another rounding of where it starts' });
    close(early[i], whole[i + 40] ?? 0, { abs: 1e-6, because: 'another rounding of where it starts' });
  }
  const cut = new Float32Array(60);
  addPulse(cut, { cyclic: false }, 20.4, TAU, 3);
  expect(cut).toEqual(whole.slice(0, 60));
});

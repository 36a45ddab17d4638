import { describe, expect, it } from 'vitest';
import { boxShelf, boxShelfFrequency } from '../../../../src/lib/acoustics/rule/box-shelf.js';
import { closedBox } from '../../../../src/lib/acoustics/rule/closed-box.js';
import { close } from '../../../helpers/close.js';

describe('closedBox', () => {
  it('leaves the speaker as it is in a very large box', () => {
    const box = closedBox({ fs: 350, qts: 1.59, vas: 19e-6 }, 1e6);
    close(box.fc, 350, { rel: 1e-9, because: 'limit' });
    close(box.qtc, 1.59, { rel: 1e-9, because: 'limit' });
  });

  it('doubles resonance and Q where Vb is a third of Vas', () => {
    const box = closedBox({ fs: 350, qts: 0.3, vas: 3e-6 }, 1e-6);
    close(box.fc, 700, { rel: 1e-12, because: '√(1 + 3)' });
    close(box.qtc, 0.6, { rel: 1e-12, because: '√(1 + 3)' });
    expect(box.peakDb).toBe(0);
  });

  it('refuses a box without air', () => {
    expect(() => closedBox({ fs: 350, qts: 1, vas: 1e-6 }, 0)).toThrow(
      'the net volume of the box must be above 0 cm³, got 0'
    );
  });
});

describe('boxShelf', () => {
  it('is half-way in level, −3.01 dB, in its middle', () => {
    const middle = boxShelfFrequency(0.042, 0.029, 343.2);
    close(middle, 343.2 / (3.85 * Math.sqrt(0.042 * 0.029)), { rel: 1e-12, because: 'its formula' });
    const h = boxShelf(Float64Array.of(middle), middle);
    close(20 * Math.log10(Math.hypot(h.re[0], h.im[0])), -10 * Math.log10(2), {
      abs: 1e-12,
      because: 'symmetry'
    });
  });
});

import { it } from 'vitest';
import { boxShelf } from '../../src/lib/acoustics/rule/box-shelf.js';
import { closedBox } from '../../src/lib/acoustics/rule/closed-box.js';
import { secondOrderHighPass } from '../../src/lib/acoustics/rule/second-order.js';
import { logGrid } from '../../src/lib/numeric/log-grid.js';
import { close } from '../helpers/close.js';

// R. H. Small, "Closed-Box Loudspeaker Systems, Part I: Analysis", J. Audio Eng. Soc. 20 (1972) 798
const worked = closedBox({ fs: 350, qts: 1.59, vas: 19e-6 }, 20e-6);

it('worked example: fs 350 Hz, Qts 1.59, Vas 19 cm³, Vb 20 cm³ → fc 488.8 Hz, Qtc 2.22, peak +7.15 dB', () => {
  close(worked.alpha, 0.95, { rel: 1e-12, because: '19/20' });
  close(worked.fc, 488.8, { abs: 0.1, because: 'one decimal' });
  close(worked.qtc, 2.22, { abs: 0.005, because: 'two decimals' });
  close(worked.peakDb, 7.15, { abs: 0.01, because: 'two decimals, computed from the rounded Qtc' });
});

it('the peak in closed form is the highest point of the response (Small 1972, response of a closed box)', () => {
  const h = secondOrderHighPass(logGrid(50, 16000, 2000), worked.fc, worked.qtc);
  let most = 0;
  for (let i = 0; i < h.re.length; i++) most = Math.max(most, Math.hypot(h.re[i], h.im[i]));
  close(20 * Math.log10(most), worked.peakDb, { abs: 1e-4, because: 'dB; a grid of 2000 points an octave' });
});

it('Qtc = 1/√2: no peak and −3.01 dB at fc (Small 1972: maximally flat, f3 = fc)', () => {
  const flat = closedBox({ fs: 200, qts: 0.5, vas: 1e-5 }, 1e-5);
  close(flat.qtc, Math.SQRT1_2, { rel: 1e-12, because: '0.5·√2' });
  close(flat.peakDb, 0, { abs: 1e-9, because: 'maximally flat' });
  const h = secondOrderHighPass(Float64Array.of(flat.fc), flat.fc, flat.qtc);
  close(20 * Math.log10(Math.hypot(h.re[0], h.im[0])), -10 * Math.log10(2), {
    abs: 1e-9,
    because: 'rounding'
  });
});

it('all round at low frequency is −6.02 dB: half the pressure of the endless plate (image source)', () => {
  const h = boxShelf(Float64Array.of(0, 1e-3, 1e9), 2500);
  close(20 * Math.log10(h.re[0]), -6.02, { abs: 0.005, because: 'two decimals' });
  close(20 * Math.log10(Math.hypot(h.re[1], h.im[1])), -6.02, { abs: 0.005, because: 'two decimals' });
  close(20 * Math.log10(Math.hypot(h.re[2], h.im[2])), 0, { abs: 1e-6, because: 'front only' });
});

import { it } from 'vitest';
import { motorFigures } from '../../../../src/lib/acoustics/speaker/motor-figures.js';
import { SPEAKERS } from '../../../../src/lib/acoustics/speaker/speakers.js';
import { close } from '../../../helpers/close.js';
import { AIR } from '../../../helpers/demo-installations.js';

it('the oval by hand: Mms 0.55 g, Cms 0.38 mm/N, Bl 1.6 N/A, Re 7.2 Ω, Qms 3, Sd 6 cm²', () => {
  const { fs, qes, qts, vas } = motorFigures(SPEAKERS.oval.motor, 6e-4, AIR);
  close(fs, 348.13, { abs: 0.005, because: '1/(2π·√(2.09e-7))' });
  close(qes, 3.3836, { abs: 5e-5, because: '√(Mms/Cms)·Re/Bl² = 1.20306 × 2.8125' });
  close(qts, 1.5901, { abs: 5e-5, because: '1/(1/3 + 1/3.3836)' });
  close(vas * 1e6, 19.4, { abs: 0.005, because: '1.204 × 343.2² × 3.6e-7 × 3.8e-4' });
});

it('twice the mass and twice the compliance halve the resonance', () => {
  const { motor } = SPEAKERS.oval;
  const heavy = motorFigures({ ...motor, mms: 2 * motor.mms, cms: 2 * motor.cms }, 6e-4, AIR);
  const plain = motorFigures(motor, 6e-4, AIR);
  close(heavy.fs, plain.fs / 2, { rel: 1e-12, because: 'fs goes with 1/√(Mms·Cms)' });
  close(heavy.qes, plain.qes, { rel: 1e-12, because: 'Qes goes with √(Mms/Cms)' });
});

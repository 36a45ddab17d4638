import { describe, it } from 'vitest';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { closedBox } from '../../src/lib/acoustics/rule/closed-box.js';
import { motorFigures } from '../../src/lib/acoustics/speaker/motor-figures.js';
import { outlineArea } from '../../src/lib/acoustics/outline.js';
import { solveMount, waveResponse, waveSolution } from '../../src/lib/waves/wave-solution.js';
import { close } from '../helpers/close.js';
import { AIR, IN_FRONT } from '../helpers/demo-installations.js';
import { db } from '../unit/waves/wave-cases.js';

// R. H. Small, "Closed-Box Loudspeaker Systems, Part I: Analysis", J. Audio Eng. Soc. 20 (1972) 798
describe('a closed box', () => {
  const sides = { length: 0.042, width: 0.029, depth: 0.017 };
  const inside = sides.length * sides.width * sides.depth;
  const box = (bodyVolume: number) =>
    ({ speaker: { ...SPEAKERS.oval, bodyVolume }, mount: { kind: 'box', ...sides }, turn: 0 }) as const;
  const empty = solveMount(box(0), AIR, { loss: 0 });

  it('is heard 6.02 dB softer than in an endless plate all round, at 50 and 100 Hz', () => {
    for (const plane of ['length', 'width'] as const)
      for (const angleDeg of [0, 45, 90, 135, 180]) {
        const h = waveResponse(empty, { angleDeg, plane }, Float64Array.of(50, 100), 'ideal');
        for (const i of [0, 1])
          close(db({ re: h.re[i], im: h.im[i] }), -6.0206, { abs: 0.05, because: 'bar; ka is below 0.05' });
      }
  });

  it('is so with the usual loss too, and its load is that spring in modulus and phase', () => {
    const { re, im, load } = waveSolution(box(0), AIR, IN_FRONT, Float64Array.of(50, 100), 'ideal');
    for (const i of [0, 1])
      close(db({ re: re[i], im: im[i] }), -6.0206, { abs: 0.05, because: 'bar; a share of 2η is lost' });
    const spring = (1.204 * 343.2 ** 2) / (2 * Math.PI * 100 * inside);
    close(Math.hypot(load.re[1], load.im[1] + spring) / spring, 0, { abs: 0.01, because: 'bar' });
  });

  it('loads the cone at 100 Hz like the spring of its inside with the mass of air outside', () => {
    const f = 100;
    const w = 2 * Math.PI * f;
    const { load } = waveResponse(empty, IN_FRONT, Float64Array.of(f), 'ideal');
    const spring = (1.204 * 343.2 ** 2) / (w * inside);
    // one face of a piston of the cone's area: between free, (4/3)ρa³/S², and in a plate, (8/3)ρa³/S²
    const sd = outlineArea(SPEAKERS.oval.cone);
    const mass = (2 * w * 1.204 * Math.sqrt(sd / Math.PI) ** 3) / sd ** 2;
    close(load.im[0], mass - spring, { rel: 0.01, because: 'bar; the mass is 0.1 % of it' });
  });

  it('with the body of a speaker in it, is as stiff as what is left', () => {
    const body = 5e-6;
    const mount = { ...empty, installation: box(body) };
    const { load } = waveResponse(mount, IN_FRONT, Float64Array.of(100), 'ideal');
    const spring = (1.204 * 343.2 ** 2) / (2 * Math.PI * 100 * (inside - body));
    close(load.im[0], -spring, { rel: 0.01, because: 'bar; the mass outside is left out' });
  });

  it('shifts the resonance of the speaker as the lumped box does', () => {
    const { motor, cone } = SPEAKERS.oval;
    const lumped = closedBox(motorFigures(motor, outlineArea(cone), AIR), inside);
    const frequency = Float64Array.from({ length: 400 }, (_, i) => 300 + i);
    const [full, ideal] = (['full', 'ideal'] as const).map((speaker) =>
      waveResponse(empty, IN_FRONT, frequency, speaker)
    );
    // at resonance a second-order high-pass stands at +j·Q: a quarter turn ahead
    const ahead = (i: number) => full.re[i] * ideal.re[i] + full.im[i] * ideal.im[i];
    const turn = frequency.findIndex((_, i) => ahead(i) > 0);
    close(frequency[turn], lumped.fc, {
      rel: 0.02,
      because: 'a box has less air to move than free air, by 1 % of Mms'
    });
    const q = db({ re: full.re[turn], im: full.im[turn] }) - db({ re: ideal.re[turn], im: ideal.im[turn] });
    close(q, 20 * Math.log10(lumped.qtc), { abs: 0.2, because: 'the same; and the step of 1 Hz' });
  });
});

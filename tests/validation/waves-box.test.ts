import { describe, expect, it } from 'vitest';
import { SPEAKERS } from '../../src/lib/acoustics/speaker/speakers.js';
import { closedBox } from '../../src/lib/acoustics/rule/closed-box.js';
import { motorFigures } from '../../src/lib/acoustics/speaker/motor-figures.js';
import { outlineArea } from '../../src/lib/acoustics/outline.js';
import { solveMount, waveResponse, waveSolution } from '../../src/lib/waves/wave-solution.js';
import { close } from '../helpers/close.js';
import { AIR, IN_FRONT } from '../helpers/demo-installations.js';
import { db } from '../unit/waves/wave-cases.js';

/** J₁ by its integral, (1/π)·∫ cos(t − x·sin t) dt over 0 … π: the midpoint rule is exact to rounding for x below 250. */
function besselJ1(x: number): number {
  const points = 300;
  let sum = 0;
  for (let i = 0; i < points; i++) {
    const t = (Math.PI * (i + 0.5)) / points;
    sum += Math.cos(t - x * Math.sin(t));
  }
  return sum / points;
}

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

  it('loads the cone at 100 Hz like the spring of its inside', () => {
    const { load } = waveResponse(empty, IN_FRONT, Float64Array.of(100), 'ideal');
    const spring = (1.204 * 343.2 ** 2) / (2 * Math.PI * 100 * inside);
    close(load.im[0], -spring, {
      rel: 0.01,
      because: 'bar; the air outside and that which sways inside are 0.2 % of it'
    });
  });

  it('loads the cone at 700 Hz with the mass of air outside as well, which is a twentieth of the load there', () => {
    const w = 2 * Math.PI * 700;
    const { load } = waveResponse(empty, IN_FRONT, Float64Array.of(700), 'ideal');
    expect(mass() * w).toBeGreaterThan(0.05 * Math.abs(load.im[0]));
    const outside = (load.im[0] - insideLoad(w)) / w;
    close(outside, mass(), {
      rel: 0.15,
      because: 'the front of a box is between the two; 1 % of the whole load'
    });
    close(load.im[0], insideLoad(w) + w * mass(), { rel: 0.01, because: 'bar' });
  });

  /** Of the air before one face of a piston of the cone's area: between free, (4/3)ρa³/S², and in a plate, (8/3)ρa³/S². */
  function mass(): number {
    const sd = outlineArea(SPEAKERS.oval.cone);
    return (2 * 1.204 * Math.sqrt(sd / Math.PI) ** 3) / sd ** 2;
  }

  /**
   * Load of the inside on the elliptic cone, over j, by the modes of a rectangular room with rigid walls that one wall
   * drives (P. M. Morse and K. U. Ingard, Theoretical Acoustics, 1968, ch. 9, from memory): of each, the mean of its shape
   * over the cone squared, times ρω·coth(κ·depth)/κ.
   */
  function insideLoad(w: number, { length, width, depth } = sides, [x, y] = [0, 0]): number {
    const { cone } = SPEAKERS.oval;
    if (cone.shape !== 'ellipse') throw new Error('the cone is an ellipse');
    const k = w / 343.2;
    let sum = -1 / (k * Math.tan(k * depth));
    for (let m = 0; m < 120; m++)
      for (let n = 0; n < 120; n++) {
        if (m === 0 && n === 0) continue;
        const [kx, ky] = [(m * Math.PI) / length, (n * Math.PI) / width];
        const s = Math.hypot((kx * cone.length) / 2, (ky * cone.width) / 2);
        // the shape in the middle of the cone: 0 of every odd one where that is the middle of the front
        const there = Math.cos(kx * (x + length / 2)) * Math.cos(ky * (y + width / 2));
        const mean = ((2 * besselJ1(s)) / s) * there;
        const kappa = Math.sqrt(kx * kx + ky * ky - k * k);
        sum += ((m === 0 || n === 0 ? 2 : 4) * mean * mean) / (kappa * Math.tanh(kappa * depth));
      }
    return (1.204 * w * sum) / (length * width);
  }

  it('with its cone off the middle is loaded by the odd standing waves of the inside as well', () => {
    const wide = { length: 0.06, width: 0.042, depth: 0.017 };
    const offset = [0.012, -0.008] as const;
    const loadAt = (at: readonly number[]) => {
      const mount = { kind: 'box', ...wide, offset: [at[0], at[1]] as [number, number] } as const;
      const solved = solveMount({ ...box(0), mount }, AIR, { accuracy: 'draft', loss: 0 });
      return waveResponse(solved, IN_FRONT, Float64Array.of(700, 2000), 'ideal').load.im;
    };
    const [off, middle] = [loadAt(offset), loadAt([0, 0])];
    [700, 2000].forEach((f, i) => {
      const w = 2 * Math.PI * f;
      const more = insideLoad(w, wide, [...offset]) - insideLoad(w, wide);
      expect(Math.abs(more)).toBeGreaterThan(0.02 * Math.abs(insideLoad(w, wide)));
      close(off[i] - middle[i], more, {
        abs: 0.1 * w * mass(),
        because: 'nearer to an edge the air before the cone weighs a little less than before the middle'
      });
    });
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

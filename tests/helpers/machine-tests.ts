import { expect, test } from 'vitest';
import { checkKnobs } from '../../src/lib/sounds/knob.js';
import type { Moving } from '../../src/lib/sounds/motion/ride.js';
import { renderLoop } from '../../src/lib/sounds/motion/ride.js';
import type { MovingSource } from '../../src/lib/sounds/sound-kind.js';
import { close } from './close.js';
import { rms } from './levels.js';
import { seam } from './seam.js';

const RATE = 16000;

/** What every machine must do, whichever it is. */
export function machineTests<S extends Moving & { name: string }>(
  kind: MovingSource<S>,
  presets: readonly S[],
  usual: S,
  { rateDb, because }: { rateDb: number; because: string }
): void {
  const render = (change: Partial<Moving>, rate = RATE) => renderLoop(kind, { ...usual, ...change }, rate);

  test('every preset is within its knobs and has a name of its own', () => {
    for (const preset of presets) checkKnobs(kind.knobs, preset);
    expect(new Set(presets.map(({ name }) => name)).size).toBe(presets.length);
  });

  test('loops have no seam', () => {
    for (const preset of presets)
      for (const notch of [0, 2, 4, 8]) {
        const { step, slope, treble } = seam(renderLoop(kind, { ...preset, notch }, 32000), 32000);
        expect(Math.max(step, slope, treble)).toBeLessThan(1.2);
      }
  });

  test('the same seed gives the same samples, another seed another machine', () => {
    const once = render({ notch: 3 });
    expect(render({ notch: 3 })).toEqual(once);
    expect(render({ notch: 3, seed: 9 })).not.toEqual(once);
  });

  test('it renders at sample rates from 8 to 192 kHz, as loud at each', () => {
    const reference = rms(render({ notch: 4 }, 48000));
    for (const rate of [8000, 44100, 192000])
      close(20 * Math.log10(rms(render({ notch: 4 }, rate)) / reference), 0, { abs: rateDb, because });
  });

  test('less than half a notch stands', () => {
    expect(kind.target({ ...usual, notch: 0.3 })).toEqual({ speed: 0, effort: 0 });
    close(kind.target({ ...usual, notch: 3.5 }).speed, (3.5 / 8) * kind.dynamics(usual).range, {
      rel: 1e-12,
      because: 'rounding'
    });
  });
}

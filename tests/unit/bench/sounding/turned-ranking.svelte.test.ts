import { flushSync } from 'svelte';
import { afterEach, expect, test, vi } from 'vitest';
import { Bench } from '../../../../src/lib/bench/bench.svelte.js';
import { Elsewhere } from '../../../../src/lib/bench/elsewhere.svelte.js';
import { Levels } from '../../../../src/lib/bench/sounding/levels.svelte.js';
import { type Loop, SoundCache } from '../../../../src/lib/bench/sounding/sound-cache.js';
import { TurnedRanking } from '../../../../src/lib/bench/sounding/turned-ranking.svelte.js';
import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import type { Known, Question } from '../../../../src/lib/evaluation/wave-jobs.js';
import { type HeardWaves, hearWaves } from '../../../../src/lib/waves/curve/heard-waves.js';
import { solveMount, waveSolution } from '../../../../src/lib/waves/wave-solution.js';
import { installationOf } from '../../../../src/lib/file/installation-of.js';
import { PLACES } from '../../../../src/lib/acoustics/listener.js';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import { close } from '../../../helpers/close.js';
import { labAtHand } from '../../../helpers/lab-at-hand.js';

const RATE = 48000;
const BUSY_MS = 60_000;
let end = (): void => undefined;
afterEach(() => end());

/** The plate and the box of the demo. */
const demo = demoBench();
const FILE = {
  ...demo,
  setups: [demo.setups[1], demo.setups[3]],
  sound: usualSound('diesel'),
  view: { ...demo.view, heard: 0 }
};

/** A draft of each mount in each place, solved once; told as if it were all that will be known. */
const solved = new Map<string, HeardWaves>();
function known({ installation, air, listener }: Question): Known {
  const key = JSON.stringify([installation.mount, installation.board, listener]);
  const heard = solved.get(key) ?? hearWaves(solveMount(installation, air, { accuracy: 'draft' }), listener);
  solved.set(key, heard);
  return { accuracy: 'full', heard };
}

async function atHand() {
  const waves = { best: known, refusal: () => null };
  const bench = new Bench(FILE, waves);
  const { lab } = labAtHand();
  const fail = (problem: unknown): void => expect.unreachable(String(problem));
  const levels = new Levels(lab, fail);
  const elsewhere = new Elsewhere(bench, waves);
  const ranking = new TurnedRanking({ bench, elsewhere, levels, lab, tell: fail });
  const loop = (await new SoundCache(lab).loop(FILE.sound, null, RATE))!;
  end = $effect.root(() => {
    $effect(() => levels.measure({ loop, stands: bench.stands }));
    ranking.connect(() => loop);
  });
  const told = () =>
    vi.waitFor(() => {
      flushSync();
      expect(ranking.pair).not.toBeUndefined();
    }, BUSY_MS);
  flushSync();
  return { bench, ranking, loop, told };
}

/** |K|² of ITU-R BS.1770-5 at 48 kHz: its two filters with the coefficients that are printed there. */
function kWeight(frequency: number): number {
  const z = (power: number): [number, number] => {
    const angle = (-2 * Math.PI * frequency * power) / RATE;
    return [Math.cos(angle), Math.sin(angle)];
  };
  const size = (c: number[]): number =>
    c.reduce((re, each, n) => re + each * z(n)[0], 0) ** 2 +
    c.reduce((im, each, n) => im + each * z(n)[1], 0) ** 2;
  const shelf =
    size([1.53512485958697, -2.69169618940638, 1.19839281085285]) /
    size([1, -1.69065929318241, 0.73248077421585]);
  const highPass = size([1, -2, 1]) / size([1, -1.99004745483398, 0.99007225036621]);
  return shelf * highPass;
}

/** Bins of the sound's spectrum that are taken together. */
const TOGETHER = 8;

/** How much louder the first mount is than the second in a place, from the spectrum of the sound and the waves alone. */
async function leadApart({ figures }: Loop, place: 'hand' | 'layout'): Promise<number> {
  const { power, binWidth } = await figures();
  const listener = PLACES[place];
  const groups = Math.floor((0.45 * RATE) / binWidth / TOGETHER);
  const frequency = Float64Array.from({ length: groups }, (_, g) => (g + 0.5) * TOGETHER * binWidth);
  const weight = Array.from(frequency, (f, g) =>
    power.slice(g * TOGETHER, (g + 1) * TOGETHER).reduce((sum, each) => sum + each * kWeight(f), 0)
  );
  const [plate, box] = FILE.setups.map((setup) => {
    const installation = installationOf({ ...FILE, listener }, setup);
    const { re, im } = waveSolution(installation, FILE.air, listener, frequency, 'full', {
      accuracy: 'draft'
    });
    return weight.reduce((sum, each, g) => sum + each * (re[g] ** 2 + im[g] ** 2), 0);
  });
  return 10 * Math.log10(plate / box);
}

test(
  'the two leads are those of the sound’s spectrum behind the two mounts in both places',
  { timeout: BUSY_MS },
  async () => {
    const { bench, ranking, loop, told } = await atHand();
    expect(ranking.pair).toBeUndefined();
    await told();
    const because = 'eight bins taken together, and blocks of 0.4 s that are left out where they are soft';
    const [inHand, onLayout] = [await leadApart(loop, 'hand'), await leadApart(loop, 'layout')];
    expect(inHand).toBeGreaterThan(0.5);
    expect(onLayout).toBeLessThan(-0.5);
    const check = (): void => {
      expect([ranking.pair!.hand.index, ranking.pair!.layout.index]).toEqual([0, 1]);
      close(ranking.pair!.hand.byDb, inHand, { abs: 0.3, because });
      close(ranking.pair!.layout.byDb, -onLayout, { abs: 0.3, because });
    };
    check();
    // Heard from the layout it is the same.
    bench.listenOn('layout');
    await told();
    check();
  }
);

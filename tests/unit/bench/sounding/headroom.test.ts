import type { Installation } from '../../../../src/lib/acoustics/installation.js';
import { type Answer, waveAnswer } from '../../../../src/lib/evaluation/answer.js';
import { hearWaves } from '../../../../src/lib/waves/curve/heard-waves.js';
import { solveMount } from '../../../../src/lib/waves/wave-solution.js';
import { beforeAll, expect, test } from 'vitest';
import { knobsOf } from '../../../../src/lib/acoustics/mounts/size-knobs.js';
import { Headroom, SAFE_PEAK, USUAL_GAIN } from '../../../../src/lib/bench/sounding/headroom.js';
import type { KeptSound } from '../../../../src/lib/bench/sounding/sound-cache.js';
import { filterFor } from '../../../../src/lib/evaluation/stand.js';
import { type MovingSound, movingKind } from '../../../../src/lib/sounds/kinds.js';
import { settledAt } from '../../../../src/lib/sounds/motion/motion.js';
import { PLACES } from '../../../../src/lib/acoustics/listener.js';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import { byRule } from '../../../helpers/by-rule.js';
import { AIR, DEMO, IN_FRONT } from '../../../helpers/demo-installations.js';
import { close } from '../../../helpers/close.js';
import { shaken } from '../../../helpers/random-installations.js';
import { labAtHand } from '../../../helpers/lab-at-hand.js';

const RATE = 48000;
/** Rides of many seconds behind many filters take their time on two busy cores. */
const BUSY_MS = 180_000;
const installations = Object.values(DEMO);
const reach = { installations, answer: byRule, where: 'the rule of thumb', sampleRate: RATE };
const { lab, asked } = labAtHand();

const kept: Record<string, KeptSound> = {};
const made: Record<string, Float32Array> = {};

async function keep(key: string, samples: Float32Array): Promise<KeptSound> {
  await lab.ask({ kind: 'keep', key, samples, sampleRate: RATE });
  return { key, figures: () => lab.ask({ kind: 'figures', key }) };
}

beforeAll(async () => {
  const machine = { ...(usualSound('diesel') as MovingSound), notch: 8 };
  const engine = await lab.ask({ kind: 'sound', sound: machine, sampleRate: RATE });
  const noise = await lab.ask({ kind: 'sound', sound: usualSound('pinkNoise'), sampleRate: RATE });
  const puff = await lab.ask({ kind: 'sound', sound: usualSound('puff'), sampleRate: RATE });
  const { samples: horn } = await lab.ask({ kind: 'blast', signal: 'five-note horn', sampleRate: RATE });
  for (const [key, samples] of [
    ['engine', engine],
    ['noise', noise],
    ['horn', horn],
    ['puff', puff]
  ] as const) {
    made[key] = samples;
    kept[key] = await keep(key, samples);
  }
}, BUSY_MS);

/** The filters of many sizes that the knobs can reach. */
function filters(answer = byRule, many = 25, of = installations): Float32Array[] {
  const sizes = of.flatMap((installation) =>
    knobsOf(installation).length
      ? Array.from({ length: many }, (_, seed) => shaken(installation, seed + 1))
      : [installation]
  );
  return sizes.map((size) => filterFor(answer(size), RATE));
}

const byTheRule = filters();

/** Peak of a kept sound behind the loudest of these. */
async function loudest(key: string, impulseResponses = byTheRule): Promise<number> {
  return Math.max(...(await lab.ask({ kind: 'peaksThrough', key, impulseResponses })));
}

/** The second of a sound in which it swings widest, with what goes before. */
function widestSecond(samples: Float32Array): Float32Array {
  const at = samples.reduce((widest, x, i) => (Math.abs(x) > Math.abs(samples[widest]) ? i : widest), 0);
  return samples.slice(Math.max(0, at - RATE / 2), at + RATE / 2);
}

for (const key of ['engine', 'noise', 'horn', 'puff'])
  test(`no size the knobs can reach clips the ${key}`, { timeout: BUSY_MS }, async () => {
    const gain = await new Headroom(lab).gain(reach, [[kept[key]]]);
    const peak = gain * (await loudest(key));
    expect(peak).toBeLessThan(1);
    // And nothing is thrown away: it is turned up as usual, or the loudest probe comes to just what is safe.
    if (gain < USUAL_GAIN) expect(peak).toBeGreaterThan(SAFE_PEAK * 0.7);
    expect(gain).toBeLessThanOrEqual(USUAL_GAIN);
  });

test('by the wave solution, too, with its humps and rings', { timeout: BUSY_MS }, async () => {
  const byWaves = (installation: Installation): Answer => {
    const heard = hearWaves(solveMount(installation, AIR, { accuracy: 'draft' }), IN_FRONT);
    return waveAnswer(heard, 'draft', installation, AIR);
  };
  const gain = await new Headroom(lab).gain({ ...reach, answer: byWaves, where: 'waves' }, [[kept.puff]]);
  const peak = gain * (await loudest('puff', filters(byWaves, 4)));
  expect(peak).toBeLessThan(1);
  expect(peak).toBeGreaterThan(SAFE_PEAK * 0.7);
  expect(gain).toBeLessThanOrEqual(USUAL_GAIN);
});

test(
  'over a board, too, at any height, one mount with its cone up and one with it down',
  { timeout: BUSY_MS },
  async () => {
    const byWaves = (installation: Installation): Answer => {
      const heard = hearWaves(solveMount(installation, AIR, { accuracy: 'draft' }), PLACES.layout);
      return waveAnswer(heard, 'draft', installation, AIR);
    };
    const over = Object.values(DEMO).map((one, i): Installation => {
      const facing = i % 2 ? 'up' : 'down';
      return { ...one, board: { facing, above: 0.02 } };
    });
    const board = { ...reach, installations: over, answer: byWaves, where: 'layout' };
    const gain = await new Headroom(lab).gain(board, [[kept.puff]]);
    const peak = gain * (await loudest('puff', filters(byWaves, 4, over)));
    expect(peak).toBeLessThan(1);
    expect(peak).toBeGreaterThan(SAFE_PEAK * 0.5);
  }
);

test('short bursts need a lower gain than the usual one, a machine with its horn does not', async () => {
  const headroom = new Headroom(lab);
  expect(await headroom.gain(reach, [[kept.engine], [kept.horn]])).toBe(USUAL_GAIN);
  expect(await headroom.gain(reach, [[kept.puff]])).toBeLessThan(USUAL_GAIN);
});

test('sounds that sound together share the room, alternatives do not', { timeout: BUSY_MS }, async () => {
  const headroom = new Headroom(lab);
  const puff = await headroom.gain(reach, [[kept.puff]]);
  expect(await headroom.gain(reach, [[kept.engine, kept.puff]])).toBe(puff);
  close(1 / (await headroom.gain(reach, [[kept.puff], [kept.puff]])), 2 / puff, {
    rel: 1e-9,
    because: 'peaks are added'
  });
});

test(
  'a machine on its way up, labouring, with its horn blown, does not clip',
  { timeout: BUSY_MS },
  async () => {
    const gain = await new Headroom(lab).gain(reach, [[kept.engine], [kept.horn]]);
    const horn = await loudest('horn');
    for (const kind of ['diesel', 'steam', 'electric'] as const) {
      const usual = usualSound(kind) as MovingSound;
      // In a hurry a diesel labours most.
      const machine = { ...usual, notch: 8, ...(usual.kind === 'diesel' ? { loading: 0 } : {}) };
      const from = settledAt(movingKind(machine).target({ ...machine, notch: 0 }));
      const { samples } = await lab.ask({ kind: 'ride', sound: machine, from, sampleRate: RATE });
      // Behind every size the second in which it swings widest, and the whole of it behind those that are the loudest then.
      const second = `widest second of a ${kind}`;
      await lab.ask({ kind: 'keep', key: second, samples: widestSecond(samples), sampleRate: RATE });
      const peaks = await lab.ask({ kind: 'peaksThrough', key: second, impulseResponses: byTheRule });
      const loud = byTheRule
        .map((filter, i) => ({ filter, peak: peaks[i] }))
        .toSorted((a, b) => b.peak - a.peak)
        .slice(0, 12)
        .map(({ filter }) => filter);
      await lab.ask({ kind: 'keep', key: kind, samples, sampleRate: RATE });
      expect(gain * ((await loudest(kind, loud)) + horn), kind).toBeLessThan(1);
    }
  }
);

test('what is known is not asked again', { timeout: BUSY_MS }, async () => {
  const headroom = new Headroom(lab);
  await headroom.gain(reach, [[kept.noise]]);
  const before = asked();
  await headroom.gain(reach, [[kept.noise]]);
  expect(asked()).toBe(before);
});

test('silence gets no gain instead of an endless one', async () => {
  const samples = new Float32Array(24000);
  const silence = await keep('silence', samples);
  expect(await new Headroom(lab).gain(reach, [[silence]])).toBe(0);
});

test(
  'what surely has room for the usual gain has it, and the worker is not asked',
  { timeout: BUSY_MS },
  async () => {
    const headroom = new Headroom(lab);
    const [, opening] = await Promise.all([
      headroom.gain(reach, [[kept.noise]]),
      lab.ask({ kind: 'sound', sound: usualSound('diesel'), sampleRate: RATE })
    ]);
    const before = asked();
    // The sound that the page opens with, as it stands on the demo's mounts.
    expect(await headroom.surelyHasRoom(reach, opening)).toBe(true);
    // With what plays beside it, or for short bursts, that is not sure.
    expect(await headroom.surelyHasRoom(reach, opening, 1)).toBe(false);
    expect(await headroom.surelyHasRoom(reach, made.puff)).toBe(false);
    expect(asked()).toBe(before);
    expect(await headroom.gain(reach, [[await keep('opening', opening)]])).toBe(USUAL_GAIN);
  }
);

test('no filter lets more through than what is taken as sure', async () => {
  // Samples of either sign that meet all of a filter at once: the bound itself.
  const filter = filterFor(byRule(DEMO['closed box']), RATE);
  const sum = filter.reduce((all, sample) => all + Math.abs(sample), 0);
  const worst = filter.map((sample) => Math.sign(sample)).reverse();
  const of = (size: number) => worst.map((sign) => size * sign);
  const one = {
    ...reach,
    installations: [{ ...DEMO['free air'] }],
    answer: () => byRule(DEMO['closed box'])
  };
  await keep('worst', of(1));
  const [peak] = await lab.ask({ kind: 'peaksThrough', key: 'worst', impulseResponses: [filter] });
  close(peak, sum, { rel: 1e-3, because: 'single precision, and zeros that have no sign' });
  const most = SAFE_PEAK / USUAL_GAIN / sum;
  const headroom = new Headroom(lab);
  expect(await headroom.surelyHasRoom(one, of(0.999 * most))).toBe(true);
  expect(await headroom.surelyHasRoom(one, of(1.001 * most))).toBe(false);
});

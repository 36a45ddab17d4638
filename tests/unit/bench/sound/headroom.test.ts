import { beforeAll, expect, test } from 'vitest';
import { knobsOf } from '../../../../src/lib/bench/knobs.js';
import { Headroom, SAFE_PEAK } from '../../../../src/lib/bench/sound/headroom.js';
import { filterFor } from '../../../../src/lib/bench/stand.js';
import { PRIME_MOVER } from '../../../../src/lib/sounds/engine.js';
import { AIR, DEMO, IN_FRONT } from '../../../helpers/demo-installations.js';
import { shaken } from '../../../helpers/random-installations.js';
import { labAtHand } from '../../../helpers/lab-at-hand.js';

const RATE = 48000;
const installations = Object.values(DEMO);
const reach = { installations, air: AIR, listener: IN_FRONT, sampleRate: RATE };
const { lab, asked } = labAtHand();

beforeAll(async () => {
  const engine = await lab.ask({ kind: 'engine', engine: PRIME_MOVER, notch: 8, sampleRate: RATE });
  const noise = await lab.ask({ kind: 'pinkNoise', seconds: 3, sampleRate: RATE });
  const horn = await lab.ask({ kind: 'horn', sampleRate: RATE });
  for (const [key, samples] of [
    ['engine', engine],
    ['noise', noise],
    ['horn', horn]
  ] as const)
    await lab.ask({ kind: 'keep', key, samples, sampleRate: RATE });
});

/** Peak of a kept sound behind the loudest of many sizes that the knobs can reach. */
async function loudest(key: string): Promise<number> {
  const sizes = installations.flatMap((installation) =>
    knobsOf(installation).length
      ? Array.from({ length: 25 }, (_, seed) => shaken(installation, seed + 1))
      : [installation]
  );
  const heard = await lab.ask({
    kind: 'heardThrough',
    key,
    impulseResponses: sizes.map((size) => filterFor(size, AIR, IN_FRONT, RATE).impulseResponse)
  });
  return Math.max(...heard.map(({ peak }) => peak));
}

for (const key of ['engine', 'noise', 'horn'])
  test(`no size the knobs can reach clips the ${key}`, { timeout: 60_000 }, async () => {
    const gain = await new Headroom(lab).gain(reach, [[key]]);
    const peak = gain * (await loudest(key));
    expect(peak).toBeLessThan(1);
    // And it is not thrown away: the loudest probe comes to just this.
    expect(peak).toBeGreaterThan(SAFE_PEAK * 0.7);
  });

test('sounds that sound together share the room, alternatives do not', { timeout: 60_000 }, async () => {
  const headroom = new Headroom(lab);
  const [engine, horn] = [await headroom.gain(reach, [['engine']]), await headroom.gain(reach, [['horn']])];
  expect(await headroom.gain(reach, [['engine', 'horn']])).toBe(Math.min(engine, horn));
  expect(1 / (await headroom.gain(reach, [['engine'], ['horn']]))).toBeCloseTo(1 / engine + 1 / horn, 6);
});

test('what is known is not asked again', async () => {
  const headroom = new Headroom(lab);
  await headroom.gain(reach, [['noise']]);
  const before = asked();
  await headroom.gain(reach, [['noise']]);
  expect(asked()).toBe(before);
});

test('silence gets no gain instead of an endless one', async () => {
  await lab.ask({ kind: 'keep', key: 'silence', samples: new Float32Array(24000), sampleRate: RATE });
  expect(await new Headroom(lab).gain(reach, [['silence']])).toBe(0);
});

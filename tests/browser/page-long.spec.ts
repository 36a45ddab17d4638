import { random } from '../../src/lib/sounds/blocks/random.js';
import { expect, test } from '../helpers/page-fixture.js';

test.use({ contextOptions: { reducedMotion: 'no-preference' } });

/** A third of a minute's worth in the suite; BACKWAVE_LONG_MINUTES=10 for the whole evening's. */
const MINUTES = Number(process.env.BACKWAVE_LONG_MINUTES ?? 1 / 3);

/** So many keys a hand presses in a minute; here they come faster, and the machine's pace does not change their number. */
const KEYS_A_MINUTE = 600;

/** A hand on the keyboard: everything but help and the projector, which stop the rest. */
const KEYS = [
  ...['Digit1', 'Digit2', 'Digit3', 'Digit4', 'PageDown', 'PageUp', 'KeyL', 'Period', 'KeyG', 'Control+z'],
  ...['ArrowUp', 'ArrowRight', 'ArrowLeft', 'Shift+ArrowUp', 'Shift+ArrowDown']
];

/** Counts the nodes of the page's audio graph: made, never unmade, they would pile up. */
function countAudioNodes(): void {
  const lab = window as unknown as { audioNodes: number; audioContexts: AudioContext[] };
  lab.audioNodes = 0;
  lab.audioContexts = [];
  const OriginalContext = window.AudioContext;
  window.AudioContext = class extends OriginalContext {
    constructor(options?: AudioContextOptions) {
      super(options);
      lab.audioContexts.push(this);
    }
  };
  const prototype = BaseAudioContext.prototype as unknown as Record<string, (...a: unknown[]) => unknown>;
  for (const name of Object.getOwnPropertyNames(prototype)) {
    if (!/^create(?!Buffer$|Periodic)/.test(name)) continue;
    const original = prototype[name];
    prototype[name] = function (this: unknown, ...values: unknown[]) {
      lab.audioNodes++;
      return original.apply(this, values);
    };
  }
}

test('switching under random keys: no growth of memory or nodes, the audio never stops', async ({
  page,
  bench
}) => {
  test.setTimeout(MINUTES * 120_000 + 90_000);
  await page.addInitScript(countAudioNodes);
  await bench.open();
  await bench.play();
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const figures = async () => {
    await session.send('HeapProfiler.collectGarbage');
    const { metrics } = await session.send('Performance.getMetrics');
    const one = (name: string): number => metrics.find((metric) => metric.name === name)!.value;
    const audio = await page.evaluate(() => {
      const lab = window as unknown as { audioNodes: number; audioContexts: AudioContext[] };
      return { made: lab.audioNodes, time: lab.audioContexts.at(-1)!.currentTime };
    });
    return { heap: one('JSHeapUsedSize'), nodes: one('Nodes'), ...audio };
  };

  const { uniform } = random(11);
  const mash = async (keys: number): Promise<void> => {
    for (let pressed = 0; pressed < keys; pressed++) {
      await page.keyboard.press(KEYS[Math.floor(uniform() * KEYS.length)]);
      await page.waitForTimeout(5 + uniform() * 20);
    }
  };

  // What is loaded, compiled and cached once is there before the counting begins.
  await mash(80);
  const before = await figures();
  const began = Date.now();
  const pressed = Math.round(MINUTES * KEYS_A_MINUTE);
  await mash(pressed);
  const after = await figures();
  const passed = (Date.now() - began) / 1000;

  expect(after.time - before.time, 'the audio clock ran all the time').toBeGreaterThan(passed * 0.97 - 0.5);
  expect(await bench.playButton.getAttribute('aria-label')).toBe('Stop');
  // Two hundred steps of history and a few dozen filters come and go within this; an evening fills the history.
  const most = MINUTES < 1 ? { megabytes: 5, nodes: 100 } : { megabytes: 12, nodes: 400 };
  expect((after.heap - before.heap) / 1e6, 'megabytes of growth').toBeLessThan(most.megabytes);
  expect(after.nodes - before.nodes, 'elements and texts of growth').toBeLessThan(most.nodes);
  expect(after.made - before.made, 'audio nodes made while switching').toBe(0);
  test.info().annotations.push({
    type: 'figures',
    description: `${pressed} keys in ${passed.toFixed(0)} s: heap ${(before.heap / 1e6).toFixed(1)} → ${(after.heap / 1e6).toFixed(1)} MB, page nodes ${before.nodes} → ${after.nodes}`
  });
  console.log(test.info().annotations.at(-1)!.description);
});

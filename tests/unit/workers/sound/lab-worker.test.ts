import { afterEach, expect, test, vi } from 'vitest';
import { usualSound } from '../../../../src/lib/sounds/roster.js';
import type { Answered, Asked } from '../../../../src/lib/workers/sound/protocol.js';

afterEach(() => vi.unstubAllGlobals());

/** The worker's entry on globals of the test's own: what it says to a message, and what it hands over. */
async function entry() {
  const said: { answered: Answered; transfer: Transferable[] }[] = [];
  let listener: (event: { data: Asked }) => void = () => {};
  vi.stubGlobal('addEventListener', (_: string, listen: typeof listener) => (listener = listen));
  vi.stubGlobal('postMessage', (answered: Answered, transfer: Transferable[]) =>
    said.push({ answered, transfer })
  );
  vi.resetModules();
  await import('../../../../src/lib/workers/sound/lab.worker.js');
  return (asked: Asked) => {
    listener({ data: asked });
    return said.at(-1)!;
  };
}

test('a rendered sound is answered under its number and handed over', async () => {
  const ask = await entry();
  const { answered, transfer } = ask({
    id: 7,
    question: { kind: 'sound', sound: usualSound('diesel'), sampleRate: 8000 }
  });
  expect(answered.id).toBe(7);
  const samples = (answered as { result: Float32Array }).result;
  expect(samples.length).toBeGreaterThan(8000);
  expect(transfer).toEqual([samples.buffer]);
});

test('figures are answered and nothing is handed over', async () => {
  const ask = await entry();
  const samples = new Float32Array(8000).fill(0.1);
  const kept = ask({ id: 1, question: { kind: 'keep', key: 'a', samples, sampleRate: 8000 } });
  expect(kept.transfer).toEqual([]);
  expect(kept.answered).toEqual({ id: 1, result: { gain: 1 } });
  const figures = ask({ id: 4, question: { kind: 'figures', key: 'a' } });
  expect(figures.transfer).toEqual([]);
  expect((figures.answered as { result: { peak: number } }).result.peak).toBeCloseTo(0.1, 6);
  const heard = ask({
    id: 2,
    question: { kind: 'loudnessThrough', key: 'a', impulseResponses: [Float32Array.of(1)] }
  });
  expect((heard.answered as { result: unknown[] }).result.length).toBe(1);
});

test('an error is an answer too', async () => {
  const ask = await entry();
  const { answered } = ask({ id: 3, question: { kind: 'loudnessThrough', key: 'x', impulseResponses: [] } });
  expect(answered).toEqual({ id: 3, error: 'no sound is kept under "x"' });
});

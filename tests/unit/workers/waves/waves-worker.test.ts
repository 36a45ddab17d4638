import { afterEach, expect, test, vi } from 'vitest';
import type { WaveAsked, WaveSaid } from '../../../../src/lib/workers/waves/wave-protocol.js';
import { AIR, DEMO, IN_FRONT } from '../../../helpers/demo-installations.js';

afterEach(() => vi.unstubAllGlobals());

test('a message to the entry is answered under its number, and what can be handed over is', async () => {
  const said: { said: WaveSaid; transfer?: Transferable[] }[] = [];
  let listener: (event: { data: WaveAsked }) => void = () => {};
  vi.stubGlobal('addEventListener', (_: string, listen: typeof listener) => (listener = listen));
  const answered = new Promise<void>((resolve) =>
    vi.stubGlobal('postMessage', (one: WaveSaid, { transfer }: StructuredSerializeOptions) => {
      said.push({ said: one, transfer });
      if (one.said !== 'progress') resolve();
    })
  );
  vi.resetModules();
  await import('../../../../src/lib/workers/waves/waves.worker.js');
  const mount = { installation: DEMO['closed box'], air: AIR, accuracy: 'draft' } as const;
  const { plane } = IN_FRONT;
  const question = { kind: 'polar', ...mount, frequency: 500, plane, anglesDeg: Float64Array.of(0) } as const;
  listener({ data: { id: 7, question, urgent: false } });
  await answered;
  const { said: end, transfer } = said.at(-1)!;
  const result = (end as { result: Float64Array }).result;
  expect(end).toMatchObject({ id: 7, said: 'result' });
  expect(result.length).toBe(1);
  expect(transfer).toEqual([result.buffer]);
});

import { demoBench } from '../../../../src/lib/file/demo-bench.js';
import { installationOf } from '../../../../src/lib/file/installation-of.js';
import { WavePool } from '../../../../src/lib/workers/waves/wave-pool.js';
import type { ShellAsked, WaveTimes } from '../time-waves.js';

/** What the script that starts the browser may call; arguments and results go as JSON. */
const harness = {
  /** The times in a new worker. */
  times(asked: ShellAsked, runs: number): Promise<WaveTimes & { first: number }> {
    const worker = new Worker(new URL('./times.worker.ts', import.meta.url), { type: 'module' });
    return new Promise((resolve, reject) => {
      worker.onmessage = ({ data }: MessageEvent<WaveTimes & { first: number }>) => {
        worker.terminate();
        resolve(data);
      };
      worker.onerror = ({ message }) => reject(new Error(message));
      worker.postMessage({ asked, runs });
    });
  },

  /** Seconds that a pool takes for all mounts of the demo bench, one run after the other; the first runs are cold. */
  async demo(workers: number, runs: number): Promise<number[]> {
    const pool = new WavePool(undefined, workers);
    const bench = demoBench();
    const seconds: number[] = [];
    for (let run = 0; run < runs; run++) {
      // another air each time: what is solved already would be remembered
      const air = { temperatureC: 20 + 0.01 * run };
      const begun = performance.now();
      await Promise.all(
        bench.setups.map((setup) =>
          pool.ask({
            kind: 'hear',
            installation: installationOf(bench, setup),
            air,
            accuracy: 'full',
            listeners: [bench.listener]
          })
        )
      );
      seconds.push((performance.now() - begun) / 1000);
    }
    pool.close();
    return seconds;
  }
};

export type SpeedHarness = typeof harness;

declare global {
  interface Window {
    speedHarness: SpeedHarness;
  }
}
window.speedHarness = harness;

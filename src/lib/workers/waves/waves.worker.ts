import { WaveScheduler } from './wave-scheduler.js';
import type { WaveAsked } from './wave-protocol.js';

/** The entry of a worker that solves waves. */
const scheduler = new WaveScheduler((said, transfer) => postMessage(said, { transfer }));

addEventListener('message', ({ data }: MessageEvent<WaveAsked>) => scheduler.take(data));

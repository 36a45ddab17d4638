import { WaveDesk } from './wave-desk.js';
import type { WaveAsked } from './wave-protocol.js';

/** The entry of a worker that solves waves. */
const desk = new WaveDesk((said, transfer) => postMessage(said, { transfer }));

addEventListener('message', ({ data }: MessageEvent<WaveAsked>) => desk.take(data));

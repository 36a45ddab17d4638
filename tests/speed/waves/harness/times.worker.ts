import { typicalTimes, type ShellAsked } from '../time-waves.js';

addEventListener(
  'message',
  ({ data: { asked, runs } }: MessageEvent<{ asked: ShellAsked; runs: number }>) => {
    postMessage(typicalTimes(asked, runs));
  }
);

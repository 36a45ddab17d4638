import type { BlindRun } from '../../src/lib/file/blind-run.js';

/** A run of sixteen trials of two mounts, none of them answered yet, but for what is said of it otherwise. */
export function blindRun(otherwise: Partial<BlindRun> = {}): BlindRun {
  return {
    question: 'like',
    mounts: ['Plate', 'Box'],
    places: [0, 1],
    sound: 'No. 41',
    planned: 16,
    seed: 1,
    bench: 'mark',
    answers: [],
    ...otherwise
  };
}

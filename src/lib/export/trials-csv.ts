import type { BlindRun } from '../file/blind-run.js';
import { csvText } from './csv-text.js';

/** Blind trials as a table, one row a trial, quoted as RFC 4180 asks. Names are those of the time of the run. */
export function trialsCsv(runs: readonly BlindRun[]): string {
  const header = [
    'run',
    'question',
    'sound',
    'planned',
    'ended',
    'trial',
    'behind_a',
    'behind_b',
    'behind_c',
    'said'
  ];
  const rows = runs.flatMap(({ question, sound, planned, ended, mounts, answers }, run) =>
    answers.map(({ behind, said }, trial) => [
      String(run + 1),
      question,
      sound,
      String(planned),
      ended ?? (answers.length < planned ? 'under way' : 'whole'),
      String(trial + 1),
      ...[0, 1, 2].map((letter) => mounts[behind[letter]] ?? ''),
      said
    ])
  );
  return csvText([header, ...rows]);
}

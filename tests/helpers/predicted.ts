import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { predict } from '../../src/cli/predict.js';
import type { Prediction } from '../../src/lib/evaluation/prediction.js';
import { temporaryFolder } from './temporary-folder.js';

/** The answer without starting a process; `-` in the arguments stands for a file with this text. */
export async function predicted(args: string[], text = ''): Promise<Prediction> {
  return JSON.parse(await predict(withFile(args, text))) as Prediction;
}

/** The arguments, with a file of this text in place of `-`. */
export function withFile(args: string[], text: string): string[] {
  const file = path.join(temporaryFolder(), 'bench.json');
  writeFileSync(file, text);
  return args.map((arg) => (arg === '-' ? file : arg));
}

/** Two setups of one speaker with motor values, and how hard they are driven. */
export const drivenBench = (top: object = {}) =>
  JSON.stringify({
    format: 'backwave-bench',
    version: 8,
    speakers: {
      oval: {
        frame: { length: 0.04, width: 0.028 },
        motor: { mms: 0.00055, cms: 0.00038, bl: 1.6, re: 7.2, qms: 3, xmax: 0.0008, ratedPower: 2 }
      }
    },
    setups: [
      { mount: { kind: 'plate', length: 0.16, width: 0.1, offset: [-0.04, 0] } },
      {
        mount: { kind: 'plate', length: 0.16, width: 0.1, offset: [-0.04, 0] },
        second: { at: [0.04, 0], wiring: 'series' }
      }
    ],
    listener: { distance: 0.5 },
    ...top
  });

import type { Listener } from '../../../acoustics/listener.js';
import { zeroOfBenchDb } from '../../../evaluation/sound-level.js';
import type { Stand } from '../../../evaluation/stand.js';
import type { BenchFile } from '../../../file/bench-file.js';
import type { PictureRange } from '../../../plot/scales/picture-range.js';

/** What says where one listens, at which drive, and what 0 dB is. */
export interface Heard {
  file: Pick<BenchFile, 'view' | 'air' | 'drive'>;
  listener: Listener;
  measuredAgainst: Pick<Stand, 'installation'>;
}

/** The range of the response picture: where it is asked for, its levels in dB re 20 µPa where one listens, of a sine at the drive. */
export function shownRange(range: PictureRange, { file, listener, measuredAgainst }: Heard): PictureRange {
  if (!file.view.realLevel) return range;
  return {
    ...range,
    zeroDb: zeroOfBenchDb(measuredAgainst.installation.speaker, file, listener)
  };
}

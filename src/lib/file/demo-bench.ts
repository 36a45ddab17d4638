import { SPEAKERS } from '../acoustics/speaker/speakers.js';
import { usualSound } from '../sounds/roster.js';
import { BENCH_FORMAT, type BenchFile } from './bench-file.js';
import { BENCH_VERSION } from './versions/versions.js';

/**
 * The bench one finds at first: four mounts of one speaker for no. 41, a full-width cab diesel of the
 * Carrow & Eastmoor (an invented club layout in HO).
 */
export function demoBench(): BenchFile {
  return {
    format: BENCH_FORMAT,
    version: BENCH_VERSION,
    air: { temperatureC: 20 },
    speakers: { oval: SPEAKERS.oval },
    setups: [
      { name: 'Free air', speaker: 'oval', turn: 0, notes: '', mount: { kind: 'free' } },
      {
        name: 'Flat plate',
        speaker: 'oval',
        turn: 0,
        notes: '',
        mount: { kind: 'plate', shape: 'rectangle', length: 0.152, width: 0.102, offset: [0, 0] }
      },
      {
        name: 'Cab body',
        speaker: 'oval',
        turn: 0,
        notes: '',
        mount: { kind: 'shell', length: 0.152, width: 0.033, height: 0.04, ends: 'closed', offset: 0 }
      },
      {
        name: 'Closed box',
        speaker: 'oval',
        turn: 0,
        notes: '',
        mount: { kind: 'box', length: 0.042, width: 0.029, depth: 0.017 }
      }
    ],
    listener: { angleDeg: 0, plane: 'width' },
    sound: usualSound('diesel'),
    view: { heard: 0, measuredAgainst: 0, model: 'rule', inches: false, sameLoudness: false }
  };
}

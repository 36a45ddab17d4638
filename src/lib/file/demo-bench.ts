import { PLACES } from '../acoustics/listener.js';
import type { Mount, MountKind } from '../acoustics/mounts/mount.js';
import { SPEAKERS } from '../acoustics/speaker/speakers.js';
import { usualSound } from '../sounds/roster.js';
import { BENCH_FORMAT, OPENING_MODEL, type BenchFile, type Setup } from './bench-file.js';
import { BENCH_VERSION } from './versions/versions.js';

/** The mounts of the demo bench; the mounts of their names in the drawer are the same. */
export const DEMO_MOUNTS: Readonly<Record<MountKind, Readonly<Mount>>> = {
  free: { kind: 'free' },
  plate: { kind: 'plate', shape: 'rectangle', length: 0.152, width: 0.102, offset: [0, 0] },
  shell: { kind: 'shell', length: 0.152, width: 0.033, height: 0.04, ends: 'closed', offset: 0 },
  box: { kind: 'box', length: 0.042, width: 0.029, depth: 0.017 }
};

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
      setup('Free air', DEMO_MOUNTS.free),
      setup('Flat plate', DEMO_MOUNTS.plate),
      setup('Cab body', DEMO_MOUNTS.shell),
      setup('Closed box', DEMO_MOUNTS.box)
    ],
    listener: PLACES.hand,
    sound: usualSound('diesel'),
    view: { heard: 0, measuredAgainst: 0, model: OPENING_MODEL, inches: false, sameLoudness: false }
  };
}

function setup(name: string, mount: Mount): Setup {
  return { name, speaker: 'oval', turn: 0, notes: '', mount: structuredClone(mount) };
}

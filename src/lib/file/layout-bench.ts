import { PLACES } from '../acoustics/listener.js';
import type { BoxMount, ShellMount, SlitLeak } from '../acoustics/mounts/mount.js';
import type { BenchFile, Setup } from './bench-file.js';
import { DEMO_MOUNTS, demoBench } from './demo-bench.js';

/** The cab body of no. 41 as it runs: its chassis is in, with 1 mm along both sides and mechanism on it. */
export const RUNNING_CAB: Readonly<ShellMount> = {
  ...(DEMO_MOUNTS.shell as ShellMount),
  chassis: { height: 0.008, slit: 0.001, ends: 0.002, depth: 0.002, fill: 0.3 }
};

/** The box in the floor of the tender, and a gap of a sheet of paper round the speaker's frame. */
export const TENDER_BOX: Readonly<BoxMount> = { kind: 'box', length: 0.06, width: 0.03, depth: 0.017 };
export const PAPER_GAP: Readonly<SlitLeak> = { gap: 0.0001, length: 0.136, depth: 0.002 };

/**
 * The second bench one finds: the Carrow & Eastmoor on its layout. No. 41 empty and as it runs, 14 mm above the board; the tender, a box
 * that looks down at the track; and the same box with a gap.
 */
export function layoutBench(): BenchFile {
  const demo = demoBench();
  return {
    ...demo,
    setups: [
      setup('Cab body', DEMO_MOUNTS.shell, {}),
      setup('No. 41 as it runs', RUNNING_CAB, {}),
      setup('Tender', TENDER_BOX, { facing: 'down' }),
      setup('Tender with a gap', { ...TENDER_BOX, leak: PAPER_GAP }, { facing: 'down' })
    ],
    listener: PLACES.layout
  };
}

function setup(name: string, mount: Readonly<Setup['mount']>, stands: Pick<Setup, 'facing'>): Setup {
  return { name, speaker: 'oval', mount: structuredClone(mount), turn: 0, ...stands, notes: '' };
}

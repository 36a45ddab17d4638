import type { Obstacle, Vehicle } from '../fitting/vehicle.js';
import { usualSound } from '../sounds/roster.js';
import type { BenchModel } from './bench-file.js';
import { DEMO_MOUNTS } from './demo-bench.js';
import type { ShellMount } from '../acoustics/mounts/mount.js';

const CAB = DEMO_MOUNTS.shell as ShellMount;

/** Something in the way, on the middle line. */
function box(name: string, sizes: Omit<Obstacle, 'name' | 'aside'>): Obstacle {
  return { name, aside: 0, ...sizes };
}

/** Of either truck of no. 41. */
const TOWER = { length: 0.018, width: 0.016, above: 0.008, height: 0.016 };

const NO_41: Vehicle = {
  name: 'No. 41, full-width cab diesel',
  length: CAB.length,
  width: CAB.width,
  height: CAB.height,
  above: 0.014,
  chassis: { height: 0.008, slit: 0.001, ends: 0.002, depth: 0.002 },
  obstacles: [
    box('motor', { from: 0.052, length: 0.044, width: 0.02, above: 0.008, height: 0.019 }),
    box('front truck’s tower', { from: 0.018, ...TOWER }),
    box('rear truck’s tower', { from: 0.116, ...TOWER }),
    box('decoder', { from: 0.098, length: 0.017, width: 0.015, above: 0.03, height: 0.005 })
  ],
  roof: [0.01, 0.142],
  openings: 0.0003
};

const TENDER_ENGINE: Vehicle = {
  name: 'Tender of the tender engine',
  length: 0.07,
  width: 0.03,
  height: 0.026,
  above: 0.014,
  obstacles: [
    box('weight', { from: 0.002, length: 0.014, width: 0.024, above: 0, height: 0.012 }),
    box('decoder', { from: 0.044, length: 0.023, width: 0.016, above: 0.019, height: 0.005 })
  ],
  floor: [0.004, 0.066],
  openings: 0
};

const SWITCHER: Vehicle = {
  name: 'Narrow hood switcher',
  length: 0.105,
  width: 0.018,
  height: 0.032,
  cab: { length: 0.026, width: 0.03 },
  above: 0.012,
  chassis: { height: 0.005, slit: 0.0005, ends: 0.001, depth: 0.002 },
  obstacles: [
    box('motor', { from: 0.03, length: 0.028, width: 0.015, above: 0.005, height: 0.017 }),
    box('weight', { from: 0.082, length: 0.02, width: 0.026, above: 0.005, height: 0.01 })
  ],
  roof: [0.003, 0.102],
  openings: 0.0002
};

const RAILBUS: Vehicle = {
  name: 'Railbus',
  length: 0.128,
  width: 0.032,
  height: 0.036,
  above: 0.009,
  chassis: { height: 0.006, slit: 0.0005, ends: 0.0005, depth: 0.002 },
  obstacles: [
    box('motor', { from: 0.046, length: 0.036, width: 0.016, above: 0.006, height: 0.012 }),
    box('seats', { from: 0.006, length: 0.034, width: 0.03, above: 0.006, height: 0.01 })
  ],
  floor: [0.006, 0.122],
  openings: 0.0012
};

/** The models in the drawer: those of the Carrow & Eastmoor, an invented club layout in HO; all their sizes are invented. */
export const DEMO_MODELS: readonly BenchModel[] = [
  { ...NO_41, sounds: [usualSound('diesel')] },
  { ...TENDER_ENGINE, sounds: [usualSound('steam')] },
  { ...SWITCHER, sounds: [usualSound('diesel', 'No. 7, hood switcher')] },
  { ...RAILBUS, sounds: [usualSound('diesel', 'Railbus 12')] }
];

import { checkInstallation } from '../acoustics/mounts/check-installation.js';
import type { Installation } from '../acoustics/installation.js';
import { refusal } from '../acoustics/refusal.js';
import type { Speaker } from '../acoustics/speaker/speaker.js';
import type { Ohms } from '../units.js';
import type { Block } from './block.js';
import type { Asked, Candidate } from './candidate.js';
import { inBoxes } from './in-boxes.js';
import { inFloor } from './in-floor.js';
import { inRoof } from './in-roof.js';
import { largestBlocks, roomInside } from './room-inside.js';
import { checkVehicle, type Vehicle } from './vehicle.js';
import { againstOf, isBoxed, stretchOf, WAYS, type Way } from './ways.js';
import { whyNot, type Misfit } from './why-not.js';

export interface Fitted {
  candidates: Candidate[];
  /** Every speaker and way of mounting of which nothing fits, and why. */
  misfits: Misfit[];
}

/**
 * Everything of a drawer that fits into a vehicle: each speaker in each way of mounting, at each free place, both ways round, alone and two of a
 * kind. In a roof one candidate for each stretch in which the speaker can be moved, where it is nearest to the middle. Of closed boxes the
 * least, the largest that each of the roomiest two places takes, and one between. Exact, and the same every time.
 *
 * @param drawer speakers by key, all with motors; may be empty
 * @param leastLoad of the amplifier: two that side by side would go below it are wired in series
 * @throws RangeError as `checkVehicle` does
 */
export function fit(
  vehicle: Vehicle,
  drawer: Readonly<Record<string, Speaker>>,
  leastLoad: Ohms = 0
): Fitted {
  const steps = fittingSteps(vehicle, drawer, leastLoad);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/** `fit` in steps of one speaker in one way of mounting: everything comes at the end. */
export function* fittingSteps(
  vehicle: Vehicle,
  drawer: Readonly<Record<string, Speaker>>,
  leastLoad: Ohms = 0
): Generator<void, Fitted> {
  checkVehicle(vehicle);
  const room = roomInside(vehicle);
  const candidates = new Map<string, Candidate>();
  const misfits: Misfit[] = [];
  const most = new Map<Way, Block[]>();
  for (const way of WAYS) {
    const stretch = stretchOf(way, vehicle);
    if (stretch && isBoxed(way)) most.set(way, largestBlocks(room, againstOf(way), stretch));
  }
  for (const [key, speaker] of Object.entries(drawer)) {
    const wiring = speaker.motor.re / 2 < leastLoad ? 'series' : 'parallel';
    for (const way of WAYS) {
      const made = candidatesOf({ vehicle, room, key, speaker, way, wiring, blocks: most.get(way) ?? [] });
      const refused: string[] = [];
      let count = 0;
      for (const candidate of made) {
        const problem = refusal(() => checkInstallation(installed(candidate, speaker)));
        if (problem) refused.push(problem);
        else {
          candidates.set(candidate.key, candidate);
          count++;
        }
      }
      if (count === 0)
        misfits.push(
          refused.length > 0
            ? { speaker: key, way, why: refused[0], remedy: null }
            : whyNot(vehicle, key, speaker, way)
        );
      yield;
    }
  }
  return { candidates: [...candidates.values()], misfits };
}

/** The candidate with its speaker in, over its board. */
export function installed({ mount, turn, above, facing, second }: Candidate, speaker: Speaker): Installation {
  return { speaker, mount, turn, board: { above, facing }, ...(second && { second }) };
}

function candidatesOf(asked: Asked): Candidate[] {
  if (asked.way === 'roof') return inRoof(asked);
  return asked.way === 'floor' ? inFloor(asked) : inBoxes(asked);
}

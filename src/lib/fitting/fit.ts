import { checkInstallation } from '../acoustics/mounts/check-installation.js';
import { refusal } from '../acoustics/refusal.js';
import type { Speaker } from '../acoustics/speaker/speaker.js';
import type { Ohms } from '../units.js';
import type { Block } from './block.js';
import { installed, type Asked, type Candidate } from './candidate.js';
import { inBoxes } from './in-boxes.js';
import { inFloor } from './in-floor.js';
import { inRoof } from './in-roof.js';
import { largestBlocks, roomInside } from './room-inside.js';
import { checkVehicle, type Vehicle } from './vehicle.js';
import { againstOf, isBoxed, stretchOf, WAYS, type Way } from './ways.js';
import { whyNot, type Misfit } from './why-not.js';

export interface Fitted {
  candidates: Candidate[];
  /** Keys of boxes for the same speaker in the same place, from the least to the largest; the roomiest place of a kind first. */
  ladders: string[][];
  /** Every speaker and way of mounting of which nothing fits, and why. */
  misfits: Misfit[];
}

/**
 * Everything of a drawer that fits into a vehicle: each speaker in each way of mounting, at each free place, both ways round, alone and two of a
 * kind. In a roof one candidate for each stretch in which the speaker can be moved, where it is nearest to the middle. Of closed boxes a ladder
 * of sizes for each free place. Exact, and the same every time.
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
  const ladders: string[][] = [];
  const misfits: Misfit[] = [];
  const most = new Map<Way, Block[]>();
  for (const way of WAYS) {
    const stretch = stretchOf(way, vehicle);
    if (stretch && isBoxed(way)) most.set(way, largestBlocks(room, againstOf(way), stretch));
  }
  for (const [key, speaker] of Object.entries(drawer)) {
    const wiring = speaker.motor.re / 2 < leastLoad ? 'series' : 'parallel';
    for (const way of WAYS) {
      const refused: string[] = [];
      let count = 0;
      for (const sizes of candidatesOf({
        ...{ vehicle, room, key, speaker, way, wiring },
        blocks: most.get(way) ?? []
      })) {
        const built = sizes.filter((candidate) => {
          const problem = refusal(() => checkInstallation(installed(candidate, speaker)));
          if (problem) refused.push(problem);
          return !problem;
        });
        count += built.length;
        // the least box is the same in every place: it stays where it was first
        for (const one of built) if (!candidates.has(one.key)) candidates.set(one.key, one);
        if (built.length > 1) ladders.push(built.map(({ key }) => key));
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
  return { candidates: [...candidates.values()], ladders, misfits };
}

/** Each by itself, or as a ladder of sizes. */
function candidatesOf(asked: Asked): Candidate[][] {
  if (isBoxed(asked.way)) return inBoxes(asked);
  return (asked.way === 'roof' ? inRoof(asked) : inFloor(asked)).map((one) => [one]);
}

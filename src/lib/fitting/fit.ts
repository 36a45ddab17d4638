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
import { whyNotSteps, type Misfit } from './why-not.js';

/** Everything that fits. */
export interface WhatFits {
  candidates: Candidate[];
  /** Keys of boxes for the same speaker in the same place, from the least to the largest; the roomiest place of a kind first. */
  ladders: string[][];
  /** Every speaker and way of mounting of which nothing fits, with what a model says where it has room. */
  nothing: { speaker: string; way: Way; refused: string | null }[];
}

export interface Fitted extends WhatFits {
  /** Why nothing fits there. */
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
  const found = atOnce(fittingSteps(vehicle, drawer, leastLoad));
  return { ...found, misfits: atOnce(misfitSteps(vehicle, drawer, found)) };
}

/** All steps one after the other. */
export function atOnce<Result>(steps: Generator<void, Result>): Result {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/** Why nothing fits where nothing does: longer work than what fits, in small steps. */
export function* misfitSteps(
  vehicle: Vehicle,
  drawer: Readonly<Record<string, Speaker>>,
  { nothing }: Pick<WhatFits, 'nothing'>
): Generator<void, Misfit[]> {
  const misfits: Misfit[] = [];
  for (const { speaker, way, refused } of nothing) {
    misfits.push(
      refused === null
        ? yield* whyNotSteps(vehicle, speaker, drawer[speaker], way)
        : { speaker, way, why: refused, remedy: null }
    );
  }
  return misfits;
}

/** What fits, in steps of one place of one speaker in one way of mounting: everything comes at the end. */
export function* fittingSteps(
  vehicle: Vehicle,
  drawer: Readonly<Record<string, Speaker>>,
  leastLoad: Ohms = 0
): Generator<void, WhatFits> {
  checkVehicle(vehicle);
  const room = roomInside(vehicle);
  const candidates = new Map<string, Candidate>();
  const ladders: string[][] = [];
  const nothing: WhatFits['nothing'] = [];
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
        yield;
      }
      if (count === 0) nothing.push({ speaker: key, way, refused: refused[0] ?? null });
      yield;
    }
  }
  return { candidates: [...candidates.values()], ladders, nothing };
}

/** Each by itself, or as a ladder of sizes. */
function candidatesOf(asked: Asked): Iterable<Candidate[]> {
  if (isBoxed(asked.way)) return inBoxes(asked);
  return (asked.way === 'roof' ? inRoof(asked) : inFloor(asked)).map((one) => [one]);
}

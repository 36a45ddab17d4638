import { volumeOf } from './block.js';
import { across, keyed, tidy, type Asked, type Candidate } from './candidate.js';
import { freeVolume, planOf } from './free-volume.js';
import { placeFor } from './room-inside.js';
import { needOf, TURNS } from './ways.js';

/** A speaker in the floor, cone down, with the sealed body as its box: as deep as the air makes it that nothing fills. */
export function inFloor({ vehicle, room, key, speaker, way }: Asked): Candidate[] {
  const { height, above, chassis } = vehicle;
  for (const turn of TURNS) {
    const need = needOf(way, speaker, turn, vehicle);
    const block = need && placeFor(room, need);
    if (!block) continue;
    const air = freeVolume(vehicle, room);
    const plan = planOf(vehicle);
    const depth = Math.max(speaker.depth, Math.min(height, air / (plan.length * plan.width)));
    return [
      keyed({
        name: `In the floor, the body sealed${across(speaker, turn)}`,
        speaker: key,
        way,
        mount: { kind: 'box', ...plan, depth: tidy(depth) },
        turn,
        above: above + (chassis?.height ?? 0),
        facing: 'down',
        takes: [block],
        space: volumeOf(block)
      })
    ];
  }
  return [];
}

import type { Mount } from '../acoustics/mounts/mount.js';
import { LIMITS, mm } from '../acoustics/limits.js';
import type { Metres } from '../units.js';
import { TOUCH, type Span } from './block.js';
import { across, made, nearest, tidy, type Asked, type Candidate } from './candidate.js';
import { freeVolume, planOf } from './free-volume.js';
import { pairWithin } from './pair-within.js';
import { blockAt, centredPlaces, type RoomInside } from './room-inside.js';
import { widthOver, type Vehicle } from './vehicle.js';
import { isRoundAbout, needOf, TURNS } from './ways.js';

/** A speaker in the roof, the body as its shell: one for each stretch in which it can be moved, both ways round; and two, side by side where that goes. */
export function inRoof({ vehicle, room, key, speaker, way, wiring }: Asked): Candidate[] {
  const { length, height, above } = vehicle;
  const found: Candidate[] = [];
  for (const turn of TURNS) {
    const need = needOf(way, speaker, turn, vehicle);
    if (!need || (turn === 90 && isRoundAbout(speaker))) continue;
    const places = centredPlaces(room, need);
    const mountAt = (x: Metres, over: Span): Mount => ({
      kind: 'shell',
      length,
      width: widthOver(vehicle, over),
      height,
      ends: 'closed',
      offset: tidy(x - length / 2),
      ...chassisOf(vehicle, room)
    });
    for (const place of places) {
      const x = nearest(place, length / 2);
      const block = blockAt(room, need, x, 0);
      found.push(
        made(
          {
            ...{ speaker: key, way, turn, above, facing: 'up' },
            name: `In the roof, ${mm(tidy(x))} mm from the left${across(speaker, turn)}`,
            mount: mountAt(x, block.x),
            takes: [block]
          },
          speaker
        )
      );
    }
    const [one, two] = pairOf(places, need.length, length / 2);
    if (two === undefined) continue;
    const takes = [one, two].map((x) => blockAt(room, need, x, 0));
    const over: Span = [takes[0].x[0], takes[1].x[1]];
    found.push(
      made(
        {
          ...{ speaker: key, way, turn, above, facing: 'up' },
          name: `Two in the roof, ${mm(tidy(one))} and ${mm(tidy(two))} mm from the left${across(speaker, turn)}`,
          mount: mountAt(one, over),
          takes,
          second: { at: [tidy(two - length / 2), 0], reversed: false, wiring }
        },
        speaker
      )
    );
  }
  return found;
}

/** Two places for middles at least a frame apart, as near to the middle of the roof as they can be; none where only one fits. */
function pairOf(places: readonly Span[], apart: Metres, middle: Metres): number[] {
  let best: number[] = [];
  let least = Infinity;
  for (const a of places)
    for (const b of places) {
      const pair = pairWithin(a, b, apart, middle);
      if (pair && pair.away < least - TOUCH) [best, least] = [pair.at, pair.away];
    }
  return best;
}

/** What a shell has of the chassis: what stands on it fills a share of the air above it. */
function chassisOf(vehicle: Vehicle, room: RoomInside): Pick<Mount, 'chassis'> {
  if (!vehicle.chassis) return {};
  const { length, width } = planOf(vehicle);
  const whole = length * width * (vehicle.height - vehicle.chassis.height);
  const fill = Math.min(LIMITS.fill[1], 1 - freeVolume(vehicle, room) / whole);
  return { chassis: { ...vehicle.chassis, fill: Math.max(0, Math.round(fill * 1e6) / 1e6) } };
}

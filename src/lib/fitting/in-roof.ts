import type { Mount } from '../acoustics/mounts/mount.js';
import { LIMITS, mm } from '../acoustics/limits.js';
import type { Metres } from '../units.js';
import { TOUCH, volumeOf, type Span } from './block.js';
import { across, keyed, nearest, tidy, type Asked, type Candidate } from './candidate.js';
import { freeVolume, planOf } from './free-volume.js';
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
        keyed({
          ...{ speaker: key, way, turn, above, facing: 'up' },
          name: `In the roof, ${mm(tidy(x))} mm from the left${across(speaker, turn)}`,
          mount: mountAt(x, block.x),
          takes: [block],
          space: volumeOf(block)
        })
      );
    }
    const [one, two] = pairOf(places, need.length, length / 2);
    if (two === undefined) continue;
    const takes = [one, two].map((x) => blockAt(room, need, x, 0));
    const over: Span = [takes[0].x[0], takes[1].x[1]];
    found.push(
      keyed({
        ...{ speaker: key, way, turn, above, facing: 'up' },
        name: `Two in the roof, ${mm(tidy(one))} and ${mm(tidy(two))} mm from the left${across(speaker, turn)}`,
        mount: mountAt(one, over),
        takes,
        space: takes.reduce((sum, block) => sum + volumeOf(block), 0),
        second: { at: [tidy(two - length / 2), 0], reversed: false, wiring }
      })
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
      if (b[1] - a[0] < apart - TOUCH || b[0] < a[0]) continue;
      // side by side about the middle, moved as far as the two places ask
      const first = Math.min(nearest(a, middle - apart / 2), b[1] - apart);
      const one = Math.max(first, a[0]);
      const two = nearest(b, Math.max(one + apart, middle + apart / 2));
      if (two - one < apart - TOUCH) continue;
      const away = Math.max(Math.abs(one - middle), Math.abs(two - middle));
      if (away < least - TOUCH) [best, least] = [[one, two], away];
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

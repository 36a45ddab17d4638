import type { Area } from '../scales/area.js';
import { heightsAlong } from './heights-along.js';
import type { Point } from '../scales/point.js';

export interface DiscCurve {
  id: number;
  /** The visible parts of the curve in pixels. */
  runs: readonly Point[][];
  heard: boolean;
}

export interface DiscRules {
  radius: number;
  /** Where the discs stood before: they keep to those places as long as nothing much better is to be had. */
  previous?: ReadonlyMap<number, Point>;
}

/** Two discs nearer than so many radii are a bunch: standing next to each other costs so much. */
const BUNCH = 5;
const bunchCost = 3;
/** Pixels between the places that are tried. */
const step = 2;
/** Least free pixels between two discs. */
const discGap = 3;
/** A disc this share of the width from its preferred place costs 1. */
const leash = 0.2;
const crowdingCost = 2;
const liftedCost = 0.8;
/** A disc leaves its old neighbourhood only for a place that costs this much less. */
const loyalty = 0.5;

/**
 * Where the numeral discs sit: each on a visible part of its own curve, clear of the other discs and of the area's
 * edges, rather where its curve runs apart from the others, and near a preferred frequency of its own
 * (spread evenly over the part of the axis where small speakers have something to say). Near the floor or the top a disc
 * is lifted so far that it stays inside; it still touches its curve. The heard curve chooses first. A curve that is
 * nowhere visible, or has no free place left, gets no disc.
 */
export function discPlaces(curves: readonly DiscCurve[], area: Area, rules: DiscRules): Map<number, Point> {
  const { radius, previous } = rules;
  const first = area.left + radius + 1;
  const count = Math.max(0, Math.floor((area.right - radius - 1 - first) / step) + 1);
  const upper = area.top + radius + 1;
  const lower = area.bottom - radius - 1;
  if (count === 0 || lower < upper) return new Map();
  const heights = curves.map((curve) => heightsAlong(curve.runs, first, step, count));
  const lifted = (height: number) => Math.max(upper, Math.min(lower, height));

  const costs = curves.map((_, c) => {
    const preferred = area.left + preferredPart(c, curves.length) * (area.right - area.left);
    return Float64Array.from({ length: count }, (_, k) => {
      const y = lifted(heights[c][k]);
      if (Number.isNaN(y)) return Infinity;
      const x = first + k * step;
      const pull = (x - preferred) / (leash * (area.right - area.left));
      const crowding = crowdingAt(heights, c, k, radius);
      const lift = Math.min(1, Math.abs(y - heights[c][k]) / radius);
      return pull * pull + crowdingCost * crowding * crowding + liftedCost * lift;
    });
  });

  /** Places the curves in the given order; the index of the first that finds no room, or −1. */
  const place = (order: readonly number[], places: Map<number, Point>): number => {
    let stuck = -1;
    const taken: Point[] = [];
    const apart = (2 * radius + discGap) ** 2;
    for (const c of order) {
      const cost = (k: number) => {
        if (!(k >= 0 && k < count) || costs[c][k] === Infinity) return Infinity;
        const x = first + k * step;
        const y = lifted(heights[c][k]);
        const nearest = Math.min(...taken.map((disc) => (disc.x - x) ** 2 + (disc.y - y) ** 2));
        if (nearest < apart) return Infinity;
        const near = Math.max(0, 1 - Math.sqrt(nearest) / (BUNCH * radius));
        return costs[c][k] + bunchCost * near * near;
      };
      const before = previous?.get(curves[c].id);
      const k = choose(cost, count, before && Math.round((before.x - first) / step));
      if (k < 0) {
        if (stuck < 0 && costs[c].some((each) => each < Infinity)) stuck = c;
        continue;
      }
      const disc = { x: first + k * step, y: lifted(heights[c][k]) };
      taken.push(disc);
      places.set(curves[c].id, disc);
    }
    return stuck;
  };

  let order = curves.map((_, c) => c).sort((a, b) => Number(curves[b].heard) - Number(curves[a].heard));
  let best = new Map<number, Point>();
  for (let trial = 0; trial <= curves.length; trial++) {
    const places = new Map<number, Point>();
    const stuck = place(order, places);
    if (places.size > best.size) best = places;
    if (stuck < 0) break;
    order = [stuck, ...order.filter((c) => c !== stuck)];
  }
  return best;
}

/** The least costly index; downhill from `before` instead, unless the least is cheaper by more than the loyalty. −1: none. */
function choose(cost: (k: number) => number, count: number, before: number | undefined): number {
  let least = -1;
  let leastCost = Infinity;
  for (let k = 0; k < count; k++) {
    const here = cost(k);
    if (here < leastCost) [least, leastCost] = [k, here];
  }
  if (before === undefined) return least;
  let kept = before;
  while (cost(kept - 1) < cost(kept) || cost(kept + 1) < cost(kept))
    kept += cost(kept - 1) < cost(kept + 1) ? -1 : 1;
  return cost(kept) <= leastCost + loyalty ? (cost(kept) < Infinity ? kept : least) : least;
}

/** Preferred place of curve `c` of `n`, as a share of the width. */
function preferredPart(c: number, n: number): number {
  return 0.27 + (0.5 * (c + 0.5)) / n;
}

/** 0 where no other curve comes near a disc on curve `c`, up to 1 where one runs through its middle. */
function crowdingAt(heights: readonly Float64Array[], c: number, k: number, radius: number): number {
  const y = heights[c][k];
  const reach = 1.7 * radius;
  const side = Math.round(radius / step);
  let nearest = reach;
  for (let other = 0; other < heights.length; other++) {
    if (other === c) continue;
    for (let at = k - side; at <= k + side; at += side) {
      const distance = Math.abs(heights[other][at] - y);
      if (distance < nearest) nearest = distance;
    }
  }
  return 1 - nearest / reach;
}

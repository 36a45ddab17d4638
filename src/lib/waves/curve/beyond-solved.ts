import { type Outline, outlineLength, outlineWidth } from '../../acoustics/outline.js';
import { complexArray, type ComplexArray } from '../../numeric/complex-array.js';
import { jinc } from '../../numeric/jinc.js';
import type { Hertz, Metres, MetresPerSecond } from '../../units.js';
import type { Way } from '../field/ways.js';
import type { WaveProblem } from '../solve/wave-problem.js';

/** A way on which a listener is ahead of a cone. */
export interface WayAhead {
  /** Components of its direction along and across the cone. */
  slope: [number, number];
  /** By how much it is longer than the straight way from the middle of all cones, and the ratio of the straight one to it. */
  longer: Metres;
  ratio: number;
}

/**
 * What is known of a cone without solving anything: a wall that is large against the wavelength only lets its front be heard, and only
 * ahead of it. So the higher the frequency, the more of a mount is the cone's own directivity.
 */
export interface Ahead {
  /** As it lies in the mount. */
  cone: Outline;
  ways: WayAhead[];
}

/** Below this share of what goes straight ahead a listener at the edge of the mount's plane is not ahead of it: 3° above the plane. */
const GRAZING = 0.05;

export function aheadOf({ pistons, middle }: WaveProblem, ways: readonly Way[]): Ahead[] {
  return pistons.map(({ outline, middle: own }) => ({
    cone: outline,
    ways: ways
      .filter(({ direction }) => direction[2] > GRAZING)
      .map(({ direction: [x, y, z], distance, longer, ratio }) => {
        const [px, py] = [own[0] - middle[0], own[1] - middle[1]];
        const nearer =
          distance === undefined
            ? px * x + py * y
            : distance - Math.hypot(distance * x - px, distance * y - py, distance * z);
        return { slope: [x, y], longer: longer - nearer, ratio };
      })
  }));
}

/**
 * What is heard of a cone beyond the highest frequency that was solved, where its value is held in `heard`: over an octave it goes
 * over into what the cone sends ahead in an endless wall, in level (dB) and in phase. Without a way ahead the value stays. An
 * estimate: edges make ripples of some decibels about it (docs/models/wave-solution.md gives its error).
 *
 * @param heard on the ways together, over an endless wall on the axis; the array is changed
 */
export function goBeyond(
  heard: ComplexArray,
  frequency: Float64Array,
  highest: Hertz,
  { cone, ways }: Ahead,
  c: MetresPerSecond
): void {
  if (ways.length === 0) return;
  const { re, im } = heard;
  const target = complexArray(1);
  for (let i = 0; i < frequency.length; i++) {
    const octaves = Math.log2(frequency[i] / highest);
    if (!(octaves > 0)) continue;
    const share = octaves < 1 ? (1 - Math.cos(Math.PI * octaves)) / 2 : 1;
    sentAhead(target, frequency[i], cone, ways, c);
    const [a, b] = [Math.hypot(re[i], im[i]), Math.hypot(target.re[0], target.im[0])];
    const size = Math.max(a, FLOOR) ** (1 - share) * Math.max(b, FLOOR) ** share;
    const from = Math.atan2(im[i], re[i]);
    const turn = Math.atan2(target.im[0], target.re[0]) - from;
    const phase = from + share * Math.atan2(Math.sin(turn), Math.cos(turn));
    re[i] = size * Math.cos(phase);
    im[i] = size * Math.sin(phase);
  }
}

/** −60 dB: what a cone sends to a side is never nothing, as no cone is a perfect piston there. */
const FLOOR = 1e-3;

function sentAhead(
  { re, im }: ComplexArray,
  frequency: Hertz,
  cone: Outline,
  ways: readonly WayAhead[],
  c: MetresPerSecond
): void {
  const k = (2 * Math.PI * frequency) / c;
  [re[0], im[0]] = [0, 0];
  for (const { slope, longer, ratio } of ways) {
    const sent = ratio * directivity(cone, k * slope[0], k * slope[1]);
    re[0] += sent * Math.cos(k * longer);
    im[0] -= sent * Math.sin(k * longer);
  }
}

/** What a piston in an endless wall sends to a side over what it sends straight ahead: the mean of the wave over it. */
function directivity(cone: Outline, kx: number, ky: number): number {
  const [x, y] = [(kx * outlineLength(cone)) / 2, (ky * outlineWidth(cone)) / 2];
  return cone.shape === 'rectangle' ? sinc(x) * sinc(y) : jinc(Math.hypot(x, y));
}

function sinc(x: number): number {
  return x === 0 ? 1 : Math.sin(x) / x;
}

/** A point of a drawing in millimetres, x to the right, y down (as SVG has it). */
export type Point = [x: number, y: number];

/** A path through points with its inner corners rounded by a radius in millimetres. */
export function roundedPath(points: Point[], radius: number): string {
  const parts = [`M${at(points[0])}`];
  for (let i = 1; i < points.length - 1; i++) {
    const before = toward(points[i], points[i - 1], radius);
    const after = toward(points[i], points[i + 1], radius);
    parts.push(`L${at(before)}Q${at(points[i])} ${at(after)}`);
  }
  parts.push(`L${at(points[points.length - 1])}`);
  return parts.join('');
}

/** A path through points with sharp corners. */
export function straightPath(points: Point[]): string {
  return `M${points.map(at).join('L')}`;
}

function at([x, y]: Point): string {
  return `${round(x)},${round(y)}`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}

/** The point at most `distance` from `from` on the way to `to`, never past half-way. */
function toward(from: Point, to: Point, distance: number): Point {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const share = length === 0 ? 0 : Math.min(distance / length, 0.5);
  return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
}

import { obstacleBlock, type Obstacle, type Vehicle } from '../fitting/vehicle.js';
import { lengthOf, type Block, type Span } from '../fitting/block.js';

/** From above, or from the side. */
export type ViewName = 'plan' | 'side';

/** So finely an obstacle is dragged, in metres: what a ruler shows. */
const STEP = 0.0005;

/** How high a vehicle is on its view: its width from above, its height from the side; in metres. */
export function viewHeight(view: ViewName, { width, height, cab }: Vehicle): number {
  return view === 'plan' ? Math.max(width, cab?.width ?? 0) : height;
}

/** The outline from above, or from the side, as a path in millimetres from its left end and the upper edge of the view. */
export function outlinePath(view: ViewName, vehicle: Vehicle): string {
  const { length, width, height, cab } = vehicle;
  const [l, h] = [1000 * length, 1000 * viewHeight(view, vehicle)];
  if (view === 'side') return `M0,${1000 * height}V0H${l}V${1000 * height}`;
  if (!cab) return `M0,0H${l}V${h}H0Z`;
  const [border, hood, wide] = [l - 1000 * cab.length, 500 * width, 500 * cab.width];
  const m = h / 2;
  return `M0,${m - hood}H${border}V${m - wide}H${l}V${m + wide}H${border}V${m + hood}H0Z`;
}

/** A rectangle of a view, in millimetres. */
interface ViewRect {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A block as it is seen in a view: y goes down, from the far side or from the roof. */
export function rectOf(view: ViewName, vehicle: Vehicle, block: Block): ViewRect {
  const half = viewHeight('plan', vehicle) / 2;
  const [from, until]: Span =
    view === 'plan'
      ? [half - block.y[1], half - block.y[0]]
      : [vehicle.height - block.z[1], vehicle.height - block.z[0]];
  return {
    x: 1000 * block.x[0],
    y: 1000 * from,
    width: 1000 * lengthOf(block.x),
    height: 1000 * lengthOf([from, until])
  };
}

/** An obstacle moved by so much in a view, in steps of half a millimetre, as far as the body goes. */
export function moved(
  view: ViewName,
  vehicle: Vehicle,
  obstacle: Obstacle,
  right: number,
  down: number
): Obstacle {
  const { x, y, z } = obstacleBlock(obstacle);
  const half = viewHeight('plan', vehicle) / 2;
  const from = within(stepped(x[0] + right), 0, vehicle.length - obstacle.length);
  if (view === 'side') {
    const above = within(stepped(z[0] - down), 0, vehicle.height - obstacle.height);
    return { ...obstacle, from, above };
  }
  const aside = within(
    stepped((y[0] + y[1]) / 2 - down),
    -half + obstacle.width / 2,
    half - obstacle.width / 2
  );
  return { ...obstacle, from, aside };
}

function stepped(length: number): number {
  return Math.round(length / STEP) * STEP;
}

function within(value: number, least: number, most: number): number {
  // without the last digits that reckoning leaves
  return Math.round(Math.max(least, Math.min(Math.max(least, most), value)) * 1e7) / 1e7;
}

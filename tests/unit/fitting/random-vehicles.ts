import { refusal } from '../../../src/lib/acoustics/refusal.js';
import { checkVehicle, type Obstacle, type Vehicle } from '../../../src/lib/fitting/vehicle.js';
import { random } from '../../../src/lib/sounds/blocks/random.js';

/** Possible vehicles of which every face lies on a lattice of so many millimetres, the same for the same seed. */
export function randomVehicles(count: number, seed: number, lattice = 1, cabs = true): Vehicle[] {
  const { uniform } = random(seed);
  const between = (low: number, high: number) => Math.round(low + (high - low) * uniform());
  const size = (low: number, high: number) => (lattice * between(low / lattice, high / lattice)) / 1000;
  const made: Vehicle[] = [];
  while (made.length < count) {
    const [length, width, height] = [size(30, 110), size(14, 44), size(12, 46)];
    const chassis =
      uniform() < 0.6 ? { height: size(lattice, 10), slit: 0, ends: 0, depth: 0.001 } : undefined;
    const obstacles = Array.from({ length: between(0, 5) }, (_, i): Obstacle => {
      const wide = size(2, 20);
      return {
        name: `box ${i + 1}`,
        from: size(0, 80),
        length: size(2, 40),
        aside: size(0, 14) - 0.007,
        width: wide,
        above: uniform() < 0.5 ? (chassis?.height ?? 0) : size(0, 30),
        height: size(2, 24)
      };
    }).map((one) => ({ ...one, aside: onLattice(one, width, lattice) }));
    const vehicle: Vehicle = {
      name: 'any',
      length,
      width,
      height,
      above: 0.014,
      obstacles,
      openings: uniform() < 0.7 ? 0.0003 : 0,
      ...(cabs && uniform() < 0.3 && { cab: { length: size(10, 30), width: size(14, 40) } }),
      ...(chassis && { chassis }),
      ...(uniform() < 0.8 && { roof: [0, length] as const }),
      ...(uniform() < 0.8 && { floor: [size(0, 10), length] as const })
    };
    if (refusal(() => checkVehicle(vehicle)) === null) made.push(vehicle);
  }
  return made;
}

/** Its middle moved so that its near side lies on the lattice, counted from the near wall. */
function onLattice({ aside, width: wide }: Obstacle, width: number, lattice: number): number {
  const step = lattice / 1000;
  return Math.round((aside - wide / 2 + width / 2) / step) * step + wide / 2 - width / 2;
}

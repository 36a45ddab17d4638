/** A sine from (x, y) with this wavelength and height above the line, drawn over `reach`; all in pixels, y down. */
export function wavePath(x: number, y: number, wavelength: number, reach: number, height: number): string {
  const step = 3;
  const points: string[] = [];
  for (let along = 0; along <= reach; along += step)
    points.push(`${x + along},${round(y - height * Math.sin((2 * Math.PI * along) / wavelength))}`);
  return `M${points.join('L')}`;
}

/** How far the air presses along a pipe open at its lower end: a quarter of a wave on either side of the middle. */
export function quarterWaveOutline(x: number, top: number, half: number, depth: number): string {
  const STEPS = 16;
  const side = (sign: 1 | -1): string => {
    const points = Array.from({ length: STEPS + 1 }, (_, i) => {
      const share = i / STEPS;
      return `${round(x + sign * half * Math.cos((share * Math.PI) / 2))},${round(top + share * depth)}`;
    });
    return `M${points.join('L')}`;
  };
  return side(-1) + side(1);
}

/** A coil seen from the side, between two heights. */
export function springPath(x: number, top: number, bottom: number, half: number): string {
  const turns = 3;
  const pitch = (bottom - top) / (2 * turns);
  const points = Array.from(
    { length: 2 * turns + 1 },
    (_, i) => `${i === 0 || i === 2 * turns ? x : x + (i % 2 ? half : -half)},${round(top + i * pitch)}`
  );
  return `M${points.join('L')}`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}

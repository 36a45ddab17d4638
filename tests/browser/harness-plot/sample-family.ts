import type { ResponseBand, ResponseCurve } from '../../../src/lib/plot/response-curve.js';

/** Levels in dB of a second-order high-pass times a first-order one: the shape of a small speaker in an open mount. */
function open(f: number, corner: number, resonance: number, q: number): number {
  const s = f / resonance;
  const second = (s * s) / Math.hypot(1 - s * s, s / q);
  const first = f / Math.hypot(f, corner);
  return 20 * Math.log10(second * first);
}

/** The same speaker in a closed box with the step from all round to front only. */
function closed(f: number, resonance: number, q: number, step: number): number {
  const s = f / resonance;
  return (
    20 *
    Math.log10(
      ((s * s) / Math.hypot(1 - s * s, s / q)) * (Math.hypot(f, step / 1.414) / Math.hypot(f, step * 1.414))
    )
  );
}

/** Curves and bands like those of a bench, for looking at the picture by itself; `corner` moves the plate. */
export function sampleFamily(
  count: number,
  heard: number,
  corner: number
): { curves: ResponseCurve[]; bands: ResponseBand[] } {
  const frequency = Float64Array.from({ length: 401 }, (_, i) => 50 * 320 ** (i / 400));
  const shapes: [string, (f: number) => number][] = [
    ['free air', (f) => open(f, 3900, 350, 1.59)],
    ['flat plate', (f) => open(f, corner, 350, 1.59)],
    [
      'cab body as baffle',
      (f) => open(f, 1500, 350, 1.59) + 11 * Math.exp(-((Math.log(f / 1480) / 0.12) ** 2))
    ],
    ['closed box', (f) => closed(f, 489, 2.22, 2300)],
    ['round plate', (f) => open(f, 1720, 350, 1.59)],
    ['tender', (f) => open(f, 2600, 420, 1.7)]
  ];
  const curves = shapes.slice(0, count).map(([name, level], i): ResponseCurve => ({
    id: i + 1,
    numeral: `${i + 1}`,
    name,
    frequency,
    levelDb: frequency.map(level),
    style: (i + 1) as ResponseCurve['style'],
    heard: i + 1 === heard
  }));
  const level = shapes[heard - 1][1];
  const bands = Array.from({ length: 21 }, (_, i): ResponseBand => {
    const middle = 1000 * 10 ** ((i - 10) / 10);
    const outlineDb =
      -20 - 1.4 * Math.max(0, i - 4) + 3 * Math.sin(i * 2.1) - 2 * Math.abs(i - 4) * Number(i < 4);
    return {
      low: middle * 10 ** -0.05,
      high: middle * 10 ** 0.05,
      label: `${Math.round(middle)} Hz`,
      outlineDb,
      filledDb: outlineDb + level(middle)
    };
  });
  return { curves, bands };
}

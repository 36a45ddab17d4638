/** A leader from a place at the edge of a drawing to the part it belongs to. */
export interface Leader<Field> {
  field: Field;
  from: [number, number];
  to: [number, number];
}

/** Room for a letter on its disc, in pixels. */
const APART = 26;

/** Letters in a row at an edge, from left to right as their parts lie, each as near above its own as there is room. */
export function alongEdge<Field>(
  ends: readonly { field: Field; to: [number, number] }[],
  width: number,
  y: number
): Leader<Field>[] {
  const sorted = [...ends].sort((a, b) => a.to[0] - b.to[0]);
  const places = sorted.map(({ to }) => to[0]);
  // Pushed apart to the right, then all that stands out pushed back to the left.
  for (let i = 1; i < places.length; i++) places[i] = Math.max(places[i], places[i - 1] + APART);
  for (let i = places.length - 1, most = width - APART / 2; i >= 0; i--, most -= APART)
    places[i] = Math.max(APART / 2 + i * APART, Math.min(places[i], most));
  return sorted.map(({ field, to }, i) => ({ field, to, from: [places[i], y] }));
}

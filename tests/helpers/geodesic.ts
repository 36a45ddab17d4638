/** A surface of flat triangles: points [x, y, z] and corners as their numbers. */
export interface Surface {
  points: [number, number, number][];
  triangles: [number, number, number][];
}

/** Points set on every edge of the mesh, between its ends. */
const BETWEEN = 15;

/**
 * The shortest way over a surface from a point of it to a free edge (an edge of one triangle only), by brute force:
 * a graph whose nodes are the corners and fifteen points on every edge, in which all nodes of a triangle are joined by
 * straight lines, searched by Dijkstra's method. The way found is a real one, so never shorter than the shortest;
 * it is a little longer, because it must cross each edge at one of its seventeen nodes.
 */
export function wayToFreeEdge(surface: Surface, from: [number, number, number]): number {
  const nodes: [number, number, number][] = surface.points.slice();
  const onEdge = new Map<string, { nodes: number[]; triangles: number }>();
  const edge = (a: number, b: number) => {
    const key = a < b ? `${a} ${b}` : `${b} ${a}`;
    let found = onEdge.get(key);
    if (!found) {
      found = { nodes: [a, b], triangles: 0 };
      for (let i = 1; i <= BETWEEN; i++) {
        found.nodes.push(nodes.length);
        nodes.push(mix(surface.points[a], surface.points[b], i / (BETWEEN + 1)));
      }
      onEdge.set(key, found);
    }
    return found;
  };
  const rings = surface.triangles.map(([a, b, c]) => {
    const edges = [edge(a, b), edge(b, c), edge(c, a)];
    edges.forEach((e) => e.triangles++);
    return [...new Set(edges.flatMap((e) => e.nodes))];
  });
  const ringsOf: number[][] = nodes.map(() => []);
  rings.forEach((ring, r) => ring.forEach((n) => ringsOf[n].push(r)));
  const free = new Set([...onEdge.values()].filter((e) => e.triangles === 1).flatMap((e) => e.nodes));

  const best = new Float64Array(nodes.length).fill(Infinity);
  const heap: [number, number][] = [];
  const home = surface.triangles.findIndex((t) =>
    holds(
      t.map((n) => surface.points[n]),
      from
    )
  );
  if (home < 0) throw new Error(`the point ${from.join(', ')} is on no triangle of the surface`);
  for (const n of rings[home]) push(heap, [(best[n] = gap(nodes[n], from)), n]);
  for (let next = pop(heap); next; next = pop(heap)) {
    const [way, n] = next;
    if (way > best[n]) continue;
    if (free.has(n)) return way;
    for (const r of ringsOf[n])
      for (const m of rings[r]) {
        const longer = way + gap(nodes[n], nodes[m]);
        if (longer < best[m]) push(heap, [(best[m] = longer), m]);
      }
  }
  throw new Error('the surface has no free edge');
}

function gap(a: readonly number[], b: readonly number[]): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

function mix(a: readonly number[], b: readonly number[], t: number): [number, number, number] {
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
}

/** Whether a point lies on a triangle: the three triangles it makes with the sides fill it. */
function holds([a, b, c]: number[][], p: number[]): boolean {
  const whole = area(a, b, c);
  return area(p, b, c) + area(a, p, c) + area(a, b, p) <= whole * (1 + 1e-9);
}

function area(a: number[], b: number[], c: number[]): number {
  const [u, v] = [b.map((x, i) => x - a[i]), c.map((x, i) => x - a[i])];
  return Math.hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]) / 2;
}

function push(heap: [number, number][], item: [number, number]): void {
  let i = heap.push(item) - 1;
  while (i > 0 && heap[(i - 1) >> 1][0] > item[0]) {
    heap[i] = heap[(i - 1) >> 1];
    i = (i - 1) >> 1;
  }
  heap[i] = item;
}

function pop(heap: [number, number][]): [number, number] | undefined {
  const top = heap[0];
  const last = heap.pop();
  if (!last || heap.length === 0) return top;
  let i = 0;
  for (;;) {
    let child = 2 * i + 1;
    if (child >= heap.length) break;
    if (child + 1 < heap.length && heap[child + 1][0] < heap[child][0]) child++;
    if (heap[child][0] >= last[0]) break;
    heap[i] = heap[child];
    i = child;
  }
  heap[i] = last;
  return top;
}

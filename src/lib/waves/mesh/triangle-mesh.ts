import type { Mirror } from './symmetry.js';

/**
 * A surface of triangles, or the part of it on the positive side of its planes of symmetry. Nodes are shared across folds and
 * closed edges. Seen from the front face the corners of a triangle run anticlockwise, so that the normal
 * (b − a) × (c − a) points from the back face to the front.
 */
export interface TriangleMesh {
  /** x, y, z of every node, in metres. */
  points: Float64Array;
  /** Three nodes for every triangle. */
  triangles: Int32Array;
  /** The planes of symmetry in which the mesh is to be mirrored to make the whole, and the walls that reflect it. */
  mirrors: readonly Mirror[];
  /** Of every node the sheet it belongs to; nodes of two sheets are never shared. One sheet unless told. */
  sheets?: Uint8Array;
  /** 1 for nodes that carry no jump though they lie on no free edge. */
  idle?: Uint8Array;
}

/** Collects nodes and triangles; nodes of a sheet closer than 10⁻⁹ of the extent to one given before are the same node. */
export class MeshBuilder {
  readonly #points: number[] = [];
  readonly #triangles: number[] = [];
  readonly #sheets: number[] = [];
  readonly #idle = new Set<number>();
  readonly #known = new Map<string, number>();
  readonly #grain: number;

  /** @param extent the size of the whole in metres */
  constructor(extent: number) {
    this.#grain = extent * 1e-9;
  }

  node(x: number, y: number, z: number, sheet = 0): number {
    const key = [sheet, ...[x, y, z].map((v) => Math.round(v / this.#grain) + 0)].join();
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const index = this.#points.length / 3;
    this.#points.push(x, y, z);
    this.#sheets.push(sheet);
    this.#known.set(key, index);
    return index;
  }

  /** Has a node carry no jump. */
  idle(node: number): void {
    this.#idle.add(node);
  }

  triangle(a: number, b: number, c: number): void {
    this.#triangles.push(a, b, c);
  }

  mesh(mirrors: readonly Mirror[]): TriangleMesh {
    return {
      points: Float64Array.from(this.#points),
      triangles: Int32Array.from(this.#triangles),
      mirrors,
      ...(this.#idle.size > 0 && {
        idle: Uint8Array.from(this.#sheets, (_, node) => Number(this.#idle.has(node)))
      }),
      ...(this.#sheets.some((sheet) => sheet > 0) && { sheets: Uint8Array.from(this.#sheets) })
    };
  }
}

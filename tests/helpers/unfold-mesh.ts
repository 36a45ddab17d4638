import { images, type Mirror } from '../../src/lib/waves/mesh/symmetry.js';
import { MeshBuilder, type TriangleMesh } from '../../src/lib/waves/mesh/triangle-mesh.js';

/**
 * The mesh with the copies for some of its mirror planes made (all of them unless told), as a mesh that is mirrored in
 * the others only. A copy's corners run the other way round, so that its normal is the mirrored one.
 */
export function unfoldMesh(mesh: TriangleMesh, planes: readonly Mirror[] = mesh.mirrors): TriangleMesh {
  const { points, triangles } = mesh;
  const builder = new MeshBuilder(points.reduce((most, x) => Math.max(most, Math.abs(x)), 0));
  for (const { sign, shift, mirrored } of images(planes))
    for (let t = 0; t < triangles.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map((corner) => {
        const p = 3 * triangles[t + corner];
        const place = (d: number) => sign[d] * points[p + d] + shift[d];
        return builder.node(place(0), place(1), place(2));
      });
      if (mirrored.length % 2 === 0) builder.triangle(a, b, c);
      else builder.triangle(a, c, b);
    }
  return builder.mesh(mesh.mirrors.filter((plane) => !planes.includes(plane)));
}

import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { cornersAtVertices } from '../../src/mesh/corners-at-vertices.ts';
import { shadingGroups } from '../../src/viewport/shading-groups.ts';
import { boxMesh, tubeMesh } from '../support/meshes.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';

async function groupsAt(mesh: Mesh, v: number, patchOfTriangle: Int32Array | null = null): Promise<number> {
  const around = cornersAtVertices(mesh.triangles, mesh.positions.length / 3);
  const { groupOfCorner } = await shadingGroups(
    Float32Array.from(mesh.positions),
    mesh.triangles,
    around,
    patchOfTriangle,
    QUIET_WORK,
  );
  return new Set([...around.corners.subarray(around.starts[v], around.starts[v + 1])].map((c) => groupOfCorner[c]))
    .size;
}

describe('what is shaded as one round surface', () => {
  it('shows a box as three panels at each corner', async () => {
    for (let v = 0; v < 8; v += 1) expect(await groupsAt(boxMesh(50), v)).toBe(3);
  });

  it('shows a tube of 24 sides as round and one of 8 as panels', async () => {
    expect(await groupsAt(tubeMesh(24, 50, 100, 2), 24)).toBe(1);
    expect(await groupsAt(tubeMesh(8, 50, 100, 2), 8)).toBe(2);
  });

  it('never shades across the border of a piece', async () => {
    const tube = tubeMesh(24, 50, 100, 2);
    const halves = Int32Array.from({ length: tube.triangles.length / 3 }, (_, t) =>
      t < tube.triangles.length / 6 ? 0 : 1,
    );
    expect(await groupsAt(tube, 24, halves)).toBe(2);
  });
});

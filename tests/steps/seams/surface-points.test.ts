import { describe, expect, it } from 'vitest';
import { readFileSync } from 'node:fs';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { placeOf } from '../../../src/mesh/lines/mesh-point.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { surfaceOf } from '../../../src/mesh/surface.ts';
import type { SourceModel } from '../../../src/model/source-model.ts';
import { readModel } from '../../../src/steps/read/read-model.ts';
import { meshFromModel } from '../../../src/steps/read/size.ts';
import { facePolygons, meshPointOf, surfacePointOf } from '../../../src/steps/seams/surface-points.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { randomPoint } from '../../support/surface-points.ts';

async function readObj(bytes: Uint8Array): Promise<{ model: SourceModel; mesh: Mesh }> {
  const model = expectOk(await readModel(bytes, 'a.obj', QUIET_WORK));
  return { model, mesh: meshFromModel(model, 10) };
}

/** A square of two corners unused before it, beside a house of five corners with a doubled corner between. */
const HOUSE = `v 9 9 9
v 0 0 0
v 2 0 0
v 2 2 0
v 0 2 0
v 2 0 0
v 4 0 0
v 4 2 0
v 3 3 0
f 2 3 4 5
f 6 7 8 9 4
`;

describe('a place on the sculpt', () => {
  it('goes from the mesh to the file and back unchanged', async () => {
    const helm = new Uint8Array(readFileSync(new URL('../../../samples/helm.obj', import.meta.url)));
    for (const bytes of [new TextEncoder().encode(HOUSE), helm]) {
      const { model, mesh } = await readObj(bytes);
      const polygons = facePolygons(model);
      await forAll(
        (rand) => randomPoint(surfaceOf(mesh), rand),
        (p) => {
          const told = surfacePointOf(mesh, polygons, p);
          expect(meshPointOf(mesh, polygons, told)).toEqual(p);
          // It survives being written down.
          expect(meshPointOf(mesh, polygons, JSON.parse(JSON.stringify(told)) as typeof told)).toEqual(p);
        },
      );
    }
  });

  it('is told by hand-worked numbers', async () => {
    const { model, mesh } = await readObj(new TextEncoder().encode(HOUSE));
    const polygons = facePolygons(model);
    const place = (p: Parameters<typeof meshPointOf>[2]) => {
      const found = meshPointOf(mesh, polygons, p);
      return found === null ? null : placeOf(surfaceOf(mesh), found);
    };
    expect(place({ vertex: 1 })).toEqual({ x: 0, y: 0, z: 0 });
    // Both numbers of the doubled corner are one place.
    expect(place({ vertex: 5 })).toEqual(place({ vertex: 2 }));
    expect(place({ face: 0, bary: [0, 0.25, 0.75, 0] })).toEqual({ x: 20, y: 15, z: 0 });
    // The middle of a square, and the weighted middle of five corners, which no one triangle holds.
    expect(place({ face: 0, bary: [0.25, 0.25, 0.25, 0.25] })).toEqual({ x: 10, y: 10, z: 0 });
    const middle = place({ face: 1, bary: [0.2, 0.2, 0.2, 0.2, 0.2] });
    expect(middle?.x).toBeCloseTo(30, 12);
    expect(middle?.y).toBeCloseTo(14, 12);
  });

  it('is none where the file has no such vertex or polygon, or the weights are none', async () => {
    const { model, mesh } = await readObj(new TextEncoder().encode(HOUSE));
    const polygons = facePolygons(model);
    const bad = [
      { vertex: 0 },
      { vertex: 99 },
      { face: 2, bary: [1, 0, 0] },
      { face: 0, bary: [1, 0, 0] },
      { face: 0, bary: [0.5, 0.5, 0.5, 0.5] },
      { face: 0, bary: [1.5, -0.5, 0, 0] },
      { face: 0, bary: [NaN, 1, 0, 0] },
    ];
    for (const p of bad) expect(meshPointOf(mesh, polygons, p)).toBeNull();
  });
});

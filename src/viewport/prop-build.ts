import { type Matrix4 } from 'three';
import type { Work } from '../base/work.ts';
import type { PropView } from '../model/bench-view.ts';
import { cornersAtVertices } from '../mesh/corners-at-vertices.ts';
import { inScene } from './foam-build.ts';
import { FoamBody } from './foam-body.ts';
import { FoamPatch } from './foam-patch.ts';
import { shadingGroups } from './shading-groups.ts';

/** The plates of a finished prop as foam to draw, one patch each in their order, with triangles counted through all of them. */
export async function buildProp({ plates }: PropView, sceneFromModel: Matrix4, work: Work): Promise<FoamBody> {
  const corners = plates.reduce((sum, { triangles }) => sum + triangles.length, 0);
  const vertices = plates.reduce((sum, { face }) => sum + face.length, 0);
  const [all, points] = [new Uint32Array(corners), new Float32Array(vertices)];
  const patches: FoamPatch[] = [];
  let [corner, at] = [0, 0];
  for (const { piece, triangles, face, back } of plates) {
    await work.pause(0);
    const placed = inScene(face, sceneFromModel);
    for (let i = 0; i < triangles.length; i += 1) all[corner + i] = triangles[i] + at / 3;
    points.set(placed, at);
    const first = corner / 3;
    const meshTriangles = Uint32Array.from({ length: triangles.length / 3 }, (_, t) => first + t);
    const shape = { piece, meshTriangles, triangles, face: placed, back: inScene(back, sceneFromModel), flat: null };
    patches.push(await FoamPatch.make(shape, work));
    corner += triangles.length;
    at += face.length;
  }
  const groups = await shadingGroups(points, all, cornersAtVertices(all, vertices / 3), null, work);
  return new FoamBody(patches, corners / 3, groups, true);
}

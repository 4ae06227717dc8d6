import { type Matrix4 } from 'three';
import type { Work } from '../base/work.ts';
import type { PatchView, PiecesView, SculptView, ShellView } from '../model/bench-view.ts';
import { flatEdges } from './flat-edges.ts';
import { FoamBody } from './foam-body.ts';
import { FoamPatch, type FlatShape } from './foam-patch.ts';
import { shadingGroups } from './shading-groups.ts';
import type { SculptIndex } from './sculpt-index.ts';

/**
 * The foam of a sculpt: one patch for each of the view, or a single one of everything while the pieces are not known.
 * @param sceneFromModel how the sculpt stands on the bench.
 */
export async function buildFoam(
  sculpt: SculptView,
  index: SculptIndex,
  shell: ShellView,
  view: PiecesView | null,
  sceneFromModel: Matrix4,
  work: Work,
): Promise<FoamBody> {
  const { triangles } = sculpt;
  const groups = await shadingGroups(sculpt.positions, triangles, index.around, view?.patchOfTriangle ?? null, work);
  const face = inScene(shell.facePositions, sceneFromModel);
  await work.pause(0);
  const back = inScene(shell.backPositions, sceneFromModel);
  const patches: FoamPatch[] = [];
  if (view === null) {
    const meshTriangles = Uint32Array.from({ length: triangles.length / 3 }, (_, t) => t);
    await work.pause(0);
    patches.push(await FoamPatch.make({ piece: -1, meshTriangles, triangles, face, back, flat: null }, work));
  } else {
    for (const patch of view.patches) {
      await work.pause(0);
      patches.push(
        await FoamPatch.make(
          {
            piece: patch.piece,
            meshTriangles: patch.meshTriangles,
            triangles: patch.triangles,
            ...skinsOf(patch, face, back, sceneFromModel),
            flat: flatShape(patch, view),
          },
          work,
        ),
      );
    }
  }
  // The inside of a closed wall is never seen.
  const hasBack = view !== null || patches.some(({ borders }) => borders.length > 0);
  await work.pause(0);
  return new FoamBody(patches, triangles.length / 3, groups, hasBack);
}

/** Face and back of a patch in the scene: of its sheet, or its own where it is of another foam. */
function skinsOf(patch: PatchView, face: Float32Array, back: Float32Array, sceneFromModel: Matrix4) {
  const { skins, meshVertices } = patch;
  return skins === undefined
    ? { face: picked(face, meshVertices), back: picked(back, meshVertices) }
    : { face: inScene(skins.face, sceneFromModel), back: inScene(skins.back, sceneFromModel) };
}

/** Skins of the flat piece with its bevels; square edges while the piece has none. */
function flatShape(patch: PatchView, view: PiecesView): FlatShape | null {
  const piece = view.pieces[patch.piece];
  if (piece === undefined) return null;
  const { uv, thicknessMm } = piece;
  const edges = flatEdges(piece);
  const face = new Float32Array((uv.length / 2) * 3);
  const back = new Float32Array(face.length);
  for (let v = 0; v < uv.length / 2; v += 1) {
    for (let k = 0; k < 2; k += 1) {
      face[3 * v + k] = uv[2 * v + k] + edges.face[2 * v + k];
      back[3 * v + k] = uv[2 * v + k] + edges.back[2 * v + k];
    }
    face[3 * v + 2] = thicknessMm / 2;
    back[3 * v + 2] = -thicknessMm / 2;
  }
  return { uv, face, back };
}

export function inScene(positions: Float32Array, { elements: m }: Matrix4): Float32Array {
  const result = new Float32Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    const [x, y, z] = [positions[i], positions[i + 1], positions[i + 2]];
    result[i] = m[0] * x + m[4] * y + m[8] * z + m[12];
    result[i + 1] = m[1] * x + m[5] * y + m[9] * z + m[13];
    result[i + 2] = m[2] * x + m[6] * y + m[10] * z + m[14];
  }
  return result;
}

function picked(points: Float32Array, vertices: Uint32Array): Float32Array {
  const result = new Float32Array(3 * vertices.length);
  for (let i = 0; i < vertices.length; i += 1) {
    for (let k = 0; k < 3; k += 1) result[3 * i + k] = points[3 * vertices[i] + k];
  }
  return result;
}

import { handOf4, type Matrix4 } from '../geom/matrix4.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { PlainPartView } from '../model/bench-view.ts';
import type { PlainOutcome } from '../pipeline/plain/plain-outcome.ts';
import { placedMesh } from '../steps/assembly/placing.ts';

/** Parts that no sculpt is parted for, as the screen shows them. */
export const plainPartViews = (plain: readonly PlainOutcome[]): readonly PlainPartView[] =>
  plain.map(({ part, work, pieces }) => ({
    part: part.id,
    name: part.name,
    kind: part.kind,
    isMade: work !== null,
    steps: work?.steps ?? [],
    pieces: pieces.map(({ id, number, draft }) => ({ key: draft.key, id, number })),
    form: work === null || work.form === null ? null : formInPlace(work.form, part.transform),
  }));

/** Corner by corner, three to a triangle. */
function formInPlace(mesh: Mesh, matrix: Matrix4): Float32Array {
  const { positions, triangles } = placedMesh(mesh, { matrix, isMirrored: handOf4(matrix) < 0 });
  const form = new Float32Array(3 * triangles.length);
  triangles.forEach((v, i) => form.set(positions.subarray(3 * v, 3 * v + 3), 3 * i));
  return form;
}

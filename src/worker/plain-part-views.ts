import type { Mesh } from '../mesh/mesh.ts';
import type { PlainPartView } from '../model/bench-view.ts';
import type { PlainOutcome } from '../pipeline/plain/plain-outcome.ts';

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

/** @param m  4 x 4, column by column. */
function formInPlace({ positions, triangles }: Mesh, m: readonly number[]): Float32Array {
  const form = new Float32Array(3 * triangles.length);
  triangles.forEach((v, i) => {
    const [x, y, z] = [positions[3 * v], positions[3 * v + 1], positions[3 * v + 2]];
    for (let k = 0; k < 3; k += 1) form[3 * i + k] = m[k] * x + m[4 + k] * y + m[8 + k] * z + m[12 + k];
  });
  return form;
}

import { Memo } from '../base/memo.ts';
import { composed4, handOf4, IN_PLACE, undone4, type Matrix4 } from '../geom/matrix4.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { PlainPartView, SculptBesideView } from '../model/bench-view.ts';
import type { Outcome } from '../pipeline/outcome.ts';
import type { PlainOutcome } from '../pipeline/plain/plain-outcome.ts';
import { remembered } from '../pipeline/remembered.ts';
import { placedMesh } from '../steps/assembly/placing.ts';

/** Where the sculpt on the bench stands in the prop; one that is the only sculpt stands as it was modelled. */
export const placeOnBench = ({ part, sculpts }: Pick<Outcome, 'part' | 'sculpts'>): Matrix4 =>
  part === null || sculpts.length < 2 ? IN_PLACE : part.transform;

/** Parts that no sculpt is parted for, as the screen shows them. @param bench place of the sculpt on the bench. */
export const plainPartViews = (plain: readonly PlainOutcome[], bench: Matrix4): readonly PlainPartView[] =>
  plain.map(({ part, work, pieces }) => ({
    part: part.id,
    name: part.name,
    kind: part.kind,
    isMade: work !== null,
    steps: work?.steps ?? [],
    pieces: pieces.map(({ id, number, draft }) => ({ key: draft.key, id, number })),
    form: work === null || work.form === null ? null : formInPlace(work.form, seenFrom(bench, part.transform)),
  }));

/** Results kept: a maker goes a few steps back and forth. */
const KEPT = 4;

/** Sculpts that are not worked on, as they stand beside the one on the bench. */
export class SculptsBeside {
  readonly #views = new Memo<unknown[], readonly SculptBesideView[]>(KEPT);

  /** The same list while none of them changes; those that have no size yet, or no foam, are left out. */
  of(outcome: Outcome): readonly SculptBesideView[] {
    const bench = placeOnBench(outcome);
    const others = outcome.sculpts.flatMap(({ part, layers }) => {
      const cut = layers.at(0)?.cut ?? null;
      return part.id === outcome.part?.id || cut === null ? [] : [{ part, mesh: cut.mesh, shell: cut.shell }];
    });
    const key = [bench, ...others.flatMap(({ part, mesh, shell }) => [part.id, part.transform, mesh, shell])];
    return remembered(this.#views, key, () =>
      others.map(({ part, mesh, shell }) => {
        const face = { ...mesh, positions: shell.facePositions.subarray(0, mesh.positions.length) };
        return { part: part.id, form: formInPlace(face, seenFrom(bench, part.transform)) };
      }),
    );
  }
}

/** From a part's own frame to that of the sculpt on the bench. */
const seenFrom = (bench: Matrix4, part: Matrix4): Matrix4 =>
  bench === IN_PLACE ? part : composed4(undone4(bench), part);

/** Corner by corner, three to a triangle. */
function formInPlace(mesh: Mesh, matrix: Matrix4): Float32Array {
  const { positions, triangles } = placedMesh(mesh, { matrix, isMirrored: handOf4(matrix) < 0 });
  const form = new Float32Array(3 * triangles.length);
  triangles.forEach((v, i) => form.set(positions.subarray(3 * v, 3 * v + 3), 3 * i));
  return form;
}
